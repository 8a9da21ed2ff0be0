package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * A departure from an unlocked clause on this case; only the second call of the rule base sees it.
 *
 * @param clause the clause
 * @param line the line it is departed from on; null means wherever the clause works on this case
 */
public record Departure(ClauseCode clause, @Nullable LineKey line) implements Shown {

    /** Whether it takes that proposal back; what the trade alone calls for stays. */
    public boolean frees(ScopeProposal proposal) {
        return clause == proposal.clause() && isOn(proposal.line());
    }

    /** Whether it holds for that line. */
    public boolean isOn(LineKey other) {
        return line == null || line.equals(other);
    }

    @Override
    public String shown() {
        return "departure from policy clause " + clause;
    }
}
