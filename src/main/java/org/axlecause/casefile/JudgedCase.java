package org.axlecause.casefile;

import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.axlecause.facts.CauseCode;
import org.axlecause.judgement.ShownDeparture;
import org.jspecify.annotations.Nullable;

/**
 * A case as it stands after judging, ready to be kept.
 *
 * @param columns what lists need
 * @param document the case document, exactly as it is served
 * @param digest what the document says, as {@link DocumentDigest} writes it; null where nobody took it
 * @param policy what it was judged by
 * @param rulebook version of the rule base
 * @param judgedOf what else it rests on beside its entries, in a line; null where its site isn't known
 * @param causes what is not ruled out, at whatever place, for lists that ask for it
 * @param departures departures from clauses of the policy
 */
public record JudgedCase(
        CaseColumns columns,
        String document,
        @Nullable String digest,
        String policy,
        String rulebook,
        @Nullable String judgedOf,
        Set<CauseCode> causes,
        List<ShownDeparture> departures) {

    public JudgedCase {
        causes = Collections.unmodifiableSortedSet(new TreeSet<>(causes));
        departures = List.copyOf(departures);
    }

    /** A case without departures of which no more is written down. */
    public JudgedCase(CaseColumns columns, String document, String policy, String rulebook, Set<CauseCode> causes) {
        this(columns, document, null, policy, rulebook, null, causes, List.of());
    }
}
