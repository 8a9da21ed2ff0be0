package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.Deficiency;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.Deviation;
import org.axlecause.facts.Figure;
import org.axlecause.facts.InspectedItem;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitStanding;
import org.axlecause.facts.Place;
import org.axlecause.facts.RoadDeviation;

/**
 * Deficiencies of the service brake that show in a figure of a roller or road test, by the limits of the regime. Each
 * limit is in the regime's file with its source. What the regime gives no figure for is in judged-by-eye.drl.
 */
final class ServiceBrakeDeficiencies {

    private ServiceBrakeDeficiencies() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        def010(facts);
        def020(facts);
        def030(facts);
        def015(facts);
    }

    /** The wheels of an axle brake more unevenly than the regime allows. */
    private static void def010(Facts facts) {
        for (Limit limit : facts.limits.of(DeficiencyCode.SERVICE_IMBALANCE)) {
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
                                because("DEF-010", figure, limit)));
                    }
                }
            }
        }
    }

    /** The service brake achieves less than the regime asks. */
    private static void def020(Facts facts) {
        for (Limit limit : facts.limits.of(DeficiencyCode.SERVICE_EFFICIENCY)) {
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
                                because("DEF-020", figure, limit)));
                    }
                }
            }
        }
    }

    /** A wheel shows no effort of the service brake. */
    private static void def030(Facts facts) {
        for (Limit limit : facts.limits.of(DeficiencyCode.NO_EFFORT_AT_WHEEL)) {
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
                                because("DEF-030", figure, limit)));
                    }
                }
            }
        }
    }

    /** The vehicle leaves the straight line too far when it is braked on the road. */
    private static void def015(Facts facts) {
        for (InspectedItem item : facts.inspectedItems.of(DeficiencyCode.SERVICE_IMBALANCE)) {
            for (RoadDeviation deviation : facts.roadDeviations.all()) {
                if (deviation.brake() == item.brake() && deviation.deviation() == Deviation.EXCESSIVE) {
                    facts.deficiencies.draw(new Deficiency(
                            item.deficiency(),
                            Place.VEHICLE,
                            deviation.stage(),
                            deviation.test(),
                            item.severity(),
                            item.item(),
                            null,
                            null,
                            because("DEF-015", deviation, item)));
                }
            }
        }
    }
}
