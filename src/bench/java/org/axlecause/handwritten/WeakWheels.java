package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.Strength;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.facts.Vehicle;

/**
 * Which wheel or axle reads low in the service brake. The lower wheel is not always the faulty one: it is not low
 * where it brakes as the vehicle's record leads to expect, and a wheel that met the limit of grip shows nothing of
 * its brake. Legal limits are not read here.
 */
final class WeakWheels {

    private WeakWheels() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sym010(facts);
        sym011(facts);
        sym015(facts);
        sym020(facts);
        sym030(facts);
        sym031(facts);
        sym040(facts);
        sym050(facts);
        sym060(facts);
        sym250(facts);
        sym251(facts);
        sym255(facts);
    }

    /** A wheel holds clearly less service braking force than its partner. */
    private static void sym010(Facts facts) {
        for (Figure high : facts.figures.of(FigureKind.HOLD)) {
            if (high.beforeRepair() && high.brake() == BrakeSystem.SERVICE) {
                for (Figure low : facts.figures.of(FigureKind.HOLD)) {
                    if (low.beforeRepair()
                            && low.brake() == BrakeSystem.SERVICE
                            && low.sameTest(high)
                            && low.place().isOpposite(high.place())
                            && none(
                                    facts.testDoubts.of(DoubtCode.LOCKED_ON_LIGHT_LOAD),
                                    doubt -> doubt.test().equals(low.test())
                                            && doubt.place().equals(low.place()))) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.ONE_WHEEL_LOW_IMBALANCE)) {
                            if (low.shortOf(high, limit.value())
                                    && none(
                                            facts.expectedForces.all(),
                                            expected ->
                                                    expected.isFor(low) && !expected.missedBy(limit.value(), low))) {
                                for (Threshold clear : facts.thresholds.of(ThresholdCode.ONE_WHEEL_LOW_CLEAR)) {
                                    for (Threshold strong : facts.thresholds.of(ThresholdCode.ONE_WHEEL_LOW_STRONG)) {
                                        facts.symptoms.draw(new Symptom(
                                                SymptomCode.ONE_WHEEL_LOW,
                                                low.place(),
                                                low.shortfall(high, clear.value(), strong.value()),
                                                because("SYM-010", low, high, limit)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel peaks clearly lower in the service brake than its partner and no held force is known. */
    private static void sym011(Facts facts) {
        for (Figure high : facts.figures.of(FigureKind.PEAK)) {
            if (high.beforeRepair() && high.brake() == BrakeSystem.SERVICE) {
                for (Figure low : facts.figures.of(FigureKind.PEAK)) {
                    if (low.beforeRepair()
                            && low.brake() == BrakeSystem.SERVICE
                            && low.sameTest(high)
                            && low.place().isOpposite(high.place())
                            && none(
                                    facts.figures.of(FigureKind.HOLD),
                                    figure -> figure.sameTest(low)
                                            && figure.place().equals(low.place())
                                            && figure.observable())
                            && none(
                                    facts.testDoubts.of(DoubtCode.LOCKED_ON_LIGHT_LOAD),
                                    doubt -> doubt.test().equals(low.test())
                                            && doubt.place().equals(low.place()))) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.ONE_WHEEL_LOW_IMBALANCE)) {
                            if (low.shortOf(high, limit.value())
                                    && none(
                                            facts.expectedForces.all(),
                                            expected ->
                                                    expected.isFor(low) && !expected.missedBy(limit.value(), low))) {
                                for (Threshold clear : facts.thresholds.of(ThresholdCode.ONE_WHEEL_LOW_CLEAR)) {
                                    for (Threshold strong : facts.thresholds.of(ThresholdCode.ONE_WHEEL_LOW_STRONG)) {
                                        facts.symptoms.draw(new Symptom(
                                                SymptomCode.ONE_WHEEL_LOW,
                                                low.place(),
                                                low.shortfall(high, clear.value(), strong.value()),
                                                because("SYM-011", low, high, limit)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** Both wheels of an axle were read in the service brake, so a weak one would show. */
    private static void sym015(Facts facts) {
        for (Figure high : facts.figures.of(FigureKind.PEAK)) {
            if (high.observable() && high.beforeRepair() && high.brake() == BrakeSystem.SERVICE) {
                for (Figure low : facts.figures.of(FigureKind.PEAK)) {
                    if (low.beforeRepair()
                            && low.brake() == BrakeSystem.SERVICE
                            && low.sameTest(high)
                            && low.place().isOpposite(high.place())
                            && low.observable()
                            && none(
                                    facts.testDoubts.of(DoubtCode.LOCKED_ON_LIGHT_LOAD),
                                    doubt -> doubt.test().equals(low.test())
                                            && doubt.place().equals(low.place()))) {
                        facts.symptomObservables.draw(new SymptomObservable(
                                SymptomCode.ONE_WHEEL_LOW, low.place(), because("SYM-015", low, high)));
                    }
                }
            }
        }
    }

    /** Both wheels of an axle brake weakly and alike. */
    private static void sym020(Facts facts) {
        for (Figure efficiency : facts.figures.of(FigureKind.EFFICIENCY)) {
            if (efficiency.beforeRepair()
                    && efficiency.brake() == BrakeSystem.SERVICE
                    && efficiency.place().axle() != null) {
                for (Figure imbalance : facts.figures.of(FigureKind.PEAK_IMBALANCE)) {
                    if (imbalance.beforeRepair()
                            && imbalance.brake() == BrakeSystem.SERVICE
                            && imbalance.sameTest(efficiency)
                            && imbalance.place().equals(efficiency.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.AXLE_LOW_EFFICIENCY)) {
                            if (efficiency.below(limit.value())) {
                                for (Threshold balanced : facts.thresholds.of(ThresholdCode.BALANCED_IMBALANCE)) {
                                    if (imbalance.below(balanced.value())) {
                                        facts.symptoms.draw(new Symptom(
                                                SymptomCode.AXLE_LOW,
                                                efficiency.place(),
                                                Strength.CLEAR,
                                                because("SYM-020", efficiency, imbalance, limit)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** The diagonal of the front left wheel reads low in a diagonally split system. */
    private static void sym030(Facts facts) {
        for (Figure front : facts.figures.of(FigureKind.PEAK)) {
            if (front.beforeRepair()
                    && front.brake() == BrakeSystem.SERVICE
                    && front.place().axle() != null
                    && front.place().axle() == 1
                    && front.place().side() == Side.LEFT) {
                for (Figure rear : facts.figures.of(FigureKind.PEAK)) {
                    if (rear.beforeRepair()
                            && rear.brake() == BrakeSystem.SERVICE
                            && rear.place().axle() != null
                            && rear.place().axle() > 1
                            && rear.place().side() == Side.RIGHT) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.ONE_WHEEL_LOW_IMBALANCE)) {
                            if (any(
                                            facts.figures.of(FigureKind.PEAK),
                                            figure -> figure.beforeRepair()
                                                    && figure.brake() == BrakeSystem.SERVICE
                                                    && figure.sameTest(front)
                                                    && figure.place().isOpposite(front.place())
                                                    && front.shortOf(figure, limit.value()))
                                    && any(
                                            facts.figures.of(FigureKind.PEAK),
                                            figure -> figure.beforeRepair()
                                                    && figure.brake() == BrakeSystem.SERVICE
                                                    && figure.sameTest(rear)
                                                    && figure.place().isOpposite(rear.place())
                                                    && rear.shortOf(figure, limit.value()))) {
                                for (Vehicle vehicle : facts.vehicles.all()) {
                                    if (vehicle.circuitSplit() == CircuitSplit.DIAGONAL) {
                                        facts.symptoms.draw(new Symptom(
                                                SymptomCode.DIAGONAL_LOW,
                                                Place.ofCircuit(vehicle.circuitOf(front.place())),
                                                Strength.CLEAR,
                                                because("SYM-030", front, rear, limit)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** The diagonal of the front right wheel reads low in a diagonally split system. */
    private static void sym031(Facts facts) {
        for (Figure front : facts.figures.of(FigureKind.PEAK)) {
            if (front.beforeRepair()
                    && front.brake() == BrakeSystem.SERVICE
                    && front.place().axle() != null
                    && front.place().axle() == 1
                    && front.place().side() == Side.RIGHT) {
                for (Figure rear : facts.figures.of(FigureKind.PEAK)) {
                    if (rear.beforeRepair()
                            && rear.brake() == BrakeSystem.SERVICE
                            && rear.place().axle() != null
                            && rear.place().axle() > 1
                            && rear.place().side() == Side.LEFT) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.ONE_WHEEL_LOW_IMBALANCE)) {
                            if (any(
                                            facts.figures.of(FigureKind.PEAK),
                                            figure -> figure.beforeRepair()
                                                    && figure.brake() == BrakeSystem.SERVICE
                                                    && figure.sameTest(front)
                                                    && figure.place().isOpposite(front.place())
                                                    && front.shortOf(figure, limit.value()))
                                    && any(
                                            facts.figures.of(FigureKind.PEAK),
                                            figure -> figure.beforeRepair()
                                                    && figure.brake() == BrakeSystem.SERVICE
                                                    && figure.sameTest(rear)
                                                    && figure.place().isOpposite(rear.place())
                                                    && rear.shortOf(figure, limit.value()))) {
                                for (Vehicle vehicle : facts.vehicles.all()) {
                                    if (vehicle.circuitSplit() == CircuitSplit.DIAGONAL) {
                                        facts.symptoms.draw(new Symptom(
                                                SymptomCode.DIAGONAL_LOW,
                                                Place.ofCircuit(vehicle.circuitOf(front.place())),
                                                Strength.CLEAR,
                                                because("SYM-031", front, rear, limit)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** The front axle brakes weakly and alike in a front-rear split system. */
    private static void sym040(Facts facts) {
        for (Figure efficiency : facts.figures.of(FigureKind.EFFICIENCY)) {
            if (efficiency.beforeRepair()
                    && efficiency.brake() == BrakeSystem.SERVICE
                    && efficiency.place().axle() != null
                    && efficiency.place().axle() == 1
                    && any(facts.vehicles.all(), vehicle -> vehicle.circuitSplit() == CircuitSplit.FRONT_REAR)) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.AXLE_LOW_EFFICIENCY)) {
                    if (efficiency.below(limit.value())) {
                        for (Threshold balanced : facts.thresholds.of(ThresholdCode.BALANCED_IMBALANCE)) {
                            if (any(
                                    facts.figures.of(FigureKind.PEAK_IMBALANCE),
                                    figure -> figure.beforeRepair()
                                            && figure.brake() == BrakeSystem.SERVICE
                                            && figure.sameTest(efficiency)
                                            && figure.place().equals(efficiency.place())
                                            && figure.below(balanced.value()))) {
                                facts.symptoms.draw(new Symptom(
                                        SymptomCode.FRONT_AXLE_LOW,
                                        efficiency.place(),
                                        Strength.CLEAR,
                                        because("SYM-040", efficiency, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A rear axle brakes weakly and alike in a front-rear split system. */
    private static void sym050(Facts facts) {
        for (Figure efficiency : facts.figures.of(FigureKind.EFFICIENCY)) {
            if (efficiency.beforeRepair()
                    && efficiency.brake() == BrakeSystem.SERVICE
                    && efficiency.place().axle() != null
                    && efficiency.place().axle() > 1
                    && any(facts.vehicles.all(), vehicle -> vehicle.circuitSplit() == CircuitSplit.FRONT_REAR)) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.AXLE_LOW_EFFICIENCY)) {
                    if (efficiency.below(limit.value())) {
                        for (Threshold balanced : facts.thresholds.of(ThresholdCode.BALANCED_IMBALANCE)) {
                            if (any(
                                    facts.figures.of(FigureKind.PEAK_IMBALANCE),
                                    figure -> figure.beforeRepair()
                                            && figure.brake() == BrakeSystem.SERVICE
                                            && figure.sameTest(efficiency)
                                            && figure.place().equals(efficiency.place())
                                            && figure.below(balanced.value()))) {
                                facts.symptoms.draw(new Symptom(
                                        SymptomCode.REAR_AXLE_LOW,
                                        efficiency.place(),
                                        Strength.CLEAR,
                                        because("SYM-050", efficiency, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** The whole vehicle brakes weakly and no axle is out of balance. */
    private static void sym060(Facts facts) {
        for (Figure efficiency : facts.figures.of(FigureKind.EFFICIENCY)) {
            if (efficiency.beforeRepair()
                    && efficiency.brake() == BrakeSystem.SERVICE
                    && efficiency.place().equals(Place.VEHICLE)) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.VEHICLE_LOW_EFFICIENCY)) {
                    if (efficiency.below(limit.value())) {
                        for (Threshold balanced : facts.thresholds.of(ThresholdCode.BALANCED_IMBALANCE)) {
                            if (any(
                                            facts.figures.of(FigureKind.PEAK_IMBALANCE),
                                            figure -> figure.beforeRepair()
                                                    && figure.brake() == BrakeSystem.SERVICE
                                                    && figure.below(balanced.value()))
                                    && none(
                                            facts.figures.of(FigureKind.PEAK_IMBALANCE),
                                            figure -> figure.beforeRepair()
                                                    && figure.brake() == BrakeSystem.SERVICE
                                                    && figure.reaches(balanced.value()))) {
                                facts.symptoms.draw(new Symptom(
                                        SymptomCode.ALL_WHEELS_LOW,
                                        Place.VEHICLE,
                                        Strength.CLEAR,
                                        because("SYM-060", efficiency, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel gives hardly any service braking force beside its partner. */
    private static void sym250(Facts facts) {
        for (Figure high : facts.figures.of(FigureKind.PEAK)) {
            if (high.beforeRepair() && high.brake() == BrakeSystem.SERVICE) {
                for (Figure low : facts.figures.of(FigureKind.PEAK)) {
                    if (low.beforeRepair()
                            && low.brake() == BrakeSystem.SERVICE
                            && low.sameTest(high)
                            && low.place().isOpposite(high.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.NO_FORCE_SHARE)) {
                            if (low.belowShareOf(high, limit.value())) {
                                facts.symptoms.draw(new Symptom(
                                        SymptomCode.NO_FORCE_AT_WHEEL,
                                        low.place(),
                                        Strength.STRONG,
                                        because("SYM-250", low, high, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel peaks at no more than a rolling wheel needs. */
    private static void sym251(Facts facts) {
        for (Figure low : facts.figures.of(FigureKind.PEAK)) {
            if (low.beforeRepair() && low.brake() == BrakeSystem.SERVICE) {
                for (Threshold rolling : facts.thresholds.of(ThresholdCode.DRAG_FORCE)) {
                    if (low.below(rolling.value())) {
                        facts.symptoms.draw(new Symptom(
                                SymptomCode.NO_FORCE_AT_WHEEL,
                                low.place(),
                                Strength.STRONG,
                                because("SYM-251", low, rolling)));
                    }
                }
            }
        }
    }

    /** A wheel gives service braking force worth the name. */
    private static void sym255(Facts facts) {
        for (Figure low : facts.figures.of(FigureKind.PEAK)) {
            if (low.beforeRepair() && low.brake() == BrakeSystem.SERVICE && low.observable()) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.NO_FORCE_SHARE)) {
                    for (Threshold rolling : facts.thresholds.of(ThresholdCode.DRAG_FORCE)) {
                        if (any(
                                facts.figures.of(FigureKind.PEAK),
                                figure -> figure.beforeRepair()
                                        && figure.brake() == BrakeSystem.SERVICE
                                        && figure.sameTest(low)
                                        && figure.place().isOpposite(low.place())
                                        && low.reaches(rolling.value())
                                        && !low.belowShareOf(figure, limit.value()))) {
                            facts.symptomObservables.draw(new SymptomObservable(
                                    SymptomCode.NO_FORCE_AT_WHEEL, low.place(), because("SYM-255", low)));
                        }
                    }
                }
            }
        }
    }
}
