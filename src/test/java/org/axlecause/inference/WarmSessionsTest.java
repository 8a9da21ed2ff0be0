package org.axlecause.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.facts.Axle;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.Complaint;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Conclusion;
import org.axlecause.facts.Condition;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Finding;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.Proof;
import org.axlecause.facts.Refutation;
import org.axlecause.facts.Side;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.Vehicle;
import org.axlecause.policy.PolicyFile;
import org.junit.jupiter.api.Test;

/** A session that has served one case must serve the next as a new one would. */
class WarmSessionsTest {

    private static final Place RIGHT = Place.ofWheel(2, Side.RIGHT);
    private static final Place LEFT = Place.ofWheel(2, Side.LEFT);
    private static final Vehicle VAN = van();
    private static final List<List<?>> SHARED =
            List.of(CauseModel.load().candidates(VAN), PolicyFile.baseline().thresholds());
    private static final List<Object> LEAKING =
            of(peak(LEFT, 1400), peak(RIGHT, 600), found(Component.WHEEL_CYLINDER, Condition.LEAKING, RIGHT));
    private static final List<Object> SOUND = of(
            new Complaint(ComplaintCode.SPONGY_PEDAL),
            peak(LEFT, 1400),
            peak(RIGHT, 1390),
            found(Component.WHEEL_CYLINDER, Condition.SOUND, RIGHT));

    @Test
    void nothing_of_one_case_leaks_into_the_next() {
        RuleBase rules = RuleBench.all();

        String first = told(rules.conclude(SHARED, LEAKING));
        String second = told(rules.conclude(SHARED, SOUND));

        assertThat(first).contains("Proof").contains("code=one-wheel-low, place=axle 2 right");
        assertThat(second).contains("Refutation").doesNotContain("one-wheel-low");
        assertThat(told(rules.conclude(SHARED, LEAKING))).isEqualTo(first).isEqualTo(byANewSession(LEAKING));
        assertThat(told(rules.conclude(SHARED, SOUND))).isEqualTo(second).isEqualTo(byANewSession(SOUND));
    }

    @Test
    void what_is_shared_may_as_well_be_of_the_case() {
        List<Object> all = new ArrayList<>(LEAKING);
        SHARED.forEach(all::addAll);

        assertThat(told(RuleBench.all().conclude(all))).isEqualTo(byANewSession(LEAKING));
    }

    @Test
    void other_shared_facts_get_a_session_of_their_own() {
        RuleBase rules = RuleBench.all();
        rules.conclude(SHARED, LEAKING);

        Conclusions withoutThresholds = rules.conclude(List.of(SHARED.get(0)), LEAKING);

        assertThat(withoutThresholds.of(Symptom.class)).isEmpty();
        assertThat(withoutThresholds.of(Proof.class)).isNotEmpty();
        assertThat(told(rules.conclude(SHARED, LEAKING))).isEqualTo(byANewSession(LEAKING));
    }

    @Test
    void a_session_that_holds_more_is_no_session_for_less() {
        RuleBase rules = RuleBench.all();
        rules.conclude(SHARED, LEAKING);

        Conclusions withoutThresholds = rules.conclude(List.of(SHARED.get(0), List.of()), LEAKING);

        assertThat(withoutThresholds.of(Symptom.class)).isEmpty();
    }

    @Test
    void a_session_that_exchanged_its_shared_facts_concludes_as_a_new_one() {
        RuleBase rules = RuleBench.all();
        List<?> thresholds = SHARED.get(1);

        for (int left = 0; left < thresholds.size(); left++) {
            List<List<?>> fewer = List.of(SHARED.get(0), without(left, thresholds));
            assertThat(told(rules.conclude(fewer, LEAKING)))
                    .isEqualTo(told(RuleBench.all().conclude(fewer, LEAKING)));
        }

        assertThat(thresholds).hasSizeGreaterThan(WarmSessions.MOST_AT_REST);
        assertThat(told(rules.conclude(SHARED, SOUND))).isEqualTo(byANewSession(SOUND));
        assertThat(told(rules.conclude(SHARED, LEAKING))).isEqualTo(byANewSession(LEAKING));
    }

    @Test
    void a_session_serves_so_many_cases_and_then_no_more() {
        WarmSession session = WarmSession.with(RuleBench.engine().newKieSession(), shared(), 10_000);

        for (int served = 0; served < WarmSession.MOST_CASES; served++) {
            assertThat(session.isGood()).isTrue();
            session.conclude(SOUND);
            session.clear();
        }

        assertThat(session.isGood()).isFalse();
        session.dispose();
    }

    private static SharedFacts shared() {
        FactList.Known lists = new FactList.Known();
        return new SharedFacts(SHARED.stream().map(lists::of).toList());
    }

    private static List<?> without(int left, List<?> all) {
        List<Object> fewer = new ArrayList<>(all);
        fewer.remove(left);
        return fewer;
    }

    @Test
    void a_session_in_which_a_rule_failed_serves_no_more() {
        RuleBase rules = RuleBench.all();
        rules.conclude(SHARED, LEAKING);
        List<Object> faulty = new ArrayList<>(LEAKING);
        faulty.add(found(Component.WHEEL_CYLINDER, Condition.TIGHT, null));

        assertThatThrownBy(() -> rules.conclude(SHARED, faulty)).isInstanceOf(RuntimeException.class);

        assertThat(told(rules.conclude(SHARED, SOUND))).isEqualTo(byANewSession(SOUND));
        assertThat(told(rules.conclude(SHARED, LEAKING))).isEqualTo(byANewSession(LEAKING));
    }

    @Test
    void cases_judged_at_the_same_time_do_not_mix() throws Exception {
        RuleBase rules = RuleBench.all();
        String leaking = byANewSession(LEAKING);
        String sound = byANewSession(SOUND);
        ExecutorService workers = Executors.newFixedThreadPool(4);
        List<Callable<String>> calls = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            List<Object> facts = i % 2 == 0 ? LEAKING : SOUND;
            calls.add(() -> told(rules.conclude(SHARED, facts)));
        }

        List<Future<String>> answers = workers.invokeAll(calls);
        workers.shutdown();

        for (int i = 0; i < answers.size(); i++) {
            assertThat(answers.get(i).get()).isEqualTo(i % 2 == 0 ? leaking : sound);
        }
    }

    private static String byANewSession(List<Object> facts) {
        return told(RuleBench.all().conclude(SHARED, facts));
    }

    private static String told(Conclusions conclusions) {
        StringBuilder told = new StringBuilder();
        for (Class<? extends Conclusion> type : List.of(Symptom.class, Proof.class, Refutation.class)) {
            conclusions.of(type).forEach(one -> told.append(one).append('\n'));
        }
        return told.toString();
    }

    private static List<Object> of(Object... facts) {
        List<Object> all = new ArrayList<>(List.of(facts));
        all.add(VAN);
        all.addAll(VAN.axles());
        return all;
    }

    private static Figure peak(Place wheel, int newtons) {
        return new Figure(
                FigureKind.PEAK,
                new EntryId("/lane", "rt-1"),
                Stage.ARRIVAL,
                BrakeSystem.SERVICE,
                wheel,
                BigDecimal.valueOf(newtons),
                null,
                true,
                null);
    }

    private static Finding found(Component component, Condition condition, Place place) {
        return new Finding(
                new EntryId("/bay", component + " " + condition),
                FindingStage.AS_FOUND,
                component,
                condition,
                place,
                null,
                null,
                null,
                null);
    }

    private static Vehicle van() {
        return new Vehicle(
                "N1",
                "Corvane",
                "Portal",
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                false,
                false,
                CircuitSplit.DIAGONAL,
                true,
                "DOT 4",
                List.of(
                        new Axle(1, true, BrakeLayout.DISC_FLOATING, ParkingLayout.NONE),
                        new Axle(2, false, BrakeLayout.DRUM_SIMPLEX, ParkingLayout.CABLE_ON_SERVICE_SHOES)),
                null);
    }
}
