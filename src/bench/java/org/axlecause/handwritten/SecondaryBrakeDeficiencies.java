package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.Deficiency;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.Figure;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitStanding;

/**
 * Deficiencies of the secondary brake that show in a figure of a roller or road test, by the limits of the regime.
 */
final class SecondaryBrakeDeficiencies {

    private SecondaryBrakeDeficiencies() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        def050(facts);
        def055(facts);
    }

    /** The secondary brake achieves less than the regime asks. */
    private static void def050(Facts facts) {
        for (Limit limit : facts.limits.of(DeficiencyCode.SECONDARY_EFFICIENCY)) {
            if (limit.standing() == LimitStanding.REGIME) {
                for (Figure figure : facts.figures.all()) {
                    if (limit.isBrokenBy(figure)
                            && none(
                                    facts.limits.all(),
                                    otherLimit -> limit.yieldsTo(otherLimit) && otherLimit.isBrokenBy(figure))
                            && none(facts.exemptions.all(), exemption -> exemption.isOf(figure))) {
                        facts.deficiencies.draw(new Deficiency(
                                limit.deficiency(),
                                figure.place(),
                                figure.stage(),
                                figure.test(),
                                limit.severity(),
                                limit.item(),
                                figure.value(),
                                limit,
                                because("DEF-050", figure, limit)));
                    }
                }
            }
        }
    }

    /** The wheels of an axle are braked unevenly by the secondary brake. */
    private static void def055(Facts facts) {
        for (Limit limit : facts.limits.of(DeficiencyCode.SECONDARY_IMBALANCE)) {
            if (limit.standing() == LimitStanding.REGIME) {
                for (Figure figure : facts.figures.all()) {
                    if (limit.isBrokenBy(figure)
                            && none(
                                    facts.limits.all(),
                                    otherLimit -> limit.yieldsTo(otherLimit) && otherLimit.isBrokenBy(figure))
                            && none(facts.exemptions.all(), exemption -> exemption.isOf(figure))) {
                        facts.deficiencies.draw(new Deficiency(
                                limit.deficiency(),
                                figure.place(),
                                figure.stage(),
                                figure.test(),
                                limit.severity(),
                                limit.item(),
                                figure.value(),
                                limit,
                                because("DEF-055", figure, limit)));
                    }
                }
            }
        }
    }
}
