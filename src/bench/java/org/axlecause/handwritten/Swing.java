package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.BrakeSystem;
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
 * Force that swings with the turn of the wheel, or jumps without a rhythm. A drum does it in the parking brake too, a
 * disc only in the service brake.
 */
final class Swing {

    private Swing() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sym100(facts);
        sym105(facts);
        sym110(facts);
        sym280(facts);
        sym285(facts);
    }

    /** The force of one wheel swings within a turn. */
    private static void sym100(Facts facts) {
        for (Figure swing : facts.figures.of(FigureKind.FLUCTUATION)) {
            if (swing.beforeRepair()) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.FLUCTUATION)) {
                    if (swing.reaches(limit.value())
                            && none(
                                    facts.figures.of(FigureKind.FLUCTUATION),
                                    figure -> figure.sameTest(swing)
                                            && figure.place().isOpposite(swing.place())
                                            && figure.reaches(limit.value()))) {
                        facts.symptoms.draw(new Symptom(
                                SymptomCode.FORCE_SWING_ONE_WHEEL,
                                swing.place(),
                                Strength.CLEAR,
                                because("SYM-100", swing, limit)));
                    }
                }
            }
        }
    }

    /** The swing within a turn was read, so a swing would show. */
    private static void sym105(Facts facts) {
        for (Figure swing : facts.figures.of(FigureKind.FLUCTUATION)) {
            if (swing.beforeRepair() && swing.observable()) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.FLUCTUATION)) {
                    if (none(
                            facts.earlierFigures.of(FigureKind.FLUCTUATION),
                            earlier -> earlier.place().equals(swing.place())
                                    && earlier.figure().reaches(limit.value()))) {
                        facts.symptomObservables.draw(new SymptomObservable(
                                SymptomCode.FORCE_SWING_ONE_WHEEL, swing.place(), because("SYM-105", swing)));
                    }
                }
            }
        }
    }

    /** The force of both wheels of an axle swings within a turn. */
    private static void sym110(Facts facts) {
        for (Figure left : facts.figures.of(FigureKind.FLUCTUATION)) {
            if (left.beforeRepair() && left.place().side() == Side.LEFT) {
                for (Figure right : facts.figures.of(FigureKind.FLUCTUATION)) {
                    if (right.sameTest(left) && right.place().isOpposite(left.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.FLUCTUATION)) {
                            if (left.reaches(limit.value()) && right.reaches(limit.value())) {
                                facts.symptoms.draw(new Symptom(
                                        SymptomCode.FORCE_SWING_AXLE,
                                        left.place().axlePlace(),
                                        Strength.CLEAR,
                                        because("SYM-110", left, right, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** The force of a wheel jumps without a rhythm. */
    private static void sym280(Facts facts) {
        for (Figure jumps : facts.figures.of(FigureKind.SCATTER)) {
            if (jumps.beforeRepair() && jumps.brake() == BrakeSystem.SERVICE) {
                for (Threshold scatter : facts.thresholds.of(ThresholdCode.SCATTER)) {
                    if (jumps.reaches(scatter.value())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.FLUCTUATION)) {
                            if (none(
                                    facts.figures.of(FigureKind.FLUCTUATION),
                                    figure -> figure.sameTest(jumps)
                                            && figure.place().equals(jumps.place())
                                            && figure.reaches(limit.value()))) {
                                facts.symptoms.draw(new Symptom(
                                        SymptomCode.IRREGULAR_FORCE,
                                        jumps.place(),
                                        Strength.CLEAR,
                                        because("SYM-280", jumps, scatter)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** The scatter of the held force was read, so irregular force would show. */
    private static void sym285(Facts facts) {
        for (Figure jumps : facts.figures.of(FigureKind.SCATTER)) {
            if (jumps.beforeRepair() && jumps.brake() == BrakeSystem.SERVICE && jumps.observable()) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.SCATTER)) {
                    if (none(
                            facts.earlierFigures.of(FigureKind.SCATTER),
                            earlier -> earlier.place().equals(jumps.place())
                                    && earlier.figure().reaches(limit.value()))) {
                        facts.symptomObservables.draw(new SymptomObservable(
                                SymptomCode.IRREGULAR_FORCE, jumps.place(), because("SYM-285", jumps)));
                    }
                }
            }
        }
    }
}
