package org.axlecause.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.FindingRecorded;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.PartState;
import org.axlecause.facts.Place;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Side;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.VehicleLayout;
import org.axlecause.inference.RuleBench;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.ShownCause;
import org.axlecause.repair.PlannedStep;
import org.axlecause.repair.ScopeLine;
import org.junit.jupiter.api.Test;

/**
 * For invented cases of the brake model: the work plan is a valid order of exactly the steps that its lines need, no
 * required line is missing for the confirmed causes and none is there without a cause or a faulty part. What is expected
 * is told by hand in {@link ExpectedRepair} and {@link ExpectedWork}. {@code -Drepairs.cases=2000} takes them all.
 */
class DrawnRepairsTest {

    private static final long SEED = 20260302L;
    private static final int FEW = 150;

    /** Parts that hold fluid under pressure; a streak on a back plate or tyre is only its sign. */
    private static final Set<Component> HYDRAULIC = Set.of(
            Component.WHEEL_CYLINDER,
            Component.CALLIPER,
            Component.FLEXIBLE_HOSE,
            Component.BRAKE_PIPE,
            Component.PIPE_UNION,
            Component.BLEED_NIPPLE,
            Component.MASTER_CYLINDER,
            Component.LOAD_SENSING_VALVE);

    private final Exam exam = new Exam(RuleBench.all(), FaultTable.onClassPath());

    @Test
    void every_invented_repair_has_the_lines_of_its_causes_and_a_valid_order_of_the_steps_they_need() {
        int cases = Integer.getInteger("repairs.cases", FEW);
        Map<Long, List<String>> wrong = new TreeMap<>();
        Map<CauseCode, Integer> confirmed = new TreeMap<>();
        int lines = 0;
        int steps = 0;
        List<Exam.Looked> all = LongStream.range(SEED, SEED + cases)
                .parallel()
                .mapToObj(exam::lookedOver)
                .toList();
        for (Exam.Looked looked : all) {
            List<String> found = faults(looked);
            if (!found.isEmpty()) {
                wrong.put(looked.seed(), found);
                System.out.println("seed " + looked.seed() + ": " + found + ", scope "
                        + looked.judged().scope().stream()
                                .map(line -> line.id() + " " + line.necessity())
                                .toList()
                        + ", found "
                        + looked.states().stream().filter(PartState::isFault).toList());
            }
            confirmed(looked.judged()).forEach(cause -> confirmed.merge(cause.code(), 1, Integer::sum));
            lines += looked.judged().scope().size();
            steps += looked.judged().workPlan().size();
        }
        System.out.println("Drawn repairs from seed " + SEED + ": " + cases + " cases, " + lines + " lines, " + steps
                + " steps, confirmed causes " + confirmed);

        assertThat(wrong).as("cases by seed, of %d from seed %d", cases, SEED).isEmpty();
        assertThat(confirmed.size())
                .as("kinds of causes confirmed, from seed %d", SEED)
                .isGreaterThan(20);
    }

    private static List<String> faults(Exam.Looked looked) {
        Judgement judged = looked.judged();
        Vehicle vehicle = looked.vehicle();
        ExpectedRepair expected = new ExpectedRepair(vehicle, new VehicleLayout(vehicle, judged.openedDay()));
        List<LineKey> ofCauses = new ArrayList<>();
        confirmed(judged).forEach(cause -> ofCauses.addAll(expected.of(cause.code(), cause.place())));
        Set<LineKey> must = expected.closed(ofCauses);
        List<LineKey> withStates = new ArrayList<>(ofCauses);
        Set<LineKey> required = judged.scope().stream()
                .filter(line -> line.necessity() == Necessity.REQUIRED)
                .map(ScopeLine::key)
                .collect(Collectors.toCollection(TreeSet::new));
        for (LineKey line : required) {
            if (isOfAFaultyPart(line, looked.states())) {
                withStates.add(line);
            }
        }
        Set<LineKey> may = expected.closed(withStates);

        List<String> faults = new ArrayList<>();
        for (LineKey line : expected.merged(must)) {
            if (!required.contains(line)
                    && !expected.merged(may).equals(required)
                    && !isTaken(line, required, expected)) {
                faults.add("missing " + line.id());
            }
        }
        for (LineKey line : required) {
            if (!may.contains(line)) {
                faults.add("without a cause " + line.id());
            }
        }
        faults.addAll(faultsOfThePlan(looked, vehicle, required));
        return faults;
    }

    /** Whether another required line takes it along that a faulty part calls for. */
    static boolean isTaken(LineKey line, Set<LineKey> required, ExpectedRepair expected) {
        TreeSet<LineKey> both = new TreeSet<>(required);
        both.add(line);
        return !expected.merged(both).contains(line);
    }

    /** Whether the line renews or puts right a part that was found faulty there, or the linings that it soiled. */
    static boolean isOfAFaultyPart(LineKey line, List<PartState> states) {
        return states.stream().filter(PartState::isFault).anyMatch(state -> {
            boolean own = items(state).contains(line.item());
            boolean near = line.place().axle() == null
                    || state.place().axle() == null
                    || line.place().meets(state.place().wheel())
                    || line.place().sameAxle(state.place());
            return own && near;
        });
    }

    private static List<ScopeItem> items(PartState state) {
        ScopeItem own = state.item();
        boolean soiled = state.condition() == Condition.SOAKED || state.condition() == Condition.CONTAMINATED;
        if (state.component() == Component.SHOE_LINING) {
            return soiled
                    ? List.of(ScopeItem.SHOE_SET, ScopeItem.DRUM, ScopeItem.PARKING_SHOE_SET)
                    : List.of(ScopeItem.SHOE_SET, ScopeItem.PARKING_SHOE_SET);
        }
        if (state.component() == Component.PAD && soiled) {
            return List.of(ScopeItem.PAD_SET, ScopeItem.DISC);
        }
        if (state.component() == Component.BLEED_NIPPLE) {
            return List.of(ScopeItem.BLEED_NIPPLE, ScopeItem.WHEEL_CYLINDER, ScopeItem.CALLIPER);
        }
        if (state.component() == Component.BRAKE_FLUID) {
            return List.of(ScopeItem.BRAKE_FLUID, ScopeItem.HYDRAULIC_SYSTEM);
        }
        if (state.component() == Component.PARKING_LEVER || state.component() == Component.SHOE_LEVER) {
            return List.of(ScopeItem.PARKING_BRAKE, ScopeItem.HARDWARE_KIT);
        }
        if (state.component() == Component.DISC) {
            return List.of(ScopeItem.DISC, ScopeItem.HUB_FACE);
        }
        return own == null ? List.of() : List.of(own);
    }

    private static List<String> faultsOfThePlan(Exam.Looked looked, Vehicle vehicle, Set<LineKey> planned) {
        Judgement judged = looked.judged();
        List<String> faults = new ArrayList<>();
        List<PlannedStep> steps = judged.workPlan();
        List<String> ids = steps.stream().map(PlannedStep::id).toList();
        Set<Place> notBedded = confirmed(judged).stream()
                .filter(cause -> cause.code() == CauseCode.LINING_NOT_BEDDED)
                .map(cause -> cause.place().axlePlace())
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> needed = new ExpectedWork(vehicle).of(planned, notBedded, isBarred(looked));
        TreeSet<String> have = new TreeSet<>(ids);
        needed.stream().filter(step -> !have.contains(step)).forEach(step -> faults.add("step missing " + step));
        have.stream().filter(step -> !needed.contains(step)).forEach(step -> faults.add("step not needed " + step));
        for (int i = 0; i < steps.size(); i++) {
            PlannedStep step = steps.get(i);
            for (String before : step.after()) {
                if (ids.indexOf(before) >= i) {
                    faults.add(step.id() + " stands before " + before);
                }
            }
            if (step.lines().isEmpty()) {
                faults.add(step.id() + " serves no line");
            }
            for (int j = i + 1; j < steps.size(); j++) {
                PlannedStep later = steps.get(j);
                if (ExpectedWork.ORDER.contains(
                                List.of(later.step().toString(), step.step().toString()))
                        && touch(step.place(), later.place())) {
                    faults.add(step.id() + " stands before " + later.id());
                }
                boolean stripsTheSecondSide =
                        step.step() == StepCode.STRIP_SHOES && step.place().side() == Side.RIGHT;
                boolean patternStillOpen = (later.step() == StepCode.FIT_SHOES || later.step() == StepCode.REFIT_SHOES)
                        && later.place().equals(step.place().opposite());
                if (stripsTheSecondSide && patternStillOpen) {
                    faults.add(step.id() + " is stripped while " + later.id() + " is open");
                }
            }
        }
        return faults;
    }

    private static boolean touch(Place one, Place other) {
        boolean wide = one.axle() == null || other.axle() == null;
        boolean sides = one.side() == null || other.side() == null || one.side() == other.side();
        return wide || (one.sameAxle(other) && sides);
    }

    /**
     * A sinking pedal that nothing bleeds, fluid that nobody fills and a leak that nothing mends keep the vehicle off the
     * rollers. Lines that are only advised count here: they are due until somebody refuses them.
     */
    private static boolean isBarred(Exam.Looked looked) {
        Judgement judged = looked.judged();
        List<LineKey> due = judged.scope().stream().map(ScopeLine::key).toList();
        boolean sinks = judged.symptoms().stream().anyMatch(symptom -> symptom.code() == SymptomCode.PEDAL_SINKING)
                || isFound(looked, Component.PEDAL, Condition.SINKING);
        boolean bled = due.stream().anyMatch(line -> line.action() == ScopeAction.BLEED || line.isOpeningHydraulics());
        boolean dry = isFound(looked, Component.BRAKE_FLUID, Condition.NOT_VISIBLE);
        boolean filled = bled || due.stream().anyMatch(line -> line.item() == ScopeItem.BRAKE_FLUID);
        boolean leaks = looked.states().stream()
                .filter(state -> state.condition() == Condition.LEAKING && HYDRAULIC.contains(state.component()))
                .anyMatch(state -> due.stream()
                        .noneMatch(line -> line.isExchange()
                                && items(state).contains(line.item())
                                && line.place().covers(state.place().wheel())));
        return (sinks && !bled) || (dry && !filled) || leaks;
    }

    private static boolean isFound(Exam.Looked looked, Component component, Condition condition) {
        return looked.states().stream()
                .anyMatch(state -> state.component() == component && state.condition() == condition);
    }

    private static List<ShownCause> confirmed(Judgement judged) {
        return judged.causes().stream()
                .filter(cause -> cause.standing() == CauseStanding.CONFIRMED)
                .toList();
    }

    static PartState state(Recorded recorded) {
        return state(recorded.id(), (FindingRecorded) recorded.entry());
    }

    static PartState state(EntryId id, FindingRecorded finding) {
        return new PartState(
                new EntryId(id.source(), id.id()),
                FindingStage.AS_FOUND,
                finding.component(),
                finding.condition(),
                finding.place(),
                finding.extent(),
                finding.agent(),
                finding.measurement());
    }
}
