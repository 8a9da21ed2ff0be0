package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.LossShape;
import org.axlecause.facts.ShapeOfLoss;
import org.axlecause.facts.Side;
import org.axlecause.facts.Strength;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;

/** How force comes and goes: late, slow, held back, decaying. Only a trace can show it; peaks alone cannot. */
final class Timing {

    private Timing() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sym120(facts);
        sym121(facts);
        sym122(facts);
        sym125(facts);
        sym130(facts);
        sym140(facts);
        sym145(facts);
        sym150(facts);
        sym180(facts);
        sym240(facts);
        sym245(facts);
        sym260(facts);
        sym265(facts);
        sym270(facts);
        sym275(facts);
    }

    /** The force of a wheel rises much more slowly than its partner's. */
    private static void sym120(Facts facts) {
        for (Figure slow : facts.figures.of(FigureKind.RISE_TIME)) {
            if (slow.beforeRepair() && slow.brake() == BrakeSystem.SERVICE) {
                for (Figure other : facts.figures.of(FigureKind.RISE_TIME)) {
                    if (other.sameTest(slow) && other.place().isOpposite(slow.place())) {
                        for (Threshold ratio : facts.thresholds.of(ThresholdCode.RISE_RATIO)) {
                            if (slow.moreThanTimes(ratio.value(), other)) {
                                facts.symptoms.draw(new Symptom(
                                        SymptomCode.SLOW_RISE_ONE_WHEEL,
                                        slow.place(),
                                        Strength.CLEAR,
                                        because("SYM-120", slow, other, ratio)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** The force of a wheel begins clearly after its partner's. */
    private static void sym121(Facts facts) {
        for (Figure lag : facts.figures.of(FigureKind.RISE_LAG)) {
            if (lag.beforeRepair() && lag.brake() == BrakeSystem.SERVICE) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.LAG)) {
                    if (lag.reaches(limit.value())) {
                        facts.symptoms.draw(new Symptom(
                                SymptomCode.SLOW_RISE_ONE_WHEEL,
                                lag.place(),
                                Strength.CLEAR,
                                because("SYM-121", lag, limit)));
                    }
                }
            }
        }
    }

    /** The loss of a wheel is that it comes late. */
    private static void sym122(Facts facts) {
        for (ShapeOfLoss shape : facts.shapesOfLoss.all()) {
            if (shape.shape() == LossShape.LATE) {
                facts.symptoms.draw(new Symptom(
                        SymptomCode.SLOW_RISE_ONE_WHEEL, shape.place(), Strength.CLEAR, because("SYM-122", shape)));
            }
        }
    }

    /** The rise of the force was read at a wheel, so lateness would show. */
    private static void sym125(Facts facts) {
        for (Figure rise : facts.figures.of(FigureKind.RISE_LAG)) {
            if (rise.beforeRepair() && rise.brake() == BrakeSystem.SERVICE && rise.observable()) {
                facts.symptomObservables.draw(
                        new SymptomObservable(SymptomCode.SLOW_RISE_ONE_WHEEL, rise.place(), because("SYM-125", rise)));
            }
        }
    }

    /** The force of both wheels of an axle comes up slowly. */
    private static void sym130(Facts facts) {
        for (Figure left : facts.figures.of(FigureKind.RISE_TIME)) {
            if (left.beforeRepair()
                    && left.brake() == BrakeSystem.SERVICE
                    && left.place().side() == Side.LEFT) {
                for (Figure right : facts.figures.of(FigureKind.RISE_TIME)) {
                    if (right.sameTest(left) && right.place().isOpposite(left.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.RISE_TIME)) {
                            if (left.reaches(limit.value()) && right.reaches(limit.value())) {
                                facts.symptoms.draw(new Symptom(
                                        SymptomCode.SLOW_RISE_AXLE,
                                        left.place().axlePlace(),
                                        Strength.CLEAR,
                                        because("SYM-130", left, right, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel lets go late. */
    private static void sym140(Facts facts) {
        for (Figure release : facts.figures.of(FigureKind.RELEASE_TIME)) {
            if (release.beforeRepair() && release.brake() == BrakeSystem.SERVICE) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.RELEASE_TIME)) {
                    if (release.reaches(limit.value())
                            && none(
                                    facts.figures.of(FigureKind.RELEASE_TIME),
                                    figure -> figure.sameTest(release)
                                            && figure.place().isOpposite(release.place())
                                            && figure.reaches(limit.value()))) {
                        facts.symptoms.draw(new Symptom(
                                SymptomCode.SLOW_RELEASE_ONE_WHEEL,
                                release.place(),
                                Strength.CLEAR,
                                because("SYM-140", release, limit)));
                    }
                }
            }
        }
    }

    /** The release of a wheel was read, so lateness would show. */
    private static void sym145(Facts facts) {
        for (Figure release : facts.figures.of(FigureKind.RELEASE_TIME)) {
            if (release.beforeRepair() && release.brake() == BrakeSystem.SERVICE && release.observable()) {
                facts.symptomObservables.draw(new SymptomObservable(
                        SymptomCode.SLOW_RELEASE_ONE_WHEEL, release.place(), because("SYM-145", release)));
            }
        }
    }

    /** Both wheels of an axle let go late. */
    private static void sym150(Facts facts) {
        for (Figure left : facts.figures.of(FigureKind.RELEASE_TIME)) {
            if (left.beforeRepair()
                    && left.brake() == BrakeSystem.SERVICE
                    && left.place().side() == Side.LEFT) {
                for (Figure right : facts.figures.of(FigureKind.RELEASE_TIME)) {
                    if (right.sameTest(left) && right.place().isOpposite(left.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.RELEASE_TIME)) {
                            if (left.reaches(limit.value()) && right.reaches(limit.value())) {
                                facts.symptoms.draw(new Symptom(
                                        SymptomCode.SLOW_RELEASE_AXLE,
                                        left.place().axlePlace(),
                                        Strength.CLEAR,
                                        because("SYM-150", left, right, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel locks on a light load or poor grip. */
    private static void sym180(Facts facts) {
        for (TestDoubt doubt : facts.testDoubts.of(DoubtCode.LOCKED_ON_LIGHT_LOAD)) {
            if (doubt.place().axle() != null && doubt.place().side() != null) {
                facts.symptoms.draw(
                        new Symptom(SymptomCode.EARLY_LOCK, doubt.place(), Strength.CLEAR, because("SYM-180", doubt)));
            }
        }
    }

    /** The force of a wheel falls back much later than it rose. */
    private static void sym240(Facts facts) {
        for (Figure hysteresis : facts.figures.of(FigureKind.HYSTERESIS)) {
            if (hysteresis.beforeRepair() && hysteresis.brake() == BrakeSystem.SERVICE) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.HYSTERESIS)) {
                    if (hysteresis.reaches(limit.value())) {
                        facts.symptoms.draw(new Symptom(
                                SymptomCode.WIDE_HYSTERESIS,
                                hysteresis.place(),
                                Strength.CLEAR,
                                because("SYM-240", hysteresis, limit)));
                    }
                }
            }
        }
    }

    /** Rise and fall of the force were read, so a gap would show. */
    private static void sym245(Facts facts) {
        for (Figure hysteresis : facts.figures.of(FigureKind.HYSTERESIS)) {
            if (hysteresis.beforeRepair() && hysteresis.brake() == BrakeSystem.SERVICE && hysteresis.observable()) {
                facts.symptomObservables.draw(new SymptomObservable(
                        SymptomCode.WIDE_HYSTERESIS, hysteresis.place(), because("SYM-245", hysteresis)));
            }
        }
    }

    /** A wheel begins late and lacks the same force at every effort. */
    private static void sym260(Facts facts) {
        for (ShapeOfLoss shape : facts.shapesOfLoss.all()) {
            if (shape.shape() == LossShape.OFFSET) {
                for (Figure lag : facts.figures.of(FigureKind.RISE_LAG)) {
                    if (lag.beforeRepair()
                            && lag.brake() == BrakeSystem.SERVICE
                            && lag.place().equals(shape.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.LAG)) {
                            if (lag.reaches(limit.value())) {
                                facts.symptoms.draw(new Symptom(
                                        SymptomCode.HIGH_THRESHOLD,
                                        lag.place(),
                                        Strength.CLEAR,
                                        because("SYM-260", lag, shape, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** The beginning of the force was read, so a raised threshold would show. */
    private static void sym265(Facts facts) {
        for (Figure lag : facts.figures.of(FigureKind.RISE_LAG)) {
            if (lag.beforeRepair() && lag.brake() == BrakeSystem.SERVICE && lag.observable()) {
                facts.symptomObservables.draw(
                        new SymptomObservable(SymptomCode.HIGH_THRESHOLD, lag.place(), because("SYM-265", lag)));
            }
        }
    }

    /** The force of a wheel falls while the pedal is held. */
    private static void sym270(Facts facts) {
        for (Figure decay : facts.figures.of(FigureKind.DECAY_WHILE_HELD)) {
            if (decay.beforeRepair() && decay.brake() == BrakeSystem.SERVICE) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.DECAY_WHILE_HELD)) {
                    if (decay.reaches(limit.value())) {
                        facts.symptoms.draw(new Symptom(
                                SymptomCode.FORCE_DECAYS_WHILE_HELD,
                                decay.place(),
                                Strength.CLEAR,
                                because("SYM-270", decay, limit)));
                    }
                }
            }
        }
    }

    /** The held force of a wheel was read, so a decay would show. */
    private static void sym275(Facts facts) {
        for (Figure decay : facts.figures.of(FigureKind.DECAY_WHILE_HELD)) {
            if (decay.beforeRepair() && decay.brake() == BrakeSystem.SERVICE && decay.observable()) {
                facts.symptomObservables.draw(new SymptomObservable(
                        SymptomCode.FORCE_DECAYS_WHILE_HELD, decay.place(), because("SYM-275", decay)));
            }
        }
    }
}
