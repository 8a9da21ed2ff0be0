package org.axlecause.judgement;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.EntryWithdrawn;
import org.axlecause.facts.History;
import org.axlecause.facts.Recorded;
import org.axlecause.measurement.CombinedRuns;

/**
 * What stands of a history once the entries taken back are left out, whatever order the withdrawals came in.
 *
 * @param entries standing entries, withdrawals among them, in the order that counts
 * @param withdrawn entries taken back
 * @param idle withdrawals that take nothing back, by what they aim at: nothing here, or another withdrawal
 */
record StandingHistory(List<Recorded> entries, Set<EntryId> withdrawn, List<Recorded> idle) {

    static StandingHistory of(History history) {
        Map<EntryId, Recorded> byId = new TreeMap<>();
        history.entries().forEach(recorded -> byId.put(recorded.id(), recorded));
        Set<EntryId> withdrawn = new HashSet<>();
        List<Recorded> idle = new ArrayList<>();
        for (Recorded recorded : history.entries()) {
            if (recorded.entry() instanceof EntryWithdrawn withdrawal) {
                Recorded target = byId.get(withdrawal.target());
                if (target == null || target.entry() instanceof EntryWithdrawn) {
                    idle.add(recorded);
                } else {
                    withdrawn.add(withdrawal.target());
                }
            }
        }
        List<Recorded> standing = history.entries().stream()
                .filter(recorded -> !withdrawn.contains(recorded.id()))
                .toList();
        return new StandingHistory(standing, Set.copyOf(withdrawn), List.copyOf(idle));
    }

    /** The same with the runs that repeat a test combined with it. */
    StandingHistory withRunsCombined() {
        return new StandingHistory(CombinedRuns.of(entries), withdrawn, idle);
    }

    /** Standing entries of one type. */
    List<Recorded> of(Class<? extends Entry> type) {
        return entries.stream()
                .filter(recorded -> type.isInstance(recorded.entry()))
                .toList();
    }
}
