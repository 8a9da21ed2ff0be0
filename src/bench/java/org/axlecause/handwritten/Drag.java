package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.Strength;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;

/** Wheels that are braked with no brake applied. The legal limit, where there is one, is not read here. */
final class Drag {

    private Drag() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sym070(facts);
        sym071(facts);
        sym072(facts);
        sym073(facts);
        sym074(facts);
        sym075(facts);
        sym076(facts);
        sym080(facts);
        sym090(facts);
        sym160(facts);
        sym165(facts);
        sym210(facts);
        sym215(facts);
    }

    /** One wheel drags with no brake applied. */
    private static void sym070(Facts facts) {
        for (Figure drag : facts.figures.of(FigureKind.DRAG)) {
            if (drag.beforeRepair()) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.DRAG_FORCE)) {
                    if (drag.reaches(limit.value())
                            && any(
                                    facts.figures.of(FigureKind.DRAG),
                                    figure -> figure.sameTest(drag)
                                            && figure.place().isOpposite(drag.place())
                                            && figure.below(limit.value()))) {
                        facts.symptoms.draw(new Symptom(
                                SymptomCode.DRAG_ONE_WHEEL,
                                drag.place(),
                                Strength.CLEAR,
                                because("SYM-070", drag, limit)));
                    }
                }
            }
        }
    }

    /** A wheel needs far more force to roll than its partner. */
    private static void sym071(Facts facts) {
        for (Figure drag : facts.figures.of(FigureKind.DRAG)) {
            if (drag.beforeRepair()) {
                for (Figure other : facts.figures.of(FigureKind.DRAG)) {
                    if (other.sameTest(drag) && other.place().isOpposite(drag.place())) {
                        for (Threshold ratio : facts.thresholds.of(ThresholdCode.DRAG_RATIO)) {
                            if (drag.moreThanTimes(ratio.value(), other)) {
                                for (Threshold least : facts.thresholds.of(ThresholdCode.DRAG_RATIO_FORCE)) {
                                    if (drag.reaches(least.value())) {
                                        facts.symptoms.draw(new Symptom(
                                                SymptomCode.DRAG_ONE_WHEEL,
                                                drag.place(),
                                                Strength.CLEAR,
                                                because("SYM-071", drag, other, ratio)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel is hard to turn by hand with the brake off. */
    private static void sym072(Facts facts) {
        for (Finding finding : facts.findings.all()) {
            if (finding.check() == CheckCode.WHEEL_TURN_BY_HAND
                    && (finding.condition() == Condition.TIGHT || finding.condition() == Condition.SEIZED)
                    && finding.place().axle() != null
                    && finding.place().side() != null) {
                facts.symptoms.draw(new Symptom(
                        SymptomCode.DRAG_ONE_WHEEL,
                        finding.place().wheel(),
                        Strength.CLEAR,
                        because("SYM-072", finding)));
            }
        }
    }

    /** A hub is marked by heat or runs hot beside its partner. */
    private static void sym073(Facts facts) {
        for (Finding finding : facts.findings.of(Component.HUB_BEARING)) {
            if (finding.condition() == Condition.HEAT_MARKED
                    && finding.place().axle() != null
                    && finding.place().side() != null) {
                facts.symptoms.draw(new Symptom(
                        SymptomCode.DRAG_ONE_WHEEL,
                        finding.place().wheel(),
                        Strength.CLEAR,
                        because("SYM-073", finding)));
            }
        }
    }

    /** A wheel needs more than the permitted share of its load to roll. */
    private static void sym074(Facts facts) {
        for (Figure drag : facts.figures.of(FigureKind.DRAG)) {
            if (drag.beforeRepair()) {
                for (Figure part : facts.figures.of(FigureKind.DRAG_SHARE_OF_AXLE_LOAD)) {
                    if (part.sameTest(drag) && part.place().equals(drag.place())) {
                        for (Threshold share : facts.thresholds.of(ThresholdCode.DRAG_SHARE_OF_LOAD)) {
                            if (part.reachesOfWheelLoad(share.value())
                                    && any(
                                            facts.figures.of(FigureKind.DRAG_SHARE_OF_AXLE_LOAD),
                                            figure -> figure.sameTest(drag)
                                                    && figure.place().isOpposite(drag.place())
                                                    && !figure.reachesOfWheelLoad(share.value()))) {
                                for (Threshold least : facts.thresholds.of(ThresholdCode.DRAG_RATIO_FORCE)) {
                                    if (drag.reaches(least.value())) {
                                        facts.symptoms.draw(new Symptom(
                                                SymptomCode.DRAG_ONE_WHEEL,
                                                drag.place(),
                                                Strength.CLEAR,
                                                because("SYM-074", drag, part, share)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** The rolling force of a wheel was read, so a drag would show. */
    private static void sym075(Facts facts) {
        for (Figure drag : facts.figures.of(FigureKind.DRAG)) {
            if (drag.beforeRepair() && drag.observable()) {
                facts.symptomObservables.draw(
                        new SymptomObservable(SymptomCode.DRAG_ONE_WHEEL, drag.place(), because("SYM-075", drag)));
            }
        }
    }

    /** A wheel turns freely by hand with the brake off. */
    private static void sym076(Facts facts) {
        for (Finding finding : facts.findings.all()) {
            if (finding.check() == CheckCode.WHEEL_TURN_BY_HAND
                    && finding.sound()
                    && finding.place().axle() != null
                    && finding.place().side() != null) {
                facts.symptomObservables.draw(new SymptomObservable(
                        SymptomCode.DRAG_ONE_WHEEL, finding.place().wheel(), because("SYM-076", finding)));
            }
        }
    }

    /** Both wheels of an axle drag with no brake applied. */
    private static void sym080(Facts facts) {
        for (Figure left : facts.figures.of(FigureKind.DRAG)) {
            if (left.beforeRepair() && left.place().side() == Side.LEFT) {
                for (Figure right : facts.figures.of(FigureKind.DRAG)) {
                    if (right.sameTest(left) && right.place().isOpposite(left.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.DRAG_FORCE)) {
                            if (left.reaches(limit.value()) && right.reaches(limit.value())) {
                                facts.symptoms.draw(new Symptom(
                                        SymptomCode.DRAG_AXLE,
                                        left.place().axlePlace(),
                                        Strength.CLEAR,
                                        because("SYM-080", left, right, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** Every wheel that was read drags with no brake applied. */
    private static void sym090(Facts facts) {
        for (Figure front : facts.figures.of(FigureKind.DRAG)) {
            if (front.beforeRepair()
                    && front.place().axle() != null
                    && front.place().axle() == 1
                    && front.place().side() == Side.LEFT) {
                for (Figure rear : facts.figures.of(FigureKind.DRAG)) {
                    if (rear.beforeRepair()
                            && rear.place().axle() != null
                            && rear.place().axle() > 1
                            && rear.place().side() == Side.LEFT) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.DRAG_FORCE)) {
                            if (front.reaches(limit.value())
                                    && rear.reaches(limit.value())
                                    && none(
                                            facts.figures.of(FigureKind.DRAG),
                                            figure -> figure.beforeRepair() && figure.below(limit.value()))) {
                                facts.symptoms.draw(new Symptom(
                                        SymptomCode.DRAG_ALL,
                                        Place.VEHICLE,
                                        Strength.CLEAR,
                                        because("SYM-090", front, rear, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** Force stays at a wheel after the pedal is let go and dies away. */
    private static void sym160(Facts facts) {
        for (Figure residual : facts.figures.of(FigureKind.RESIDUAL)) {
            if (residual.beforeRepair() && residual.brake() == BrakeSystem.SERVICE) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.RESIDUAL)) {
                    if (residual.reaches(limit.value())) {
                        facts.symptoms.draw(new Symptom(
                                SymptomCode.RESIDUAL_DECAYING,
                                residual.place(),
                                Strength.CLEAR,
                                because("SYM-160", residual, limit)));
                    }
                }
            }
        }
    }

    /** The force left after release was read, so a rest would show. */
    private static void sym165(Facts facts) {
        for (Figure residual : facts.figures.of(FigureKind.RESIDUAL)) {
            if (residual.beforeRepair() && residual.brake() == BrakeSystem.SERVICE && residual.observable()) {
                facts.symptomObservables.draw(new SymptomObservable(
                        SymptomCode.RESIDUAL_DECAYING, residual.place(), because("SYM-165", residual)));
            }
        }
    }

    /** A wheel stays braked after the parking brake is let off. */
    private static void sym210(Facts facts) {
        for (Figure residual : facts.figures.of(FigureKind.RESIDUAL)) {
            if (residual.beforeRepair() && residual.brake() == BrakeSystem.PARKING) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.RESIDUAL)) {
                    if (residual.reaches(limit.value())) {
                        facts.symptoms.draw(new Symptom(
                                SymptomCode.PARKING_STAYS_ON,
                                residual.place(),
                                Strength.CLEAR,
                                because("SYM-210", residual, limit)));
                    }
                }
            }
        }
    }

    /** The force left after letting off the parking brake was read, so a rest would show. */
    private static void sym215(Facts facts) {
        for (Figure residual : facts.figures.of(FigureKind.RESIDUAL)) {
            if (residual.beforeRepair() && residual.brake() == BrakeSystem.PARKING && residual.observable()) {
                facts.symptomObservables.draw(new SymptomObservable(
                        SymptomCode.PARKING_STAYS_ON, residual.place(), because("SYM-215", residual)));
            }
        }
    }
}
