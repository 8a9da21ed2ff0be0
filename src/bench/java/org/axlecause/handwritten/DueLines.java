package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.DecidedLine;
import org.axlecause.facts.Decision;
import org.axlecause.facts.DueLine;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.ScopeProposal;

/**
 * What is to be done unless somebody refuses it. What follows from doing a line follows from these, so that a refused
 * line takes its consequences along and an agreed one makes them required.
 */
final class DueLines {

    private DueLines() {}

    /** Draws whether a proposed line is due. */
    static void conclude(Facts facts, ScopeProposal line) {
        sco001(facts, line);
        sco002(facts, line);
    }

    /** A line stands on which nobody has decided. */
    private static void sco001(Facts facts, ScopeProposal line) {
        LineKey key = line.line();
        if (none(facts.decidedLines.all(), decided -> decided.line().equals(key))
                && none(facts.departures.all(), departure -> departure.frees(line))) {
            facts.dueLines.draw(new DueLine(key, line.necessity(), because("SCO-001", line)));
        }
    }

    /** A line stands that was agreed. */
    private static void sco002(Facts facts, ScopeProposal line) {
        LineKey key = line.line();
        if (none(facts.departures.all(), departure -> departure.frees(line))) {
            for (DecidedLine decided : facts.decidedLines.all()) {
                if (decided.line().equals(key) && decided.decision() == Decision.AGREED) {
                    facts.dueLines.draw(new DueLine(key, Necessity.REQUIRED, because("SCO-002", line, decided)));
                }
            }
        }
    }
}
