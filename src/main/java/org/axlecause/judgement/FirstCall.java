package org.axlecause.judgement;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.Complaint;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.ExpectedForce;
import org.axlecause.facts.Figure;
import org.axlecause.facts.Finding;
import org.axlecause.facts.FindingRecorded;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.Place;
import org.axlecause.facts.Policy;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.ReportedCondition;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Side;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Surface;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.WheelReading;
import org.jspecify.annotations.Nullable;

/** Gathers the facts of the first call of the rule base: what speaks about deficiencies, symptoms and causes. */
final class FirstCall {

    private FirstCall() {}

    /** Facts that cases of like vehicles share: what could be wrong, what the workshop and the regime ask. */
    static List<List<?>> shared(Policy policy, @Nullable RegimeTerms terms, List<Candidate> candidates) {
        List<List<?>> shared = new ArrayList<>(List.of(candidates, policy.thresholds(), policy.limits()));
        shared.addAll(terms == null ? List.of() : terms.facts());
        return shared;
    }

    /** Whether the first call concludes the same under two policies, but for where a value comes from. */
    static boolean seesAlike(Policy one, Policy other) {
        return seen(one).equals(seen(other));
    }

    private static List<Object> seen(Policy policy) {
        List<Object> seen = new ArrayList<>();
        policy.thresholds().stream()
                .filter(threshold -> !threshold.code().isAim())
                .forEach(threshold ->
                        seen.add(threshold.code() + " " + threshold.value().stripTrailingZeros()));
        policy.limits()
                .forEach(limit -> seen.add(limit.kind() + " " + limit.brake() + " " + limit.axle() + " " + limit.build()
                        + " " + limit.value().stripTrailingZeros()));
        return seen;
    }

    /** Facts of the case that speak about the state in which the vehicle came. */
    static List<Object> asFound(
            StandingHistory history, Presentation presentation, List<Finding> findings, Tests tests) {
        Vehicle vehicle = presentation.content().vehicle();
        List<Object> facts = new ArrayList<>();
        facts.add(vehicle);
        facts.addAll(vehicle.axles());
        facts.addAll(findings);
        for (ComplaintCode complaint :
                presentation.content().complaints().stream().distinct().toList()) {
            facts.add(new Complaint(complaint));
        }
        facts.addAll(presentation.content().recentWork());
        addReported(facts, history, vehicle);
        tests.earlierFigures(Tests.BEFORE).stream()
                .filter(earlier -> earlier.figure().observable())
                .forEach(facts::add);
        facts.addAll(tests.earlierShapes(Tests.BEFORE));
        addTests(facts, tests, Tests.BEFORE);
        return facts;
    }

    /** Facts of the case that speak about the state after the work; only deficiencies are drawn from them. */
    static List<Object> afterWork(Vehicle vehicle, Tests tests) {
        List<Object> facts = new ArrayList<>();
        facts.add(vehicle);
        facts.addAll(vehicle.axles());
        addTests(facts, tests, Tests.AFTER);
        return facts;
    }

    /** Findings that speak about causes, on axles that the vehicle has. */
    static List<Finding> findings(StandingHistory history, Vehicle vehicle) {
        List<Finding> findings = new ArrayList<>();
        for (Recorded recorded : history.of(FindingRecorded.class)) {
            FindingRecorded finding = (FindingRecorded) recorded.entry();
            if (finding.stage() != FindingStage.AFTER_WORK && Places.known(finding.place(), vehicle)) {
                findings.add(new Finding(
                        recorded.id(),
                        finding.stage(),
                        finding.component(),
                        finding.condition(),
                        finding.place(),
                        finding.check(),
                        finding.extent(),
                        finding.agent(),
                        finding.measurement()));
            }
        }
        return findings;
    }

    /** What was reported beside the readings of tests before the work: circumstances and forces to expect. */
    private static void addReported(List<Object> facts, StandingHistory history, Vehicle vehicle) {
        for (Recorded recorded : history.of(RollerTestRecorded.class)) {
            RollerTestRecorded test = (RollerTestRecorded) recorded.entry();
            if (!Tests.BEFORE.contains(test.stage())) {
                continue;
            }
            for (AxleReading axle : test.axles()) {
                if (vehicle.axle(axle.number()) != null) {
                    for (TestCondition condition : reported(test)) {
                        facts.add(new ReportedCondition(
                                condition, Place.ofAxle(axle.number()), recorded.id(), test.brake()));
                    }
                    addExpected(facts, recorded.id(), test, Place.ofWheel(axle.number(), Side.LEFT), axle.left());
                    addExpected(facts, recorded.id(), test, Place.ofWheel(axle.number(), Side.RIGHT), axle.right());
                }
            }
        }
    }

    private static Set<TestCondition> reported(RollerTestRecorded test) {
        Set<TestCondition> reported = EnumSet.noneOf(TestCondition.class);
        reported.addAll(test.conditions());
        if (test.surface() == Surface.WET) {
            reported.add(TestCondition.ROLLERS_WET);
        }
        return reported;
    }

    private static void addExpected(
            List<Object> facts, EntryId id, RollerTestRecorded test, Place wheel, @Nullable WheelReading reading) {
        if (reading != null && reading.expected() != null) {
            facts.add(new ExpectedForce(wheel, id, test.stage(), test.brake(), reading.expected()));
        }
    }

    private static void addTests(List<Object> facts, Tests tests, Set<Stage> stages) {
        tests.figures(stages).stream().filter(Figure::observable).forEach(facts::add);
        facts.addAll(tests.shapes(stages));
        facts.addAll(tests.doubts(stages));
        facts.addAll(tests.exemptions(stages));
        facts.addAll(tests.deviations(stages));
        facts.addAll(tests.risks(stages));
    }
}
