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

/** Deficiencies of the parking brake that show in a figure of a roller or road test, by the limits of the regime. */
final class ParkingBrakeDeficiencies {

    private ParkingBrakeDeficiencies() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        def040(facts);
        def045(facts);
        def046(facts);
        def048(facts);
    }

    /** The parking brake achieves less than the regime asks. */
    private static void def040(Facts facts) {
        for (Limit limit : facts.limits.of(DeficiencyCode.PARKING_EFFICIENCY)) {
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
                                because("DEF-040", figure, limit)));
                    }
                }
            }
        }
    }

    /** The parking brake does not act on one side. */
    private static void def045(Facts facts) {
        for (Limit limit : facts.limits.of(DeficiencyCode.PARKING_ONE_SIDED)) {
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
                                because("DEF-045", figure, limit)));
                    }
                }
            }
        }
    }

    /** The vehicle leaves the straight line too far when it is braked by the parking brake on the road. */
    private static void def046(Facts facts) {
        for (InspectedItem item : facts.inspectedItems.of(DeficiencyCode.PARKING_ONE_SIDED)) {
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
                            because("DEF-046", deviation, item)));
                }
            }
        }
    }

    /** The parking brake that is also the secondary brake brakes unevenly. */
    private static void def048(Facts facts) {
        for (Limit limit : facts.limits.of(DeficiencyCode.PARKING_IMBALANCE)) {
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
                                because("DEF-048", figure, limit)));
                    }
                }
            }
        }
    }
}
