package org.axlecause.casefile;

import java.util.List;
import org.axlecause.judgement.ShownDeparture;

/**
 * A case as it stands after judging, ready to be kept.
 *
 * @param columns what lists need
 * @param document the case document, exactly as it is served
 * @param policy what it was judged by
 * @param rulebook version of the rule base
 * @param causes statistics rows, in the order of rank
 * @param scopeLines statistics rows
 * @param departures departures from clauses of the policy
 */
public record JudgedCase(
        CaseColumns columns,
        String document,
        String policy,
        String rulebook,
        List<CauseRow> causes,
        List<ScopeLineRow> scopeLines,
        List<ShownDeparture> departures) {

    public JudgedCase {
        causes = List.copyOf(causes);
        scopeLines = List.copyOf(scopeLines);
        departures = List.copyOf(departures);
    }

    /** A case without departures. */
    public JudgedCase(
            CaseColumns columns,
            String document,
            String policy,
            String rulebook,
            List<CauseRow> causes,
            List<ScopeLineRow> scopeLines) {
        this(columns, document, policy, rulebook, causes, scopeLines, List.of());
    }
}
