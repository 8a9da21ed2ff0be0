package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.RegimeGap;

/** What the regime needs and nobody has said becomes a question. */
final class RegimeGaps {

    private RegimeGaps() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        def005(facts);
    }

    /** The regime needs what is not known. */
    private static void def005(Facts facts) {
        for (RegimeGap gap : facts.regimeGaps.all()) {
            facts.openQuestions.draw(
                    new OpenQuestion(gap.code(), gap.place(), gap.says(), gap.resolve(), because("DEF-005", gap)));
        }
    }
}
