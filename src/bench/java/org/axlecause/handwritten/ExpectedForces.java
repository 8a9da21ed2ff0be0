package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.ExpectedForce;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Side;
import org.axlecause.facts.Strength;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;

/**
 * Forces against what the model's data or the vehicle's last test lead to expect. They alone tell a weak wheel from a
 * partner that grabs, and they show two faults that balance each other out.
 */
final class ExpectedForces {

    private ExpectedForces() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sym012(facts);
        sym021(facts);
        sym170(facts);
        sym175(facts);
    }

    /** A wheel falls far short of its expected force and its partner does not. */
    private static void sym012(Facts facts) {
        for (Figure low : facts.figures.of(FigureKind.PEAK)) {
            if (low.beforeRepair() && low.brake() == BrakeSystem.SERVICE) {
                for (ExpectedForce expected : facts.expectedForces.all()) {
                    if (expected.isFor(low)) {
                        for (Figure other : facts.figures.of(FigureKind.PEAK)) {
                            if (other.sameTest(low) && other.place().isOpposite(low.place()) && other.observable()) {
                                for (Threshold share : facts.thresholds.of(ThresholdCode.AXLE_LOW_SHARE)) {
                                    if (expected.lessThanShareIs(share.value(), low)
                                            && none(
                                                    facts.expectedForces.all(),
                                                    expectedForce -> expectedForce.isFor(other)
                                                            && expectedForce.lessThanShareIs(share.value(), other))) {
                                        facts.symptoms.draw(new Symptom(
                                                SymptomCode.ONE_WHEEL_LOW,
                                                low.place(),
                                                Strength.CLEAR,
                                                because("SYM-012", low, expected)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** Both wheels of an axle fall far short of their expected forces. */
    private static void sym021(Facts facts) {
        for (Figure left : facts.figures.of(FigureKind.PEAK)) {
            if (left.beforeRepair()
                    && left.brake() == BrakeSystem.SERVICE
                    && left.place().side() == Side.LEFT) {
                for (ExpectedForce ofLeft : facts.expectedForces.all()) {
                    if (ofLeft.isFor(left)) {
                        for (Figure right : facts.figures.of(FigureKind.PEAK)) {
                            if (right.sameTest(left) && right.place().isOpposite(left.place())) {
                                for (ExpectedForce ofRight : facts.expectedForces.all()) {
                                    if (ofRight.isFor(right)) {
                                        for (Threshold share : facts.thresholds.of(ThresholdCode.AXLE_LOW_SHARE)) {
                                            if (ofLeft.lessThanShareIs(share.value(), left)
                                                    && ofRight.lessThanShareIs(share.value(), right)) {
                                                facts.symptoms.draw(new Symptom(
                                                        SymptomCode.AXLE_LOW,
                                                        left.place().axlePlace(),
                                                        Strength.CLEAR,
                                                        because("SYM-021", left, ofLeft, right, ofRight)));
                                            }
                                        }
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel brakes far above its expected force while its partner brakes as expected. */
    private static void sym170(Facts facts) {
        for (Figure high : facts.figures.of(FigureKind.PEAK)) {
            if (high.beforeRepair() && high.brake() == BrakeSystem.SERVICE) {
                for (ExpectedForce expected : facts.expectedForces.all()) {
                    if (expected.isFor(high)) {
                        for (Figure other : facts.figures.of(FigureKind.PEAK)) {
                            if (other.sameTest(high) && other.place().isOpposite(high.place()) && other.observable()) {
                                for (Threshold above : facts.thresholds.of(ThresholdCode.GRAB_ABOVE_EXPECTED)) {
                                    if (expected.exceededBy(above.value(), high)) {
                                        for (Threshold limit :
                                                facts.thresholds.of(ThresholdCode.ONE_WHEEL_LOW_IMBALANCE)) {
                                            if (any(
                                                    facts.expectedForces.all(),
                                                    expectedForce -> expectedForce.isFor(other)
                                                            && !expectedForce.missedBy(limit.value(), other))) {
                                                facts.symptoms.draw(new Symptom(
                                                        SymptomCode.GRAB_ONE_WHEEL,
                                                        high.place(),
                                                        Strength.CLEAR,
                                                        because("SYM-170", high, expected, other)));
                                            }
                                        }
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** The force of a wheel was held against its record, so a grabbing one would show. */
    private static void sym175(Facts facts) {
        for (Figure peak : facts.figures.of(FigureKind.PEAK)) {
            if (peak.beforeRepair() && peak.brake() == BrakeSystem.SERVICE && peak.observable()) {
                for (ExpectedForce expected : facts.expectedForces.all()) {
                    if (expected.isFor(peak)) {
                        facts.symptomObservables.draw(new SymptomObservable(
                                SymptomCode.GRAB_ONE_WHEEL, peak.place(), because("SYM-175", peak, expected)));
                    }
                }
            }
        }
    }
}
