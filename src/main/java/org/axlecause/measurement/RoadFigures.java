package org.axlecause.measurement;

import java.math.BigDecimal;
import java.math.MathContext;
import org.axlecause.facts.EffortUnit;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.RoadDeviation;
import org.axlecause.facts.RoadTerms;
import org.axlecause.facts.RoadTestRecorded;
import org.jspecify.annotations.Nullable;

/** Regime figures of a road test. */
final class RoadFigures {

    private static final BigDecimal TWO = BigDecimal.valueOf(2);

    private RoadFigures() {}

    static void of(EntryId id, RoadTestRecorded road, RegimeTerms terms, RegimeFigureSheet sheet) {
        RegimeFigureSheet.Test test = new RegimeFigureSheet.Test(id, road.stage(), road.brake());
        BigDecimal deceleration = deceleration(road, terms.road());
        if (deceleration == null) {
            sheet.cannotShow(
                    FigureKind.MEAN_FULLY_DEVELOPED_DECELERATION,
                    test,
                    Place.VEHICLE,
                    "neither the deceleration nor the speeds and distances it comes from were recorded");
        } else {
            sheet.show(
                    FigureKind.MEAN_FULLY_DEVELOPED_DECELERATION,
                    test,
                    Place.VEHICLE,
                    deceleration,
                    null,
                    basisOf(road, terms.road()));
            if (terms.road().decelerationCounts() && terms.effortUnit() == EffortUnit.SHARE_OF_WEIGHT) {
                sheet.show(
                        FigureKind.EFFICIENCY,
                        test,
                        Place.VEHICLE,
                        deceleration.divide(terms.gravity(), MathContext.DECIMAL128),
                        null,
                        "deceleration on the road / " + AxleFigures.plain(terms.gravity()) + " m/s2"
                                + terms.gravityVerified().remark("gravity")
                                + terms.road().verified().remark("rule"));
            }
        }
        BigDecimal stop = road.stoppingDistance();
        if (stop != null && terms.road().admitsStopFrom(road.initialSpeed())) {
            sheet.show(
                    FigureKind.STOPPING_DISTANCE,
                    test,
                    Place.VEHICLE,
                    stop,
                    null,
                    "as driven" + terms.road().verified().remark("rule"));
        } else if (stop != null) {
            sheet.cannotShow(
                    FigureKind.STOPPING_DISTANCE,
                    test,
                    Place.VEHICLE,
                    "not driven from a speed for which the regime has a stopping distance");
        }
        if (road.deviation() != null) {
            sheet.deviates(new RoadDeviation(id, road.stage(), road.brake(), road.deviation()));
        }
    }

    /** Mean deceleration: as recorded, from speeds and distances, or from the stop as a whole; null where none is known. */
    static @Nullable BigDecimal deceleration(RoadTestRecorded road, RoadTerms terms) {
        if (road.meanFullyDevelopedDeceleration() != null) {
            return road.meanFullyDevelopedDeceleration();
        }
        BigDecimal averaged = averaged(road, terms);
        return averaged != null ? averaged : overTheStop(road, terms);
    }

    private static @Nullable BigDecimal averaged(RoadTestRecorded road, RoadTerms terms) {
        BigDecimal from = road.beginDistance();
        BigDecimal to = road.endDistance();
        BigDecimal begin = speed(road.beginSpeed(), road.initialSpeed(), terms.averagingBegins());
        BigDecimal end = speed(road.endSpeed(), road.initialSpeed(), terms.averagingEnds());
        if (from == null || to == null || begin == null || end == null || to.compareTo(from) <= 0) {
            return null;
        }
        return begin.multiply(begin)
                .subtract(end.multiply(end))
                .divide(TWO.multiply(to.subtract(from)), MathContext.DECIMAL128);
    }

    private static @Nullable BigDecimal overTheStop(RoadTestRecorded road, RoadTerms terms) {
        BigDecimal speed = road.initialSpeed();
        BigDecimal distance = road.stoppingDistance();
        BigDecimal buildUp = terms.buildUp();
        return speed == null || distance == null || buildUp == null
                ? null
                : StoppingDistance.deceleration(speed, buildUp, distance);
    }

    private static String basisOf(RoadTestRecorded road, RoadTerms terms) {
        if (road.meanFullyDevelopedDeceleration() != null) {
            return "as recorded";
        }
        BigDecimal buildUp = terms.buildUp();
        return averaged(road, terms) != null || buildUp == null
                ? "from speeds and distances"
                : "from the stopping distance, " + AxleFigures.plain(buildUp) + " s allowed for the build-up"
                        + terms.buildUpVerified().remark("time");
    }

    private static @Nullable BigDecimal speed(
            @Nullable BigDecimal recorded, @Nullable BigDecimal initial, BigDecimal share) {
        return recorded != null ? recorded : initial == null ? null : initial.multiply(share);
    }
}
