package org.axlecause.repair;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.axlecause.facts.Because;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Decision;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeProposal;
import org.jspecify.annotations.Nullable;

/**
 * Merges proposals of one line into one, and lets a line that includes another's work take it along. The taker must be
 * as necessary as what it takes or agreed, and not refused, so that a required job never hides in an advised one.
 */
final class MergedLines {

    private final RepairCatalogue catalogue;
    private final Map<LineKey, Decision> decisions;
    private final Set<LineKey> done;
    private final Map<LineKey, Line> lines = new TreeMap<>();
    private final Map<LineKey, LineKey> takers = new HashMap<>();

    /** A line made of all proposals for it. */
    static final class Line {

        private final LineKey key;
        private final TreeSet<Because> grounds = new TreeSet<>();
        private ScopeExtent extent;
        private Necessity necessity;
        private @Nullable ClauseCode clause;

        private Line(ScopeProposal first) {
            this.key = first.line();
            this.extent = first.extent();
            this.necessity = first.necessity();
            add(first);
        }

        private void add(ScopeProposal proposal) {
            grounds.add(proposal.because());
            if (proposal.necessity().compareTo(necessity) < 0) {
                necessity = proposal.necessity();
                extent = proposal.extent();
                clause = null;
            }
            if (proposal.necessity() == necessity && proposal.clause() != null) {
                clause = clause == null || proposal.clause().compareTo(clause) < 0 ? proposal.clause() : clause;
            }
        }

        LineKey key() {
            return key;
        }

        ScopeExtent extent() {
            return extent;
        }

        Necessity necessity() {
            return necessity;
        }

        @Nullable
        ClauseCode clause() {
            return clause;
        }

        List<Because> grounds() {
            return List.copyOf(grounds);
        }
    }

    MergedLines(
            RepairCatalogue catalogue,
            List<ScopeProposal> proposals,
            Map<LineKey, Decision> decisions,
            Set<LineKey> done) {
        this.catalogue = catalogue;
        this.decisions = decisions;
        this.done = done;
        for (ScopeProposal proposal : proposals) {
            Line known = lines.get(proposal.line());
            if (known == null) {
                lines.put(proposal.line(), new Line(proposal));
            } else {
                known.add(proposal);
            }
        }
        new ArrayList<>(lines.values()).forEach(this::findTaker);
        takers.forEach((taken, taker) -> {
            Line into = lines.get(taker);
            Line from = lines.get(taken);
            if (into != null && from != null) {
                into.grounds.addAll(from.grounds);
            }
        });
    }

    /** Lines that stand on their own, by key. */
    Map<LineKey, Line> standing() {
        Map<LineKey, Line> standing = new LinkedHashMap<>(lines);
        standing.keySet().removeAll(takers.keySet());
        return standing;
    }

    /** The line that takes this one along, or null where it stands on its own. */
    @Nullable
    LineKey taker(LineKey line) {
        return takers.get(line);
    }

    /** What was proposed for a line, or null where nothing was. */
    @Nullable
    Line proposed(LineKey line) {
        return lines.get(line);
    }

    private void findTaker(Line taken) {
        LineKey found = null;
        for (Line candidate : lines.values()) {
            if (mayTake(candidate, taken) && (found == null || isTaken(found))) {
                found = candidate.key;
            }
        }
        if (found != null && !done.contains(taken.key)) {
            takers.put(taken.key, found);
        }
    }

    private boolean isTaken(LineKey line) {
        Line proposed = lines.get(line);
        return proposed != null && lines.values().stream().anyMatch(candidate -> mayTake(candidate, proposed));
    }

    private boolean mayTake(Line taker, Line taken) {
        Decision decision = decisions.get(taker.key);
        boolean refused = decision == Decision.REFUSED || decision == Decision.LATER;
        boolean firm = decision == Decision.AGREED;
        return !taker.key.equals(taken.key)
                && !done.contains(taker.key)
                && taker.key.place().covers(taken.key.place())
                && catalogue
                        .operation(taker.key.action(), taker.key.item())
                        .takesAlong()
                        .contains(new Operation.Kind(taken.key.action(), taken.key.item()))
                && !refused
                && (firm || taker.necessity.compareTo(taken.necessity) <= 0);
    }
}
