package org.axlecause.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.rules.Workshop.FRONT;
import static org.axlecause.rules.Workshop.REAR;
import static org.axlecause.rules.Workshop.REAR_LEFT;
import static org.axlecause.rules.Workshop.REAR_RIGHT;
import static org.axlecause.rules.Workshop.afterWork;
import static org.axlecause.rules.Workshop.clause;
import static org.axlecause.rules.Workshop.confirmed;
import static org.axlecause.rules.Workshop.discFront;
import static org.axlecause.rules.Workshop.found;
import static org.axlecause.rules.Workshop.obstacle;
import static org.axlecause.rules.Workshop.openedDrumRear;
import static org.axlecause.rules.Workshop.van;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.axlecause.facts.Because;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.CautionProposal;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.DecidedLine;
import org.axlecause.facts.Decision;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.FitnessGround;
import org.axlecause.facts.FitnessLevel;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.LineStanding;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Party;
import org.axlecause.facts.Place;
import org.axlecause.facts.Reason;
import org.axlecause.facts.RefusedWork;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.RetestComparison;
import org.axlecause.facts.RetestRound;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.Stage;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.StepProposal;
import org.axlecause.facts.TestedAxle;
import org.axlecause.facts.UnaskedLine;
import org.axlecause.facts.VerificationGround;
import org.axlecause.facts.VerificationOutcome;
import org.axlecause.facts.WorkOutcome;
import org.axlecause.facts.WorkReported;
import org.axlecause.inference.RuleBench;
import org.axlecause.repair.CatalogueCaution;
import org.axlecause.repair.CatalogueStep;
import org.axlecause.repair.Fitness;
import org.axlecause.repair.PlanRepair;
import org.axlecause.repair.PlannedStep;
import org.axlecause.repair.RepairCatalogue;
import org.axlecause.repair.RepairInput;
import org.axlecause.repair.RepairPlan;
import org.axlecause.repair.ScopeLine;
import org.axlecause.repair.Verification;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Rules and repair together: from causes and obstacles to a plan in a valid order, and on to the proof. */
class RepairFromRulesTest {

    private static final RuleBench RULES = RuleBench.forFolder("scope", "work", "outcome");
    private static final RepairCatalogue CATALOGUE = RepairCatalogue.onClassPath();
    private static final PlanRepair PLAN = new PlanRepair(CATALOGUE);

    /** What was given and everything that follows from it. */
    private record Repair(RepairPlan plan, Fitness fitness, Verification verification) {

        ScopeLine line(String id) {
            return plan.lines().stream()
                    .filter(line -> line.id().equals(id))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError(id + " is none of "
                            + plan.lines().stream().map(ScopeLine::id).toList()));
        }
    }

    static Stream<ScopeRulesTest.Row> everyScope() {
        return Stream.of(
                        ScopeRulesTest.causes(),
                        ScopeRulesTest.states(),
                        ScopeRulesTest.measurements(),
                        ScopeRulesTest.obstacles(),
                        ScopeRulesTest.renewals())
                .flatMap(rows -> rows);
    }

    @ParameterizedTest
    @MethodSource("everyScope")
    void every_scope_gets_a_valid_order_of_the_steps_it_needs_and_of_no_others(ScopeRulesTest.Row row) {
        List<Object> facts = new ArrayList<>(row.given());
        Stream.of(van(), openedDrumRear(true), discFront())
                .filter(fact -> facts.stream().noneMatch(given -> given.getClass() == fact.getClass()))
                .forEach(facts::add);
        if (facts.stream().noneMatch(fact -> fact.equals(discFront()))) {
            facts.add(discFront());
        }
        RepairPlan plan = repair(facts, List.of(), List.of(), List.of()).plan();

        assertThat(outOfOrder(plan.steps())).as("steps before what they need").isEmpty();
        assertThat(plan.steps())
                .allSatisfy(step ->
                        assertThat(step.lines()).as("lines of %s", step.id()).isNotEmpty());
        assertThat(plan.lines().stream().filter(ScopeLine::isPlanned).filter(line -> !isDoneBySomeStep(line, plan)))
                .extracting(ScopeLine::id)
                .as(
                        "planned lines that no step of %s does",
                        plan.steps().stream().map(PlannedStep::id).toList())
                .isEmpty();
    }

    @Test
    void every_step_and_caution_that_rules_may_propose_stands_in_the_catalogue() {
        assertThat(CATALOGUE.steps()).extracting(CatalogueStep::code).containsExactly(StepCode.values());
        assertThat(CATALOGUE.cautions()).extracting(CatalogueCaution::code).containsExactly(CautionCode.values());
    }

    @Test
    void work_on_shoes_ends_with_setting_shoes_then_parking_brake_then_the_re_test() {
        Repair repair = repair(
                List.of(
                        confirmed(CauseCode.WHEEL_CYLINDER_LEAKING, REAR_LEFT),
                        openedDrumRear(true),
                        discFront(),
                        van()),
                List.of(),
                List.of(),
                List.of());

        assertThat(repair.plan().steps())
                .extracting(PlannedStep::id)
                .containsSubsequence(
                        "remove-drum-axle-2",
                        "look-over-axle-axle-2",
                        "match-parts-axle-2",
                        "strip-shoes-axle-2-left",
                        "renew-wheel-cylinder-axle-2-left",
                        "clean-back-plate-axle-2-left",
                        "fit-shoes-axle-2-left",
                        "strip-shoes-axle-2-right",
                        "fit-shoes-axle-2-right",
                        "fit-drum-axle-2-right",
                        "bleed-circuit-circuit-2",
                        "set-shoes-axle-2",
                        "set-parking-brake-vehicle",
                        "refit-wheels-vehicle",
                        "pump-pedal-vehicle",
                        "leak-check-vehicle",
                        "slow-check-vehicle",
                        "bed-in-axle-2",
                        "final-roller-test-vehicle");
        assertThat(repair.plan().steps())
                .filteredOn(step -> step.step() == StepCode.BLEED_CIRCUIT)
                .singleElement()
                .satisfies(step -> assertThat(step.verify())
                        .startsWith("Stop when clean fluid of the colour of new runs without bubbles"));
    }

    /**
     * The story of the demonstration: a hub seal has oiled one rear lining, the parking cable of the other side is
     * seized, and a bleed nipple shears on the way.
     */
    @Test
    void a_repair_with_an_obstacle_is_followed_from_the_first_scope_to_the_proof() {
        List<Object> first = List.of(
                confirmed(CauseCode.HUB_SEAL_LEAKING, REAR_LEFT),
                confirmed(CauseCode.PARKING_CABLE_SEIZED, REAR_RIGHT),
                found(Component.HUB_SEAL, Condition.LEAKING, REAR_LEFT),
                found(Component.SHOE_LINING, Condition.SOAKED, REAR_LEFT),
                clause(ClauseCode.TWIN_HYDRAULIC_PART, Necessity.RECOMMENDED),
                clause(ClauseCode.TWIN_PARKING_CABLE, Necessity.RECOMMENDED),
                clause(ClauseCode.RETEST_NOISE, "0.10"),
                openedDrumRear(true),
                discFront(),
                van());
        Repair scoped = repair(first, List.of(), List.of(), List.of());

        assertThat(lines(scoped.plan(), ScopeLine::isPlanned))
                .containsExactlyInAnyOrder(
                        "renew-hub-seal-axle-2-left",
                        "measure-hub-bearing-axle-2-left",
                        "renew-shoe-set-axle-2",
                        "clean-drum-axle-2",
                        "measure-drum-axle-2",
                        "adjust-shoe-set-axle-2",
                        "renew-parking-cable-axle-2-right",
                        "adjust-parking-brake-vehicle",
                        "measure-roller-test-vehicle");
        assertThat(scoped.line("renew-parking-cable-axle-2-left").necessity()).isEqualTo(Necessity.RECOMMENDED);
        assertThat(scoped.fitness().level()).isEqualTo(FitnessLevel.DO_NOT_DRIVE);
        assertThat(scoped.verification().outcome()).isEqualTo(VerificationOutcome.NOT_TESTED);

        List<LineDecision> decisions = lines(scoped.plan(), ScopeLine::isPlanned).stream()
                .map(line -> decided(line, Decision.AGREED))
                .toList();
        List<Object> met = with(first, obstacle(Component.BLEED_NIPPLE, Condition.SHEARED, REAR_RIGHT));
        Repair hindered = repair(met, decisions, List.of(), List.of());

        assertThat(lines(hindered.plan(), line -> line.sinceAgreement() != null))
                .contains("renew-wheel-cylinder-axle-2-right", "bleed-brake-fluid-circuit-1");
        assertThat(hindered.line("renew-wheel-cylinder-axle-2-right").necessity())
                .isEqualTo(Necessity.REQUIRED);
        assertThat(hindered.line("renew-shoe-set-axle-2").standing()).isEqualTo(LineStanding.AGREED);

        List<LineDecision> again = new ArrayList<>(decisions);
        again.add(decided("renew-wheel-cylinder-axle-2-right", Decision.AGREED));
        again.add(decided("bleed-brake-fluid-circuit-1", Decision.AGREED));
        again.add(decided("renew-parking-cable-axle-2-left", Decision.REFUSED));
        List<WorkReported> reports = repair(met, again, List.of(), List.of()).plan().steps().stream()
                .map(step -> new WorkReported(step.id(), WorkOutcome.DONE, List.of()))
                .toList();
        Repair worked = repair(met, again, reports, List.of());

        assertThat(lines(worked.plan(), line -> line.standing() == LineStanding.AGREED))
                .isEmpty();
        assertThat(worked.line("renew-parking-cable-axle-2-left").standing()).isEqualTo(LineStanding.REFUSED);
        assertThat(worked.verification().outcome()).isEqualTo(VerificationOutcome.NOT_TESTED);
        assertThat(worked.fitness().level()).isEqualTo(FitnessLevel.REPAIR_BEFORE_USE);

        List<RetestComparison> retest = List.of(new RetestComparison(
                FigureKind.IMBALANCE,
                BrakeSystem.SERVICE,
                REAR,
                new BigDecimal("0.63"),
                new BigDecimal("0.08"),
                true,
                true,
                true,
                new BigDecimal("0.30"),
                new BigDecimal("0.15")));
        Repair unlooked = repair(met, again, reports, retest);

        assertThat(unlooked.verification().outcome()).isEqualTo(VerificationOutcome.IMPROVED);
        assertThat(unlooked.verification().open())
                .containsExactly(
                        "hub-seal leaking at axle 2 left (hub-seal-axle-2-left)",
                        "hub-seal-leaking confirmed at axle 2 left");

        List<Object> looked = with(
                met,
                afterWork(Component.HUB_SEAL, Condition.SOUND, REAR_LEFT),
                afterWork(Component.WHEEL_CYLINDER, Condition.SOUND, REAR_RIGHT),
                new RetestRound(REAR, 1),
                new TestedAxle(FRONT, BrakeSystem.SERVICE, Stage.ARRIVAL, null),
                new TestedAxle(REAR, BrakeSystem.SERVICE, Stage.FINAL, null),
                new TestedAxle(REAR, BrakeSystem.PARKING, Stage.FINAL, null));
        Repair proven = repair(looked, again, reports, retest);

        assertThat(proven.verification().outcome()).isEqualTo(VerificationOutcome.VERIFIED);
        assertThat(proven.verification().open()).isEmpty();
        assertThat(proven.fitness().level()).isEqualTo(FitnessLevel.NO_RESTRICTION_FOUND);
    }

    @Test
    void never_verified_with_a_required_line_open() {
        List<Object> facts = List.of(
                confirmed(CauseCode.LINING_WORN_OUT, REAR_LEFT),
                clause(ClauseCode.RETEST_NOISE, "0.10"),
                openedDrumRear(true),
                van());
        List<RetestComparison> good = List.of(new RetestComparison(
                FigureKind.IMBALANCE,
                BrakeSystem.SERVICE,
                REAR,
                new BigDecimal("0.45"),
                new BigDecimal("0.05"),
                true,
                true,
                true,
                null,
                null));
        List<WorkReported> reports = repair(facts, List.of(), List.of(), List.of()).plan().steps().stream()
                .map(step -> new WorkReported(step.id(), WorkOutcome.DONE, List.of()))
                .toList();
        List<WorkReported> oneSideOnly = reports.stream()
                .filter(report -> !report.step().equals("fit-shoes-axle-2-right"))
                .toList();

        assertThat(repair(facts, List.of(), reports, good).verification().outcome())
                .isEqualTo(VerificationOutcome.VERIFIED);
        assertThat(repair(facts, List.of(), oneSideOnly, good).verification())
                .returns(VerificationOutcome.IMPROVED, Verification::outcome)
                .returns(List.of("open: renew shoe-set at axle 2"), Verification::open);
        assertThat(repair(facts, List.of(decided("renew-shoe-set-axle-2", Decision.REFUSED)), List.of(), good)
                        .verification()
                        .outcome())
                .isEqualTo(VerificationOutcome.IMPROVED);
    }

    private static Repair repair(
            List<Object> facts,
            List<LineDecision> decisions,
            List<WorkReported> reports,
            List<RetestComparison> comparisons) {
        List<ReportedStep> reported = reports.stream()
                .map(report -> ReportedStep.ofId(report.step(), report.outcome()))
                .toList();
        List<Object> all = new ArrayList<>(facts);
        all.addAll(comparisons);
        all.addAll(reported);
        all.addAll(PLAN.linesDone(reported, Set.of()));
        Map<LineKey, Object> decided = new HashMap<>();
        decisions.forEach(decision -> {
            LineKey line = LineKey.ofId(decision.line());
            decided.put(line, new DecidedLine(line, decision.decision(), decision.by()));
        });
        all.addAll(decided.values());
        RuleBench.Given given = RULES.given(all.toArray());
        RepairPlan plan = PLAN.of(new RepairInput(
                given.concluded(ScopeProposal.class),
                given.concluded(StepProposal.class),
                given.concluded(CautionProposal.class),
                given.concluded(UnaskedLine.class),
                decisions,
                reports,
                comparisons.isEmpty() ? 0 : reports.size(),
                !comparisons.isEmpty(),
                Set.of(),
                "DOT 4",
                null,
                RepairFromRulesTest::ground));
        return new Repair(
                plan,
                Fitness.of(
                        given.concluded(FitnessGround.class),
                        given.concluded(RefusedWork.class),
                        RepairFromRulesTest::ground),
                Verification.of(
                        given.concluded(VerificationGround.class), comparisons, null, RepairFromRulesTest::ground));
    }

    private static Reason ground(Because because) {
        return new Reason(because.rule(), "It holds.", "test", because.facts());
    }

    private static boolean isDoneBySomeStep(ScopeLine line, RepairPlan plan) {
        return plan.steps().stream()
                .filter(step -> step.lines().contains(line.id()))
                .flatMap(step -> CATALOGUE.steps().stream()
                        .filter(known -> known.code() == step.step())
                        .flatMap(known -> known.does().stream()))
                .anyMatch(kind -> kind.toString().equals(line.action() + " " + line.item()));
    }

    /** Pairs of steps that stand the wrong way round, by the needs of the catalogue and their needs. */
    private static List<String> outOfOrder(List<PlannedStep> steps) {
        List<String> wrong = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            for (int j = i + 1; j < steps.size(); j++) {
                PlannedStep early = steps.get(i);
                PlannedStep late = steps.get(j);
                if (allNeeds(early.step()).contains(late.step()) && touch(early.place(), late.place())) {
                    wrong.add(early.id() + " stands before " + late.id());
                }
            }
        }
        return wrong;
    }

    private static Set<StepCode> allNeeds(StepCode step) {
        Set<StepCode> all = EnumSet.noneOf(StepCode.class);
        List<StepCode> open = new ArrayList<>(List.of(step));
        while (!open.isEmpty()) {
            StepCode next = open.remove(0);
            for (CatalogueStep known : CATALOGUE.steps()) {
                if (known.code() == next) {
                    known.needs().stream().filter(all::add).forEach(open::add);
                }
            }
        }
        return all;
    }

    private static boolean touch(Place one, Place other) {
        boolean wide = one.axle() == null || other.axle() == null;
        boolean sides = one.side() == null || other.side() == null || one.side() == other.side();
        return wide || (one.sameAxle(other) && sides);
    }

    private static LineDecision decided(String line, Decision decision) {
        return new LineDecision(line, decision, Party.CUSTOMER, null, null, null, null, null);
    }

    private static List<String> lines(RepairPlan plan, Predicate<ScopeLine> which) {
        return plan.lines().stream().filter(which).map(ScopeLine::id).toList();
    }

    private static List<Object> with(List<Object> facts, Object... more) {
        List<Object> all = new ArrayList<>(facts);
        all.addAll(Arrays.asList(more));
        return all;
    }
}
