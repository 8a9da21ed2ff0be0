package org.axlecause.judgement;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Figure;
import org.axlecause.facts.LineDone;
import org.axlecause.facts.Place;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.RoadTestRecorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Stage;
import org.axlecause.facts.WorkReported;
import org.axlecause.repair.PlanRepair;

/** Tells which figures of final tests prove nothing any more, because work on their axle was reported after them. */
final class LaterWork {

    private final Map<EntryId, Integer> positions = new HashMap<>();
    private final Map<Place, Integer> lastWork = new HashMap<>();
    private int reportsBeforeTest;
    private int lastTest = -1;

    LaterWork(StandingHistory history, PlanRepair planRepair) {
        int reports = 0;
        for (int i = 0; i < history.entries().size(); i++) {
            Recorded recorded = history.entries().get(i);
            positions.put(recorded.id(), i);
            if (recorded.entry() instanceof WorkReported report) {
                reports++;
                remember(report, i, planRepair);
            }
            if (isFinalTest(recorded)) {
                reportsBeforeTest = reports;
                lastTest = i;
            }
        }
    }

    /** How many reports of steps the latest final test has followed. */
    int reportsBeforeTest() {
        return reportsBeforeTest;
    }

    /** What happened after the latest final test; everything where there is none. */
    StandingHistory sinceLastTest(StandingHistory history) {
        return new StandingHistory(
                history.entries().subList(lastTest + 1, history.entries().size()), history.withdrawn(), history.idle());
    }

    /** Whether work that may change the force was reported after the test of this figure, on its axle or further. */
    boolean voids(Figure figure) {
        int test = positions.getOrDefault(figure.test(), Integer.MAX_VALUE);
        Integer axle = figure.place().axle();
        return lastWork.entrySet().stream()
                .filter(work -> axle == null
                        || work.getKey().axle() == null
                        || work.getKey().sameAxle(figure.place()))
                .anyMatch(work -> work.getValue() > test);
    }

    private void remember(WorkReported report, int position, PlanRepair planRepair) {
        ReportedStep step = ReportedStep.ofId(report.step(), report.outcome());
        if (step != null
                && planRepair.linesDone(List.of(step, twin(step)), Set.of()).stream()
                        .anyMatch(LineDone::isChangingForce)) {
            lastWork.put(step.place().axlePlace(), position);
        }
    }

    /** A line of an axle is done with both sides; one side of it is work on the axle all the same. */
    private static ReportedStep twin(ReportedStep step) {
        return new ReportedStep(step.step(), step.place().opposite(), step.outcome());
    }

    private static boolean isFinalTest(Recorded recorded) {
        return (recorded.entry() instanceof RollerTestRecorded roller && roller.stage() == Stage.FINAL)
                || (recorded.entry() instanceof RoadTestRecorded road && road.stage() == Stage.FINAL);
    }
}
