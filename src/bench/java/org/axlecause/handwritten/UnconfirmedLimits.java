package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.Deficiency;
import org.axlecause.facts.Figure;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitStanding;

/**
 * Some regimes have a figure that nobody has read in a text yet. It stands in the regime's file with the standing of
 * the workshop: it warns, takes no class, and the inspector judges.
 */
final class UnconfirmedLimits {

    private UnconfirmedLimits() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        def100(facts);
    }

    /** A figure lies beyond a value that no text of the regime confirms yet. */
    private static void def100(Facts facts) {
        for (Limit limit : facts.limits.all()) {
            if (limit.standing() == LimitStanding.WORKSHOP) {
                for (Figure figure : facts.figures.all()) {
                    if (limit.isBrokenBy(figure) && none(facts.exemptions.all(), exemption -> exemption.isOf(figure))) {
                        facts.deficiencies.draw(new Deficiency(
                                limit.deficiency(),
                                figure.place(),
                                figure.stage(),
                                figure.test(),
                                null,
                                limit.item(),
                                figure.value(),
                                limit,
                                because("DEF-100", figure, limit)));
                    }
                }
            }
        }
    }
}
