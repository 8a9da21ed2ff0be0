package org.axlecause.repair;

import java.math.BigDecimal;
import org.axlecause.facts.Decision;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Party;
import org.jspecify.annotations.Nullable;

/**
 * The decision that stands on a line, with the line as it was shown then.
 *
 * @param decision what was decided
 * @param by who decided
 * @param reason why
 * @param necessity necessity as it was shown
 * @param quantity quantity as it was shown
 * @param gross gross amount as it was shown
 */
public record StandingDecision(
        Decision decision,
        Party by,
        @Nullable String reason,
        @Nullable Necessity necessity,
        @Nullable BigDecimal quantity,
        @Nullable Amount gross) {

    static StandingDecision of(LineDecision decided) {
        BigDecimal estimate = decided.estimate();
        String currency = decided.currency();
        return new StandingDecision(
                decided.decision(),
                decided.by(),
                decided.reason(),
                decided.necessity(),
                decided.quantity(),
                estimate == null || currency == null ? null : new Amount(estimate.toPlainString(), currency));
    }
}
