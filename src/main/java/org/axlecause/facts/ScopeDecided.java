package org.axlecause.facts;

import java.util.List;

/**
 * Decisions on scope lines.
 *
 * @param decisions one per line
 */
public record ScopeDecided(List<LineDecision> decisions) implements Entry {

    public ScopeDecided {
        decisions = List.copyOf(decisions);
    }
}
