package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.LossShape;
import org.axlecause.facts.ShapeOfLoss;
import org.axlecause.facts.Strength;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;

/**
 * How the missing force of a wheel behaves over effort: the strongest sign without taking anything apart. Shapes that
 * do not fit count as absent, so that they speak against the causes that would show them.
 */
final class ShapesOfLoss {

    private ShapesOfLoss() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sym220(facts);
        sym221(facts);
        sym225(facts);
        sym230(facts);
        sym231(facts);
        sym235(facts);
        sym236(facts);
        sym237(facts);
    }

    /** The loss of a wheel is a constant amount, large at light effort. */
    private static void sym220(Facts facts) {
        for (ShapeOfLoss shape : facts.shapesOfLoss.all()) {
            if (shape.shape() == LossShape.OFFSET) {
                facts.symptoms.draw(new Symptom(
                        SymptomCode.LOW_EFFORT_IMBALANCE, shape.place(), Strength.CLEAR, because("SYM-220", shape)));
            }
        }
    }

    /** An axle is out of balance at light effort only. */
    private static void sym221(Facts facts) {
        for (Figure light : facts.figures.of(FigureKind.IMBALANCE_LOW)) {
            if (light.beforeRepair() && light.brake() == BrakeSystem.SERVICE) {
                for (Figure full : facts.figures.of(FigureKind.IMBALANCE_HIGH)) {
                    if (full.sameTest(light) && full.place().equals(light.place())) {
                        for (Figure later : facts.figures.of(FigureKind.RISE_LAG)) {
                            if (later.sameTest(light)
                                    && later.place().sameAxle(light.place())
                                    && later.value() != null
                                    && later.value().signum() > 0) {
                                for (Threshold low : facts.thresholds.of(ThresholdCode.LOW_EFFORT_IMBALANCE_LOW)) {
                                    if (light.reaches(low.value())) {
                                        for (Threshold high :
                                                facts.thresholds.of(ThresholdCode.LOW_EFFORT_IMBALANCE_HIGH)) {
                                            if (full.below(high.value())) {
                                                facts.symptoms.draw(new Symptom(
                                                        SymptomCode.LOW_EFFORT_IMBALANCE,
                                                        later.place(),
                                                        Strength.CLEAR,
                                                        because("SYM-221", light, full, later)));
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

    /** The shape of the loss of a wheel is known, so a constant loss would show. */
    private static void sym225(Facts facts) {
        for (ShapeOfLoss shape : facts.shapesOfLoss.all()) {
            if (shape.shape() != LossShape.UNDECIDED
                    && shape.shape() != LossShape.CYCLIC
                    && shape.shape() != LossShape.EXTRA) {
                facts.symptomObservables.draw(new SymptomObservable(
                        SymptomCode.LOW_EFFORT_IMBALANCE, shape.place(), because("SYM-225", shape)));
            }
        }
    }

    /** The force of a wheel stops growing at some effort. */
    private static void sym230(Facts facts) {
        for (ShapeOfLoss shape : facts.shapesOfLoss.all()) {
            if (shape.shape() == LossShape.CAPPED) {
                facts.symptoms.draw(new Symptom(
                        SymptomCode.HIGH_EFFORT_IMBALANCE, shape.place(), Strength.CLEAR, because("SYM-230", shape)));
            }
        }
    }

    /** An axle is out of balance at full effort only. */
    private static void sym231(Facts facts) {
        for (Figure light : facts.figures.of(FigureKind.IMBALANCE_LOW)) {
            if (light.beforeRepair() && light.brake() == BrakeSystem.SERVICE) {
                for (Figure full : facts.figures.of(FigureKind.IMBALANCE_HIGH)) {
                    if (full.sameTest(light) && full.place().equals(light.place())) {
                        for (Figure more : facts.figures.of(FigureKind.HOLD)) {
                            if (more.sameTest(light) && more.place().sameAxle(light.place())) {
                                for (Figure less : facts.figures.of(FigureKind.HOLD)) {
                                    if (less.sameTest(light)
                                            && less.place().isOpposite(more.place())
                                            && less.lessThan(more)) {
                                        for (Threshold low :
                                                facts.thresholds.of(ThresholdCode.HIGH_EFFORT_IMBALANCE_LOW)) {
                                            if (light.below(low.value())) {
                                                for (Threshold high :
                                                        facts.thresholds.of(ThresholdCode.HIGH_EFFORT_IMBALANCE_HIGH)) {
                                                    if (full.reaches(high.value())) {
                                                        facts.symptoms.draw(new Symptom(
                                                                SymptomCode.HIGH_EFFORT_IMBALANCE,
                                                                less.place(),
                                                                Strength.CLEAR,
                                                                because("SYM-231", light, full, less)));
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
        }
    }

    /** The loss of a wheel is the same share at every effort. */
    private static void sym235(Facts facts) {
        for (ShapeOfLoss shape : facts.shapesOfLoss.all()) {
            if (shape.shape() == LossShape.PROPORTIONAL) {
                facts.symptoms.draw(new Symptom(
                        SymptomCode.PROPORTIONAL_LOSS, shape.place(), Strength.CLEAR, because("SYM-235", shape)));
            }
        }
    }

    /** The shape of the loss of a wheel is known, so a loss at full effort only would show. */
    private static void sym236(Facts facts) {
        for (ShapeOfLoss shape : facts.shapesOfLoss.all()) {
            if (shape.shape() != LossShape.UNDECIDED
                    && shape.shape() != LossShape.CYCLIC
                    && shape.shape() != LossShape.EXTRA) {
                facts.symptomObservables.draw(new SymptomObservable(
                        SymptomCode.HIGH_EFFORT_IMBALANCE, shape.place(), because("SYM-236", shape)));
            }
        }
    }

    /** The shape of the loss of a wheel is known, so a loss in proportion would show. */
    private static void sym237(Facts facts) {
        for (ShapeOfLoss shape : facts.shapesOfLoss.all()) {
            if (shape.shape() != LossShape.UNDECIDED
                    && shape.shape() != LossShape.CYCLIC
                    && shape.shape() != LossShape.EXTRA) {
                facts.symptomObservables.draw(
                        new SymptomObservable(SymptomCode.PROPORTIONAL_LOSS, shape.place(), because("SYM-237", shape)));
            }
        }
    }
}
