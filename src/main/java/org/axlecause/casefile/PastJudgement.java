package org.axlecause.casefile;

import java.time.OffsetDateTime;
import java.util.Locale;

/**
 * A judgement that people acted on.
 *
 * @param version version of the case
 * @param rulebook version of the rule base
 * @param occasion why it is kept
 * @param document the case document as it was served
 * @param judgedAt when
 */
public record PastJudgement(int version, String rulebook, Occasion occasion, String document, OffsetDateTime judgedAt) {

    /** Why a judgement is kept. */
    public enum Occasion {
        /** The customer or the workshop decided on its lines. */
        DECISION,
        /** The case was closed with it. */
        CLOSING;

        static Occasion of(String code) {
            return valueOf(code.toUpperCase(Locale.ROOT));
        }

        /** The code on the wire. */
        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT);
        }
    }
}
