package org.axlecause.judgement;

import java.util.stream.Collectors;
import org.axlecause.facts.CaseClosed;
import org.axlecause.facts.DepartureRecorded;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryWithdrawn;
import org.axlecause.facts.FindingRecorded;
import org.axlecause.facts.InspectionResulted;
import org.axlecause.facts.ObstacleMet;
import org.axlecause.facts.PolicyAdopted;
import org.axlecause.facts.RoadTestRecorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.ScopeDecided;
import org.axlecause.facts.VehicleHandedOver;
import org.axlecause.facts.VehiclePresented;
import org.axlecause.facts.WorkReported;

/** Says in a few words what an entry holds; free words of people stay out. */
final class EntryWords {

    private EntryWords() {}

    static String of(Entry entry) {
        if (entry instanceof VehiclePresented presented) {
            return "presented at " + presented.site() + ": " + presented.reason();
        }
        if (entry instanceof RollerTestRecorded test) {
            return test.stage()
                    + " roller test of the "
                    + test.brake()
                    + " brake, axles "
                    + test.axles().stream()
                            .map(axle -> String.valueOf(axle.number()))
                            .collect(Collectors.joining(", "));
        }
        if (entry instanceof RoadTestRecorded test) {
            return test.stage() + " road test of the " + test.brake() + " brake";
        }
        if (entry instanceof FindingRecorded finding) {
            return finding.component()
                    + " "
                    + finding.condition()
                    + (finding.agent() == null ? "" : " with " + finding.agent())
                    + " at "
                    + finding.place()
                    + ", "
                    + finding.stage();
        }
        if (entry instanceof ObstacleMet obstacle) {
            return "obstacle: " + obstacle.component() + " " + obstacle.condition() + " at " + obstacle.place();
        }
        if (entry instanceof ScopeDecided decided) {
            return "decided: "
                    + decided.decisions().stream()
                            .map(decision -> decision.line() + " " + decision.decision())
                            .collect(Collectors.joining(", "));
        }
        if (entry instanceof WorkReported work) {
            return "step " + work.step() + " " + work.outcome();
        }
        if (entry instanceof DepartureRecorded departure) {
            return "departure from clause " + departure.clause();
        }
        if (entry instanceof PolicyAdopted adopted) {
            return "policy " + adopted.policy() + " version " + adopted.version() + " adopted";
        }
        if (entry instanceof EntryWithdrawn withdrawal) {
            return "took back " + withdrawal.target();
        }
        if (entry instanceof VehicleHandedOver) {
            return "handed over";
        }
        if (entry instanceof InspectionResulted inspection) {
            return "inspection " + inspection.result();
        }
        CaseClosed closed = (CaseClosed) entry;
        return "closed: " + closed.outcome();
    }
}
