package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A decision on one scope line, with the line as it was agreed.
 *
 * @param line id of the scope line
 * @param decision what was decided
 * @param by who decided
 * @param reason why
 * @param necessity necessity as it was shown
 * @param quantity quantity as it was shown
 * @param estimate gross amount as it was shown
 * @param currency ISO 4217 code of the estimate
 * @param alternative name of the other part that was chosen; null means the usual one
 */
public record LineDecision(
        String line,
        Decision decision,
        Party by,
        @Nullable String reason,
        @Nullable Necessity necessity,
        @Nullable BigDecimal quantity,
        @Nullable BigDecimal estimate,
        @Nullable String currency,
        @Nullable String alternative) {

    /** A decision for the usual part. */
    public LineDecision(
            String line,
            Decision decision,
            Party by,
            @Nullable String reason,
            @Nullable Necessity necessity,
            @Nullable BigDecimal quantity,
            @Nullable BigDecimal estimate,
            @Nullable String currency) {
        this(line, decision, by, reason, necessity, quantity, estimate, currency, null);
    }
}
