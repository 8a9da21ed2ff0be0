package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Complaint;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;

/** What the driver reports and no test has shown or denied yet: it stays a question until somebody looks. */
final class Complaints {

    private Complaints() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sym911(facts);
        sym912(facts);
        sym913(facts);
        sym914(facts);
    }

    /** The driver reports a pull, no axle reads out of balance and no wheel drags or holds on. */
    private static void sym911(Facts facts) {
        for (Complaint complaint : facts.complaints.of(ComplaintCode.PULLS)) {
            for (Threshold limit : facts.thresholds.of(ThresholdCode.ONE_WHEEL_LOW_IMBALANCE)) {
                if (none(
                        facts.figures.of(FigureKind.PEAK_IMBALANCE),
                        figure -> figure.beforeRepair()
                                && figure.brake() == BrakeSystem.SERVICE
                                && figure.reaches(limit.value()))) {
                    for (Threshold drag : facts.thresholds.of(ThresholdCode.DRAG_FORCE)) {
                        if (none(
                                facts.figures.of(FigureKind.DRAG),
                                figure -> figure.beforeRepair() && figure.reaches(drag.value()))) {
                            for (Threshold rest : facts.thresholds.of(ThresholdCode.RESIDUAL)) {
                                if (none(
                                        facts.figures.of(FigureKind.RESIDUAL),
                                        figure -> figure.beforeRepair() && figure.reaches(rest.value()))) {
                                    facts.openQuestions.draw(new OpenQuestion(
                                            QuestionCode.COMPLAINT_UNANSWERED,
                                            Place.VEHICLE,
                                            "The driver reports a pull, and no axle reads out of balance.",
                                            "Compare tyres and load side by side, then look at light effort and the release of both wheels.",
                                            because("SYM-911", complaint)));
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** The driver reports a hot wheel and no wheel that was read drags. */
    private static void sym912(Facts facts) {
        for (Complaint complaint : facts.complaints.of(ComplaintCode.HOT_WHEEL)) {
            for (Threshold limit : facts.thresholds.of(ThresholdCode.DRAG_FORCE)) {
                if (none(
                        facts.figures.of(FigureKind.DRAG),
                        figure -> figure.beforeRepair() && figure.reaches(limit.value()))) {
                    facts.openQuestions.draw(new OpenQuestion(
                            QuestionCode.COMPLAINT_UNANSWERED,
                            Place.VEHICLE,
                            "The driver reports a hot wheel, and no wheel was read dragging.",
                            "Name the wheel, turn each by hand after pumping the pedal and after the lever, and compare the hubs after a drive.",
                            because("SYM-912", complaint)));
                }
            }
        }
    }

    /** The driver reports a noise. */
    private static void sym913(Facts facts) {
        for (Complaint complaint : facts.complaints.of(ComplaintCode.NOISE)) {
            if (facts.findings.of(Component.HUB_BEARING).isEmpty()) {
                facts.openQuestions.draw(new OpenQuestion(
                        QuestionCode.COMPLAINT_UNANSWERED,
                        Place.VEHICLE,
                        "The driver reports a noise, and nobody has said at which wheel.",
                        "Turn each wheel by hand, listen on the rollers with and without brake, and look at linings, springs and hub bearings there.",
                        because("SYM-913", complaint)));
            }
        }
    }

    /** The driver reports a weak parking brake and it was not run. */
    private static void sym914(Facts facts) {
        for (Complaint complaint : facts.complaints.of(ComplaintCode.PARKING_BRAKE_WEAK)) {
            if (none(
                    facts.figures.of(FigureKind.PEAK),
                    figure -> figure.beforeRepair() && figure.brake() == BrakeSystem.PARKING && figure.observable())) {
                facts.openQuestions.draw(new OpenQuestion(
                        QuestionCode.COMPLAINT_UNANSWERED,
                        Place.VEHICLE,
                        "The driver reports a weak parking brake, and it was not run on the rollers.",
                        "Run the parking brake and compare both wheels, then count the clicks of the lever.",
                        because("SYM-914", complaint)));
            }
        }
    }
}
