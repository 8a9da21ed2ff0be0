package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.Axle;
import org.axlecause.facts.Deficiency;
import org.axlecause.facts.Figure;
import org.axlecause.facts.LimitStanding;
import org.axlecause.facts.WorkshopLimit;

/**
 * Figures that keep the law and break a limit that the policy of the chain sets beside it. Such a limit warns,
 * without a class; where the law is broken as well, the law alone speaks.
 */
final class WorkshopLimits {

    private WorkshopLimits() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        def120(facts);
        def121(facts);
    }

    /** A figure of an axle keeps the law and breaks the limit of the policy. */
    private static void def120(Facts facts) {
        for (WorkshopLimit limit : facts.workshopLimits.all()) {
            if (!limit.isOfVehicle()) {
                for (Axle axle : facts.axles.all()) {
                    for (Figure figure : facts.figures.all()) {
                        if (limit.isBrokenOn(axle, figure)
                                && none(
                                        facts.limits.all(),
                                        otherLimit -> otherLimit.standing() == LimitStanding.REGIME
                                                && otherLimit.isBrokenBy(figure))
                                && none(facts.exemptions.all(), exemption -> exemption.isOf(figure))) {
                            facts.deficiencies.draw(new Deficiency(
                                    limit.deficiency(),
                                    figure.place(),
                                    figure.stage(),
                                    figure.test(),
                                    null,
                                    null,
                                    figure.value(),
                                    limit.asLimitOf(figure),
                                    because("DEF-120", figure, limit)));
                        }
                    }
                }
            }
        }
    }

    /** A figure of the vehicle keeps the law and breaks the limit of the policy. */
    private static void def121(Facts facts) {
        for (WorkshopLimit limit : facts.workshopLimits.all()) {
            if (limit.isOfVehicle()) {
                for (Figure figure : facts.figures.all()) {
                    if (limit.isBrokenByVehicle(figure)
                            && none(
                                    facts.limits.all(),
                                    otherLimit -> otherLimit.standing() == LimitStanding.REGIME
                                            && otherLimit.isBrokenBy(figure))
                            && none(facts.exemptions.all(), exemption -> exemption.isOf(figure))) {
                        facts.deficiencies.draw(new Deficiency(
                                limit.deficiency(),
                                figure.place(),
                                figure.stage(),
                                figure.test(),
                                null,
                                null,
                                figure.value(),
                                limit.asLimitOf(figure),
                                because("DEF-121", figure, limit)));
                    }
                }
            }
        }
    }
}
