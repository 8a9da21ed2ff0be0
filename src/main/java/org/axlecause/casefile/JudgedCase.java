package org.axlecause.casefile;

import java.util.List;
import org.axlecause.judgement.ShownDeparture;
import org.jspecify.annotations.Nullable;

/**
 * A case as it stands after judging, ready to be kept.
 *
 * @param columns what lists need
 * @param document the case document, exactly as it is served
 * @param policy what it was judged by
 * @param rulebook version of the rule base
 * @param judgedOf what else it rests on beside its entries, in a line; null where its site isn't known
 * @param causes statistics rows, in the order of rank
 * @param scopeLines statistics rows
 * @param departures departures from clauses of the policy
 */
public record JudgedCase(
        CaseColumns columns,
        String document,
        String policy,
        String rulebook,
        @Nullable String judgedOf,
        List<CauseRow> causes,
        List<ScopeLineRow> scopeLines,
        List<ShownDeparture> departures) {

    public JudgedCase {
        causes = List.copyOf(causes);
        scopeLines = List.copyOf(scopeLines);
        departures = List.copyOf(departures);
    }

    /** A case without departures of which no more is written down. */
    public JudgedCase(
            CaseColumns columns,
            String document,
            String policy,
            String rulebook,
            List<CauseRow> causes,
            List<ScopeLineRow> scopeLines) {
        this(columns, document, policy, rulebook, null, causes, scopeLines, List.of());
    }
}
