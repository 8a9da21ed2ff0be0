package org.axlecause.judgement;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.axlecause.facts.Axle;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Exemption;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitStanding;
import org.axlecause.facts.Place;
import org.axlecause.facts.Policy;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.RetestComparison;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.WorkshopLimit;
import org.jspecify.annotations.Nullable;

/** Sets the figures of the final tests beside those of the arrival tests, with the regime's limit and the workshop's target. */
final class Comparisons {

    private static final Set<FigureKind> COMPARED = EnumSet.of(
            FigureKind.PEAK,
            FigureKind.DRAG,
            FigureKind.FLUCTUATION,
            FigureKind.IMBALANCE,
            FigureKind.IMBALANCE_PER_AXLE_MASS,
            FigureKind.IMBALANCE_OVER_AXLE_LOAD,
            FigureKind.EFFICIENCY,
            FigureKind.EFFORT_PER_MASS,
            FigureKind.PARKING_RATIO,
            FigureKind.MEAN_FULLY_DEVELOPED_DECELERATION,
            FigureKind.STOPPING_DISTANCE,
            FigureKind.RISE_LAG,
            FigureKind.RELEASE_LAG,
            FigureKind.RELEASE_TIME,
            FigureKind.RESIDUAL);

    private static final Map<FigureKind, Aim> SERVICE_AIMS = new EnumMap<>(Map.of(
            FigureKind.IMBALANCE, new Aim(ThresholdCode.RETEST_IMBALANCE, ThresholdCode.ONE_WHEEL_LOW_IMBALANCE),
            FigureKind.PEAK_IMBALANCE, new Aim(ThresholdCode.RETEST_IMBALANCE, ThresholdCode.ONE_WHEEL_LOW_IMBALANCE),
            FigureKind.RISE_LAG, new Aim(ThresholdCode.RETEST_LAG, ThresholdCode.LAG),
            FigureKind.RELEASE_LAG, new Aim(ThresholdCode.RETEST_LAG, ThresholdCode.LAG),
            FigureKind.RELEASE_TIME, new Aim(ThresholdCode.RETEST_RELEASE_TIME, ThresholdCode.RELEASE_TIME),
            FigureKind.DRAG, new Aim(ThresholdCode.RETEST_DRAG, ThresholdCode.DRAG_FORCE),
            FigureKind.RESIDUAL, new Aim(ThresholdCode.RETEST_DRAG, ThresholdCode.RESIDUAL),
            FigureKind.FLUCTUATION, new Aim(ThresholdCode.RETEST_FLUCTUATION, ThresholdCode.FLUCTUATION)));

    private static final Map<FigureKind, Aim> PARKING_AIMS = new EnumMap<>(Map.of(
            FigureKind.IMBALANCE, new Aim(ThresholdCode.RETEST_PARKING_IMBALANCE, ThresholdCode.PARKING_IMBALANCE),
            FigureKind.PEAK_IMBALANCE, new Aim(ThresholdCode.RETEST_PARKING_IMBALANCE, ThresholdCode.PARKING_IMBALANCE),
            FigureKind.EFFICIENCY,
                    new Aim(ThresholdCode.RETEST_PARKING_EFFICIENCY, ThresholdCode.PARKING_LOW_EFFICIENCY)));

    private Comparisons() {}

    /** The figures of the final tests; those that work was reported after prove nothing and are left out. */
    static List<RetestComparison> of(
            Tests tests, LaterWork later, Vehicle vehicle, Policy policy, @Nullable RegimeTerms terms) {
        Map<Key, BigDecimal> before = new HashMap<>();
        for (Figure figure : tests.figures(Tests.BEFORE)) {
            if (figure.value() != null) {
                before.put(Key.of(figure), figure.value());
            }
        }
        List<Figure> after = tests.figures(Tests.AFTER).stream()
                .filter(figure -> !later.voids(figure))
                .toList();
        List<Exemption> exemptions = tests.exemptions(Tests.AFTER);
        List<RetestComparison> comparisons = new ArrayList<>();
        for (Figure figure : after) {
            boolean compared = COMPARED.contains(figure.kind())
                    || standsIn(figure, after)
                    || (figure.kind() == FigureKind.DRAG_SHARE_OF_AXLE_LOAD && strictest(figure, terms) != null);
            if (figure.value() != null && compared) {
                boolean exempt = exemptions.stream().anyMatch(exemption -> exemption.isOf(figure));
                comparisons.add(comparison(figure, before.get(Key.of(figure)), exempt, vehicle, policy, terms));
            }
        }
        return comparisons;
    }

    /** Where a regime relates the difference of the wheels to a load, the workshop's target is held by that of the peaks. */
    private static boolean standsIn(Figure figure, List<Figure> all) {
        return figure.kind() == FigureKind.PEAK_IMBALANCE
                && all.stream()
                        .noneMatch(other -> other.kind() == FigureKind.IMBALANCE
                                && other.value() != null
                                && other.brake() == figure.brake()
                                && other.place().equals(figure.place()));
    }

    private static RetestComparison comparison(
            Figure figure,
            @Nullable BigDecimal before,
            boolean exempt,
            Vehicle vehicle,
            Policy policy,
            @Nullable RegimeTerms terms) {
        BigDecimal after = Objects.requireNonNull(figure.value());
        Limit limit = strictest(figure, terms);
        Aim aim = aim(figure, vehicle);
        BigDecimal target = stricter(
                figure.kind(),
                aim == null ? null : value(policy, aim.target()),
                limitOfPolicy(policy, figure, vehicle));
        BigDecimal sign = aim == null ? null : value(policy, aim.sign());
        return new RetestComparison(
                figure.kind(),
                figure.brake(),
                figure.place(),
                before,
                after,
                before != null
                        && sign != null
                        && (before.compareTo(sign) == 0 || !reaches(figure.kind(), before, sign)),
                exempt || limit == null || !limit.isBrokenBy(figure),
                target == null ? null : reaches(figure.kind(), after, target),
                limit == null ? null : limit.value(),
                target);
    }

    /** The limit of the regime that refuses first; a value of the workshop is none. */
    private static @Nullable Limit strictest(Figure figure, @Nullable RegimeTerms terms) {
        Limit strictest = null;
        if (terms != null) {
            for (Limit limit : terms.limits()) {
                if (limit.standing() == LimitStanding.REGIME
                        && limit.isAbout(figure)
                        && (strictest == null || limit.bound().refuses(strictest.value(), limit.value()))) {
                    strictest = limit;
                }
            }
        }
        return strictest;
    }

    /** The strictest limit that the policy sets for the figure beside the law, or null. */
    private static @Nullable BigDecimal limitOfPolicy(Policy policy, Figure figure, Vehicle vehicle) {
        BigDecimal strictest = null;
        for (WorkshopLimit limit : policy.limits()) {
            if (limit.isAbout(figure.kind(), figure.brake()) && holdsAt(limit, figure.place(), vehicle)) {
                strictest = stricter(figure.kind(), strictest, limit.value());
            }
        }
        return strictest;
    }

    private static boolean holdsAt(WorkshopLimit limit, Place place, Vehicle vehicle) {
        if (limit.isOfVehicle()) {
            return place.equals(Place.VEHICLE);
        }
        Axle axle = place.axle() == null ? null : vehicle.axle(place.axle());
        return axle != null && limit.isFor(axle);
    }

    private static @Nullable BigDecimal stricter(
            FigureKind kind, @Nullable BigDecimal one, @Nullable BigDecimal other) {
        if (one == null || other == null) {
            return one == null ? other : one;
        }
        return reaches(kind, one, other) ? one : other;
    }

    /** Whether a value is at least as good as another. */
    private static boolean reaches(FigureKind kind, BigDecimal value, BigDecimal other) {
        return kind.isBetterHigh() ? value.compareTo(other) >= 0 : value.compareTo(other) <= 0;
    }

    private static @Nullable Aim aim(Figure figure, Vehicle vehicle) {
        if (figure.kind() == FigureKind.EFFICIENCY && !figure.place().equals(Place.VEHICLE)) {
            return null;
        }
        Aim aim = (figure.brake() == BrakeSystem.PARKING ? PARKING_AIMS : SERVICE_AIMS).get(figure.kind());
        return aim != null && figure.kind() == FigureKind.FLUCTUATION && isDisc(figure.place(), vehicle)
                ? new Aim(ThresholdCode.RETEST_FLUCTUATION_DISC, aim.sign())
                : aim;
    }

    private static @Nullable BigDecimal value(Policy policy, ThresholdCode code) {
        return policy.thresholds().stream()
                .filter(threshold -> threshold.code() == code)
                .map(Threshold::value)
                .findFirst()
                .orElse(null);
    }

    private static boolean isDisc(Place place, Vehicle vehicle) {
        Axle axle = place.axle() == null ? null : vehicle.axle(place.axle());
        return axle != null && (axle.brake() == BrakeLayout.DISC_FLOATING || axle.brake() == BrakeLayout.DISC_FIXED);
    }

    /**
     * What the workshop makes of a figure.
     *
     * @param target value that a repaired axle should reach
     * @param sign value from which the workshop looks into it
     */
    private record Aim(ThresholdCode target, ThresholdCode sign) {}

    private record Key(FigureKind kind, BrakeSystem brake, Place place) {

        static Key of(Figure figure) {
            return new Key(figure.kind(), figure.brake(), figure.place());
        }
    }
}
