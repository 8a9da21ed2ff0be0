package org.axlecause.judgement;

import java.util.ArrayList;
import java.util.List;
import org.axlecause.diagnosis.Diagnosis;
import org.axlecause.facts.CaseClosed;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.JudgedCause;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.ScopeDecided;
import org.axlecause.facts.WorkReported;

/** Questions where the sender's word and the judgement differ, or where a decision or report names nothing known. */
final class ClosingQuestions {

    private ClosingQuestions() {}

    static List<ShownQuestion> of(StandingHistory history, Diagnosis diagnosis) {
        List<ShownQuestion> questions = new ArrayList<>();
        for (Recorded recorded : history.of(CaseClosed.class)) {
            for (JudgedCause judged : ((CaseClosed) recorded.entry()).confirmedCauses()) {
                if (!confirmed(judged, diagnosis)) {
                    questions.add(
                            HistoryQuestions.question(
                                    QuestionCode.SENDER_DISAGREES,
                                    judged.place(),
                                    "The closing " + recorded.id() + " names " + judged.code() + " at " + judged.place()
                                            + " as confirmed; no finding on record proves it.",
                                    "Record the finding that proved it, or close the case again with the causes that were found."));
                }
            }
        }
        for (Recorded recorded : history.of(ScopeDecided.class)) {
            for (LineDecision decision : ((ScopeDecided) recorded.entry()).decisions()) {
                if (LineKey.ofId(decision.line()) == null) {
                    questions.add(HistoryQuestions.question(
                            QuestionCode.LINE_UNKNOWN,
                            Place.VEHICLE,
                            recorded.id() + " decides on '" + decision.line() + "', which is the id of no scope line.",
                            "Send the decision with the line's id as the case document shows it."));
                }
            }
        }
        for (Recorded recorded : history.of(WorkReported.class)) {
            WorkReported report = (WorkReported) recorded.entry();
            if (ReportedStep.ofId(report.step(), report.outcome()) == null) {
                questions.add(HistoryQuestions.question(
                        QuestionCode.STEP_UNKNOWN,
                        Place.VEHICLE,
                        recorded.id() + " reports '" + report.step() + "', which is the id of no step.",
                        "Send the report with the step's id as the work plan shows it."));
            }
        }
        return questions;
    }

    private static boolean confirmed(JudgedCause judged, Diagnosis diagnosis) {
        return diagnosis.causes().stream()
                .anyMatch(cause -> cause.standing() == CauseStanding.CONFIRMED
                        && cause.code() == judged.code()
                        && cause.place().meets(judged.place()));
    }
}
