package org.axlecause.policy;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import org.axlecause.judgement.PastCases.Wanted;
import org.jspecify.annotations.Nullable;

/**
 * A draft tried over past cases.
 *
 * @param id its id
 * @param name name of the policy
 * @param document the draft as it was when the trial began
 * @param wanted cases that are tried
 * @param state how far it is
 * @param cases how many cases are to be tried
 * @param tried how many have been
 * @param rulebook version of the rule base when it began
 * @param result what came of the cases tried so far
 * @param createdAt when it began
 * @param createdBy who began it
 * @param finishedAt when it ended; null while it runs
 */
public record Trial(
        UUID id,
        String name,
        PolicyDocument document,
        Wanted wanted,
        State state,
        int cases,
        int tried,
        String rulebook,
        TrialResult result,
        OffsetDateTime createdAt,
        String createdBy,
        @Nullable OffsetDateTime finishedAt) {

    /** How far a trial is. */
    enum State {
        RUNNING,
        DONE,
        CANCELLED;

        static State of(String code) {
            return valueOf(code.toUpperCase(Locale.ROOT));
        }

        /** The code on the wire. */
        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** The same grown by the result of further cases. */
    Trial with(TrialResult found) {
        return new Trial(
                id,
                name,
                document,
                wanted,
                state,
                cases,
                tried + found.all().cases(),
                rulebook,
                result.plus(found),
                createdAt,
                createdBy,
                finishedAt);
    }

    /** The same at its end. */
    Trial ended(State end, OffsetDateTime moment) {
        return new Trial(id, name, document, wanted, end, cases, tried, rulebook, result, createdAt, createdBy, moment);
    }

    /** Whether it speaks of no other sites than these; null is all. */
    boolean isWithin(@Nullable Set<String> sites) {
        List<String> own = wanted.sites();
        return sites == null || (own != null && sites.containsAll(own));
    }
}
