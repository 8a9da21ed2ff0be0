package org.axlecause.judgement;

import java.util.List;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.WorkOutcome;
import org.axlecause.repair.PlannedStep;
import org.axlecause.repair.RepairPlan;

/** Questions that the work raises: a step that was not possible leads back, and what waits for it is held. */
final class WorkQuestions {

    private WorkQuestions() {}

    static List<ShownQuestion> of(RepairPlan plan) {
        return plan.steps().stream()
                .filter(step -> step.outcome() == WorkOutcome.NOT_POSSIBLE)
                .map(step -> HistoryQuestions.question(
                        QuestionCode.STEP_NOT_POSSIBLE, step.place(), says(step, plan), resolve(step)))
                .toList();
    }

    private static String says(PlannedStep failed, RepairPlan plan) {
        long held = plan.steps().stream()
                .filter(step -> step.heldBy().contains(failed.id()))
                .count();
        return "The step " + failed.id() + " was reported not possible; "
                + (held == 0 ? "no step waits" : held == 1 ? "1 step waits" : held + " steps wait") + " for it.";
    }

    private static String resolve(PlannedStep failed) {
        String stop = failed.stop();
        String back = failed.backTo();
        return (stop == null ? "" : stop + " ")
                + (back == null ? "" : "Go back to the step " + back + ". ")
                + "Record what stood in the way as obstacle.met, and report the step again once it is done.";
    }
}
