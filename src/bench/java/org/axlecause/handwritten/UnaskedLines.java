package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.DecidedLine;
import org.axlecause.facts.LineDone;
import org.axlecause.facts.UnaskedLine;

/** Why a line stays on the list that nothing on record asks for any more: it was decided, or its work was done. */
final class UnaskedLines {

    private UnaskedLines() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        wrk821(facts);
        wrk822(facts);
    }

    /** A line was decided and nothing on record asks for it now. */
    private static void wrk821(Facts facts) {
        for (DecidedLine decided : facts.decidedLines.all()) {
            if (none(facts.scopeProposals.all(), proposal -> proposal.line().equals(decided.line()))) {
                facts.unaskedLines.draw(new UnaskedLine(decided.line(), because("WRK-821", decided)));
            }
        }
    }

    /** A line was done and nothing on record asks for it now. */
    private static void wrk822(Facts facts) {
        for (LineDone done : facts.linesDone.all()) {
            if (none(facts.scopeProposals.all(), proposal -> proposal.line().equals(done.line()))) {
                facts.unaskedLines.draw(new UnaskedLine(done.line(), because("WRK-822", done)));
            }
        }
    }
}
