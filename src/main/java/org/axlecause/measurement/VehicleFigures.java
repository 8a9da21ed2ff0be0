package org.axlecause.measurement;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.axlecause.facts.Axle;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Lenience;
import org.axlecause.facts.MassBasis;
import org.axlecause.facts.MassTerm;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.RegimeGap;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.Side;
import org.axlecause.facts.Vehicle;
import org.jspecify.annotations.Nullable;

/** Regime figures of the whole vehicle, made of the latest test of each axle in one stage with one brake. */
final class VehicleFigures {

    private VehicleFigures() {}

    static void of(List<TestedAxle> axles, Vehicle vehicle, RegimeTerms terms, RegimeFigureSheet sheet) {
        TestedAxle last = lastOf(axles);
        FigureKind kind = AxleFigures.effortKind(terms);
        Set<Integer> untested = untested(axles, vehicle, last.test().brake());
        if (!untested.isEmpty()) {
            String missing = untested.stream().map(String::valueOf).collect(Collectors.joining(", "));
            sheet.cannotShow(kind, last.test(), Place.VEHICLE, "not tested in this stage: axle " + missing);
            return;
        }
        List<BigDecimal> forces = new ArrayList<>();
        for (TestedAxle axle : axles) {
            BigDecimal left = axle.left();
            BigDecimal right = axle.right();
            if (left == null || right == null) {
                sheet.cannotShow(
                        kind,
                        last.test(),
                        Place.VEHICLE,
                        "the force of a wheel of axle " + axle.number() + " was not recorded");
                return;
            }
            forces.add(left);
            forces.add(right);
        }
        MassTerm mass = massOf(axles, vehicle, terms);
        BigDecimal kilograms = mass == null ? null : mass.kilograms();
        if (mass == null || kilograms == null || kilograms.signum() <= 0) {
            sheet.cannotShow(kind, last.test(), Place.VEHICLE, "the mass to relate the forces to is not known");
            if (!terms.masses().isEmpty()) {
                sheet.lacks(new RegimeGap(
                        QuestionCode.MASS_MISSING,
                        Place.VEHICLE,
                        "The mass to which " + terms.regime() + " relates the brake forces is not known",
                        "Weigh every axle during the test and send the loads"));
            }
            return;
        }
        BigDecimal sum = forces.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal weight = AxleFigures.weight(kilograms, terms);
        BigDecimal value = RegimeFigures.rounded(sum.divide(weight, MathContext.DECIMAL128), terms);
        sheet.show(
                kind,
                last.test(),
                Place.VEHICLE,
                value,
                UncertaintyOfRatio.ofEffort(axles, sum, weight),
                AxleFigures.massBasis(kilograms, mass.name(), terms));
        lenience(kind, value, axles, vehicle, last, terms, sheet);
    }

    private static void lenience(
            FigureKind kind,
            BigDecimal value,
            List<TestedAxle> axles,
            Vehicle vehicle,
            TestedAxle last,
            RegimeTerms terms,
            RegimeFigureSheet sheet) {
        for (Lenience each : terms.lenience()) {
            if (each.kind() == kind && each.brake() == last.test().brake()) {
                String why = whyLenient(each, value, axles, vehicle, last.test().brake());
                if (why != null) {
                    sheet.exempt(kind, last.test(), Place.VEHICLE, why + AxleFigures.by(each));
                }
            }
        }
    }

    private static @Nullable String whyLenient(
            Lenience lenience, BigDecimal value, List<TestedAxle> axles, Vehicle vehicle, BrakeSystem brake) {
        int locked = axles.stream().mapToInt(TestedAxle::lockedWheels).sum();
        int wheels = 2 * Math.max(axles.size(), acting(vehicle, brake).size());
        boolean all = locked == wheels;
        boolean front = axles.stream()
                .anyMatch(axle -> axle.number() == 1 && axle.locked(Side.LEFT) && axle.locked(Side.RIGHT));
        BigDecimal lower = lenience.value();
        return switch (lenience.when()) {
            case MORE_THAN_HALF_LOCKED ->
                2 * locked > wheels ? locked + " of " + wheels + " wheels locked, more than half" : null;
            case ALL_LOCKED -> all ? "all wheels locked" : null;
            case FRONT_AXLE_OR_ALL_LOCKED ->
                all ? "all wheels locked" : front ? "both wheels of the front axle locked" : null;
            case WET_ROLLERS ->
                lower != null && axles.stream().anyMatch(TestedAxle::wet) && value.compareTo(lower) >= 0
                        ? "the rollers were wet and " + AxleFigures.plain(lower) + " N/kg is reached"
                        : null;
            case LOWER_WHEEL_LOCKED, BOTH_WHEELS_LOW -> null;
        };
    }

    private static @Nullable MassTerm massOf(List<TestedAxle> axles, Vehicle vehicle, RegimeTerms terms) {
        for (MassTerm term : terms.masses()) {
            if (term.basis() != MassBasis.AXLE_LOADS) {
                return term;
            }
            BigDecimal sum = BigDecimal.ZERO;
            Set<Integer> open = numbers(vehicle.axles());
            for (TestedAxle axle : axles) {
                BigDecimal weighed = axle.weighed();
                if (weighed != null) {
                    sum = sum.add(weighed);
                    open.remove(axle.number());
                }
            }
            if (open.isEmpty() && sum.signum() > 0) {
                return new MassTerm(MassBasis.AXLE_LOADS, sum, term.name());
            }
        }
        return null;
    }

    private static Set<Integer> untested(List<TestedAxle> axles, Vehicle vehicle, BrakeSystem brake) {
        Set<Integer> numbers = acting(vehicle, brake);
        axles.forEach(axle -> numbers.remove(axle.number()));
        return numbers;
    }

    /** Axles on which the brake acts; a secondary brake may act on any, so none is asked for. */
    private static Set<Integer> acting(Vehicle vehicle, BrakeSystem brake) {
        return switch (brake) {
            case SECONDARY -> new TreeSet<>();
            case PARKING ->
                numbers(vehicle.axles().stream()
                        .filter(axle -> axle.parkingBrake() != ParkingLayout.NONE)
                        .toList());
            case SERVICE -> {
                List<Axle> braked = vehicle.axles().stream()
                        .filter(axle -> axle.brake() != null)
                        .toList();
                yield numbers(braked.isEmpty() ? vehicle.axles() : braked);
            }
        };
    }

    private static Set<Integer> numbers(List<Axle> axles) {
        return axles.stream().map(Axle::number).collect(Collectors.toCollection(TreeSet::new));
    }

    private static TestedAxle lastOf(List<TestedAxle> axles) {
        return axles.get(axles.size() - 1);
    }
}
