package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Condition;
import org.axlecause.facts.EarlierFigure;
import org.axlecause.facts.EarlierShape;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Finding;
import org.axlecause.facts.LossShape;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.Strength;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;

/**
 * Whether a second run of the same axle says the same. What does not come back was never the brake; what comes up
 * once the brakes are warm was glaze, bedding or rust; a swing that clears was a film of rust; a wheel that slipped
 * and then goes beyond met the limit of grip; a drag that grows is pressure that cannot get back.
 */
final class SecondRuns {

    private SecondRuns() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sym360(facts);
        sym362(facts);
        sym363(facts);
        sym365(facts);
        sym370(facts);
        sym371(facts);
        sym375(facts);
        sym380(facts);
        sym381(facts);
        sym385(facts);
        sym386(facts);
        sym390(facts);
        sym391(facts);
        sym395(facts);
        sym396(facts);
        sym400(facts);
        sym401(facts);
        sym405(facts);
        sym406(facts);
    }

    /** An axle that was out of balance in an earlier run is in balance in the latest. */
    private static void sym360(Facts facts) {
        for (EarlierFigure first : facts.earlierFigures.of(FigureKind.PEAK_IMBALANCE)) {
            if (first.brake() == BrakeSystem.SERVICE) {
                for (Figure second : facts.figures.of(FigureKind.PEAK_IMBALANCE)) {
                    if (second.beforeRepair()
                            && second.brake() == BrakeSystem.SERVICE
                            && second.place().equals(first.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.ONE_WHEEL_LOW_IMBALANCE)) {
                            if (first.figure().reaches(limit.value())) {
                                for (Threshold balanced : facts.thresholds.of(ThresholdCode.BALANCED_IMBALANCE)) {
                                    if (second.below(balanced.value())) {
                                        for (Threshold times : facts.thresholds.of(ThresholdCode.IMBALANCE_CLEARANCE)) {
                                            if (first.figure().moreThanTimes(times.value(), second)) {
                                                facts.symptoms.draw(new Symptom(
                                                        SymptomCode.TEST_NOT_REPEATABLE,
                                                        first.place(),
                                                        Strength.CLEAR,
                                                        because("SYM-360", first, second)));
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

    /** A wheel has gained clearly on its partner between two runs. */
    private static void sym362(Facts facts) {
        for (EarlierFigure before : facts.earlierFigures.of(FigureKind.PEAK)) {
            if (before.brake() == BrakeSystem.SERVICE) {
                for (EarlierFigure partnerBefore : facts.earlierFigures.of(FigureKind.PEAK)) {
                    if (partnerBefore.figure().sameTest(before.figure())
                            && partnerBefore.place().isOpposite(before.place())) {
                        for (Figure now : facts.figures.of(FigureKind.PEAK)) {
                            if (now.beforeRepair()
                                    && now.brake() == BrakeSystem.SERVICE
                                    && now.place().equals(before.place())) {
                                for (Figure partner : facts.figures.of(FigureKind.PEAK)) {
                                    if (partner.sameTest(now) && partner.place().isOpposite(now.place())) {
                                        for (Threshold times : facts.thresholds.of(ThresholdCode.WHEEL_GAIN)) {
                                            if (now.gainedOn(
                                                    partner, before.figure(), partnerBefore.figure(), times.value())) {
                                                facts.symptoms.draw(new Symptom(
                                                        SymptomCode.TEST_NOT_REPEATABLE,
                                                        now.place().axlePlace(),
                                                        Strength.CLEAR,
                                                        because(
                                                                "SYM-362",
                                                                before,
                                                                partnerBefore,
                                                                now,
                                                                partner,
                                                                times)));
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

    /** A wheel that dragged in an earlier run turns freely in the latest. */
    private static void sym363(Facts facts) {
        for (EarlierFigure first : facts.earlierFigures.of(FigureKind.DRAG)) {
            if (first.brake() == BrakeSystem.SERVICE) {
                for (Figure second : facts.figures.of(FigureKind.DRAG)) {
                    if (second.beforeRepair()
                            && second.brake() == BrakeSystem.SERVICE
                            && second.place().equals(first.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.DRAG_FORCE)) {
                            if (first.figure().reaches(limit.value()) && second.below(limit.value())) {
                                for (Threshold times : facts.thresholds.of(ThresholdCode.DRAG_GROWTH)) {
                                    if (first.figure().moreThanTimes(times.value(), second)) {
                                        facts.symptoms.draw(new Symptom(
                                                SymptomCode.TEST_NOT_REPEATABLE,
                                                first.place().axlePlace(),
                                                Strength.CLEAR,
                                                because("SYM-363", first, second, times)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** An axle was run a second time. */
    private static void sym365(Facts facts) {
        for (EarlierFigure first : facts.earlierFigures.of(FigureKind.PEAK_IMBALANCE)) {
            if (first.brake() == BrakeSystem.SERVICE && first.figure().observable()) {
                for (Figure second : facts.figures.of(FigureKind.PEAK_IMBALANCE)) {
                    if (second.beforeRepair()
                            && second.brake() == BrakeSystem.SERVICE
                            && second.place().equals(first.place())
                            && second.observable()) {
                        facts.symptomObservables.draw(new SymptomObservable(
                                SymptomCode.TEST_NOT_REPEATABLE, first.place(), because("SYM-365", first, second)));
                    }
                }
            }
        }
    }

    /** A wheel brakes clearly more once the brakes are warm. */
    private static void sym370(Facts facts) {
        for (EarlierFigure first : facts.earlierFigures.of(FigureKind.PEAK)) {
            if (first.brake() == BrakeSystem.SERVICE) {
                for (Figure second : facts.figures.of(FigureKind.PEAK)) {
                    if (second.beforeRepair()
                            && second.brake() == BrakeSystem.SERVICE
                            && second.place().equals(first.place())
                            && none(
                                    facts.reportedConditions.of(TestCondition.BRAKES_COLD),
                                    reported -> reported.test().equals(second.test()))) {
                        for (Threshold times : facts.thresholds.of(ThresholdCode.WARM_RECOVERY)) {
                            if (second.moreThanTimes(times.value(), first.figure())) {
                                for (Threshold least : facts.thresholds.of(ThresholdCode.WARM_RECOVERY_FORCE)) {
                                    if (second.moreBy(least.value(), first.figure())) {
                                        facts.symptoms.draw(new Symptom(
                                                SymptomCode.FORCE_RECOVERS_WARM,
                                                second.place(),
                                                Strength.CLEAR,
                                                because("SYM-370", first, second, times)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** Parts are not ordered for a wheel whose force came up once its brake was warm. */
    private static void sym371(Facts facts) {
        for (EarlierFigure first : facts.earlierFigures.of(FigureKind.PEAK)) {
            if (first.brake() == BrakeSystem.SERVICE) {
                for (Figure second : facts.figures.of(FigureKind.PEAK)) {
                    if (second.beforeRepair()
                            && second.brake() == BrakeSystem.SERVICE
                            && second.place().equals(first.place())) {
                        for (Threshold times : facts.thresholds.of(ThresholdCode.WARM_RECOVERY)) {
                            if (second.moreThanTimes(times.value(), first.figure())) {
                                for (Threshold least : facts.thresholds.of(ThresholdCode.WARM_RECOVERY_FORCE)) {
                                    if (second.moreBy(least.value(), first.figure())) {
                                        facts.openQuestions.draw(new OpenQuestion(
                                                QuestionCode.DOUBTFUL_TEST,
                                                second.place(),
                                                "The force came up once the brake was warm.",
                                                "Repeat the warm run before parts are ordered.",
                                                because("SYM-371", first, second)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel was read in two runs, so a force that comes up would show. */
    private static void sym375(Facts facts) {
        for (EarlierFigure first : facts.earlierFigures.of(FigureKind.PEAK)) {
            if (first.brake() == BrakeSystem.SERVICE && first.figure().observable()) {
                for (Figure second : facts.figures.of(FigureKind.PEAK)) {
                    if (second.beforeRepair()
                            && second.brake() == BrakeSystem.SERVICE
                            && second.place().equals(first.place())
                            && second.observable()) {
                        facts.symptomObservables.draw(new SymptomObservable(
                                SymptomCode.FORCE_RECOVERS_WARM, second.place(), because("SYM-375", first, second)));
                    }
                }
            }
        }
    }

    /** A wheel drags clearly more in a second run. */
    private static void sym380(Facts facts) {
        for (EarlierFigure first : facts.earlierFigures.of(FigureKind.DRAG)) {
            if (first.brake() == BrakeSystem.SERVICE) {
                for (Figure second : facts.figures.of(FigureKind.DRAG)) {
                    if (second.beforeRepair()
                            && second.brake() == BrakeSystem.SERVICE
                            && second.place().equals(first.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.DRAG_FORCE)) {
                            if (second.reaches(limit.value())) {
                                for (Threshold times : facts.thresholds.of(ThresholdCode.DRAG_GROWTH)) {
                                    if (second.moreThanTimes(times.value(), first.figure())) {
                                        facts.symptoms.draw(new Symptom(
                                                SymptomCode.DRAG_GROWS,
                                                second.place(),
                                                Strength.CLEAR,
                                                because("SYM-380", first, second, times)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel turns harder after the pedal was pumped. */
    private static void sym381(Facts facts) {
        for (Finding finding : facts.findings.all()) {
            if (finding.check() == CheckCode.PUMP_AND_TURN
                    && (finding.condition() == Condition.TIGHT || finding.condition() == Condition.SEIZED)
                    && finding.place().axle() != null
                    && finding.place().side() != null) {
                facts.symptoms.draw(new Symptom(
                        SymptomCode.DRAG_GROWS, finding.place().wheel(), Strength.CLEAR, because("SYM-381", finding)));
            }
        }
    }

    /** A dragging wheel was read in two runs, so a drag that grows would show. */
    private static void sym385(Facts facts) {
        for (EarlierFigure first : facts.earlierFigures.of(FigureKind.DRAG)) {
            if (first.brake() == BrakeSystem.SERVICE) {
                for (Figure second : facts.figures.of(FigureKind.DRAG)) {
                    if (second.beforeRepair()
                            && second.brake() == BrakeSystem.SERVICE
                            && second.place().equals(first.place())
                            && second.observable()) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.DRAG_FORCE)) {
                            if (first.figure().reaches(limit.value())) {
                                facts.symptomObservables.draw(new SymptomObservable(
                                        SymptomCode.DRAG_GROWS, second.place(), because("SYM-385", first, second)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel turns no harder after the pedal was pumped. */
    private static void sym386(Facts facts) {
        for (Finding finding : facts.findings.all()) {
            if (finding.check() == CheckCode.PUMP_AND_TURN
                    && finding.sound()
                    && finding.place().axle() != null
                    && finding.place().side() != null) {
                facts.symptomObservables.draw(new SymptomObservable(
                        SymptomCode.DRAG_GROWS, finding.place().wheel(), because("SYM-386", finding)));
            }
        }
    }

    /** The swing of a wheel is gone in a second run. */
    private static void sym390(Facts facts) {
        for (EarlierFigure first : facts.earlierFigures.of(FigureKind.FLUCTUATION)) {
            if (first.brake() == BrakeSystem.SERVICE) {
                for (Figure second : facts.figures.of(FigureKind.FLUCTUATION)) {
                    if (second.beforeRepair()
                            && second.brake() == BrakeSystem.SERVICE
                            && second.place().equals(first.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.FLUCTUATION)) {
                            if (first.figure().reaches(limit.value()) && second.below(limit.value())) {
                                for (Threshold times : facts.thresholds.of(ThresholdCode.SWING_CLEARANCE)) {
                                    if (first.figure().moreThanTimes(times.value(), second)) {
                                        facts.symptoms.draw(new Symptom(
                                                SymptomCode.SWING_CLEARS,
                                                second.place(),
                                                Strength.CLEAR,
                                                because("SYM-390", first, second, times)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** The scatter of a wheel is gone in a second run. */
    private static void sym391(Facts facts) {
        for (EarlierFigure first : facts.earlierFigures.of(FigureKind.SCATTER)) {
            if (first.brake() == BrakeSystem.SERVICE) {
                for (Figure second : facts.figures.of(FigureKind.SCATTER)) {
                    if (second.beforeRepair()
                            && second.brake() == BrakeSystem.SERVICE
                            && second.place().equals(first.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.SCATTER)) {
                            if (first.figure().reaches(limit.value()) && second.below(limit.value())) {
                                for (Threshold times : facts.thresholds.of(ThresholdCode.SWING_CLEARANCE)) {
                                    if (first.figure().moreThanTimes(times.value(), second)) {
                                        facts.symptoms.draw(new Symptom(
                                                SymptomCode.SWING_CLEARS,
                                                second.place(),
                                                Strength.CLEAR,
                                                because("SYM-391", first, second, times)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel that swung was run again, so a swing that clears would show. */
    private static void sym395(Facts facts) {
        for (EarlierFigure first : facts.earlierFigures.of(FigureKind.FLUCTUATION)) {
            if (first.brake() == BrakeSystem.SERVICE) {
                for (Figure second : facts.figures.of(FigureKind.FLUCTUATION)) {
                    if (second.beforeRepair()
                            && second.brake() == BrakeSystem.SERVICE
                            && second.place().equals(first.place())
                            && second.observable()) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.FLUCTUATION)) {
                            if (first.figure().reaches(limit.value())) {
                                facts.symptomObservables.draw(new SymptomObservable(
                                        SymptomCode.SWING_CLEARS, second.place(), because("SYM-395", first, second)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel that scattered was run again, so a scatter that clears would show. */
    private static void sym396(Facts facts) {
        for (EarlierFigure first : facts.earlierFigures.of(FigureKind.SCATTER)) {
            if (first.brake() == BrakeSystem.SERVICE) {
                for (Figure second : facts.figures.of(FigureKind.SCATTER)) {
                    if (second.beforeRepair()
                            && second.brake() == BrakeSystem.SERVICE
                            && second.place().equals(first.place())
                            && second.observable()) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.SCATTER)) {
                            if (first.figure().reaches(limit.value())) {
                                facts.symptomObservables.draw(new SymptomObservable(
                                        SymptomCode.SWING_CLEARS, second.place(), because("SYM-396", first, second)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel that slipped in the first run brakes clearly more in the second. */
    private static void sym400(Facts facts) {
        for (EarlierFigure slip : facts.earlierFigures.of(FigureKind.SLIP_FORCE)) {
            if (slip.brake() == BrakeSystem.SERVICE) {
                for (Figure second : facts.figures.of(FigureKind.PEAK)) {
                    if (second.beforeRepair()
                            && second.brake() == BrakeSystem.SERVICE
                            && second.place().equals(slip.place())) {
                        for (Threshold times : facts.thresholds.of(ThresholdCode.WARM_RECOVERY)) {
                            if (second.moreThanTimes(times.value(), slip.figure())) {
                                facts.symptoms.draw(new Symptom(
                                        SymptomCode.GRIP_RETURNS,
                                        second.place(),
                                        Strength.CLEAR,
                                        because("SYM-400", slip, second, times)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel whose force stood still in the first run goes clearly beyond it in the second. */
    private static void sym401(Facts facts) {
        for (EarlierShape shape : facts.earlierShapes.all()) {
            if (shape.shape().shape() == LossShape.CAPPED) {
                for (EarlierFigure first : facts.earlierFigures.of(FigureKind.PEAK)) {
                    if (first.brake() == BrakeSystem.SERVICE
                            && first.place().equals(shape.place())
                            && first.figure().test().equals(shape.shape().test())) {
                        for (Figure second : facts.figures.of(FigureKind.PEAK)) {
                            if (second.beforeRepair()
                                    && second.brake() == BrakeSystem.SERVICE
                                    && second.place().equals(first.place())) {
                                for (Threshold times : facts.thresholds.of(ThresholdCode.WARM_RECOVERY)) {
                                    if (second.moreThanTimes(times.value(), first.figure())) {
                                        facts.symptoms.draw(new Symptom(
                                                SymptomCode.GRIP_RETURNS,
                                                second.place(),
                                                Strength.CLEAR,
                                                because("SYM-401", shape, first, second)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel that slipped was run again, so more grip would show. */
    private static void sym405(Facts facts) {
        for (EarlierFigure slip : facts.earlierFigures.of(FigureKind.SLIP_FORCE)) {
            if (slip.brake() == BrakeSystem.SERVICE && slip.figure().observable()) {
                for (Figure second : facts.figures.of(FigureKind.PEAK)) {
                    if (second.beforeRepair()
                            && second.brake() == BrakeSystem.SERVICE
                            && second.place().equals(slip.place())
                            && second.observable()) {
                        facts.symptomObservables.draw(new SymptomObservable(
                                SymptomCode.GRIP_RETURNS, second.place(), because("SYM-405", slip, second)));
                    }
                }
            }
        }
    }

    /** A wheel whose force stood still was run again, so more force would show. */
    private static void sym406(Facts facts) {
        for (EarlierShape shape : facts.earlierShapes.all()) {
            if (shape.shape().shape() == LossShape.CAPPED) {
                for (Figure second : facts.figures.of(FigureKind.PEAK)) {
                    if (second.beforeRepair()
                            && second.brake() == BrakeSystem.SERVICE
                            && second.place().equals(shape.place())
                            && second.observable()) {
                        facts.symptomObservables.draw(new SymptomObservable(
                                SymptomCode.GRIP_RETURNS, second.place(), because("SYM-406", shape, second)));
                    }
                }
            }
        }
    }
}
