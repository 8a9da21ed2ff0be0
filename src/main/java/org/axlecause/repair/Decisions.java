package org.axlecause.repair;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.axlecause.facts.Decision;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.Party;
import org.jspecify.annotations.Nullable;

/** The decision that stands on each line, the last one in the order that counts. */
final class Decisions {

    private final Map<LineKey, LineDecision> standing = new TreeMap<>();
    private final boolean customerDecided;

    Decisions(List<LineDecision> all) {
        for (LineDecision decision : all) {
            LineKey line = LineKey.ofId(decision.line());
            if (line != null) {
                standing.put(line, decision);
            }
        }
        customerDecided = all.stream().anyMatch(decision -> decision.by() == Party.CUSTOMER);
    }

    @Nullable
    LineDecision on(LineKey line) {
        return standing.get(line);
    }

    Set<LineKey> lines() {
        return standing.keySet();
    }

    boolean customerDecided() {
        return customerDecided;
    }

    Map<LineKey, Decision> byLine() {
        Map<LineKey, Decision> decided = new TreeMap<>();
        standing.forEach((line, decision) -> decided.put(line, decision.decision()));
        return decided;
    }
}
