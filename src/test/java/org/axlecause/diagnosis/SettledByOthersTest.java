package org.axlecause.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.diagnosis.Cases.REAR;
import static org.axlecause.diagnosis.Cases.REAR_LEFT;
import static org.axlecause.diagnosis.Cases.REAR_RIGHT;
import static org.axlecause.diagnosis.Cases.found;
import static org.axlecause.diagnosis.Cases.van;
import static org.axlecause.facts.Because.because;
import static org.axlecause.inference.RuleBench.shownBy;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.facts.Agent;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.ExplainedAway;
import org.axlecause.facts.Likelier;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.Place;
import org.axlecause.facts.Proof;
import org.axlecause.facts.RecentWork;
import org.axlecause.facts.Refutation;
import org.axlecause.facts.ReportedCondition;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Strength;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.facts.Verified;
import org.axlecause.inference.Conclusions;
import org.axlecause.inference.RuleBase;
import org.axlecause.inference.RuleBench;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What proved causes, recent work and doubtful tests do to other causes. */
class SettledByOthersTest {

    private static final RuleBase RULES = RuleBench.all();

    @Test
    void a_stuck_piston_leaves_no_room_for_tight_ones_on_the_same_wheel() {
        Conclusions concluded = on(found(Component.WHEEL_CYLINDER, Condition.SEIZED, REAR_RIGHT));

        assertThat(concluded.of(Refutation.class))
                .filteredOn(one -> one.code() == CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT)
                .singleElement()
                .returns(REAR_RIGHT, Refutation::place)
                .satisfies(shownBy("CAU-810", "wheel-cylinder-piston-stuck proved at axle 2 right"));
    }

    @Test
    void tight_pistons_leave_no_room_for_a_stuck_one_on_the_same_wheel() {
        Conclusions concluded = on(found(Component.WHEEL_CYLINDER, Condition.TIGHT, REAR_RIGHT));

        assertThat(concluded.of(Refutation.class))
                .filteredOn(one -> one.code() == CauseCode.WHEEL_CYLINDER_PISTON_STUCK)
                .singleElement()
                .satisfies(shownBy("CAU-811"));
    }

    @Test
    void a_stuck_and_a_tight_piston_that_were_both_found_do_not_exclude_each_other() {
        Conclusions concluded = on(
                found(Component.WHEEL_CYLINDER, Condition.SEIZED, REAR_RIGHT),
                found(Component.WHEEL_CYLINDER, Condition.TIGHT, REAR_RIGHT));

        assertThat(concluded.of(Refutation.class)).noneMatch(one -> one.place().equals(REAR_RIGHT));
        assertThat(concluded.of(Proof.class)).hasSize(2);
    }

    @Test
    void tight_parking_cables_are_not_slack_and_slack_ones_not_tight() {
        assertThat(on(found(Component.PARKING_CABLE, Condition.OVER_ADJUSTED, REAR))
                        .of(Refutation.class))
                .singleElement()
                .returns(CauseCode.PARKING_CABLE_STRETCHED, Refutation::code)
                .satisfies(shownBy("CAU-812"));
        assertThat(on(found(Component.PARKING_CABLE, Condition.STRETCHED, REAR)).of(Refutation.class))
                .singleElement()
                .returns(CauseCode.PARKING_CABLE_OVER_TIGHT, Refutation::code)
                .satisfies(shownBy("CAU-813"));
    }

    @Test
    void a_wheel_that_drags_on_with_its_nipple_open_clears_hose_master_cylinder_and_servo() {
        Conclusions concluded = on(found(
                Component.FLEXIBLE_HOSE, Condition.SOUND, REAR_RIGHT, null, CheckCode.OPEN_NIPPLE_ON_DRAGGING_WHEEL));

        assertThat(concluded.of(Refutation.class))
                .extracting(one -> one.because().rule() + " " + one.code())
                .containsExactlyInAnyOrder(
                        "CAU-132 hose-restricted", "CAU-820 master-cylinder-port-covered", "CAU-821 servo-sticking-on");
    }

    @Test
    void a_choked_hose_takes_the_blame_from_the_pistons_of_its_wheel() {
        Conclusions rear = on(found(Component.FLEXIBLE_HOSE, Condition.RESTRICTED, REAR_RIGHT));
        Conclusions front = on(found(Component.FLEXIBLE_HOSE, Condition.RESTRICTED, Cases.FRONT_LEFT));

        assertThat(rear.of(ExplainedAway.class))
                .singleElement()
                .returns(CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT, ExplainedAway::code)
                .satisfies(shownBy("CAU-831"));
        assertThat(front.of(ExplainedAway.class))
                .singleElement()
                .returns(CauseCode.CALLIPER_PISTON_SEIZED, ExplainedAway::code)
                .satisfies(shownBy("CAU-830"));
    }

    @Test
    void a_piston_found_tight_stays_proved_beside_a_choked_hose() {
        Conclusions concluded = on(
                found(Component.FLEXIBLE_HOSE, Condition.RESTRICTED, REAR_RIGHT),
                found(Component.WHEEL_CYLINDER, Condition.TIGHT, REAR_RIGHT));

        assertThat(concluded.of(ExplainedAway.class)).isEmpty();
    }

    @Test
    void a_leaking_cylinder_accounts_for_air_in_its_circuit_and_a_sinking_pedal() {
        Conclusions concluded = on(found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_RIGHT));

        assertThat(concluded.of(ExplainedAway.class))
                .extracting(one -> one.because().rule() + " " + one.code() + " " + one.place())
                .containsExactlyInAnyOrder(
                        "CAU-832 air-in-circuit circuit 1", "CAU-833 master-cylinder-bypassing vehicle");
    }

    @Test
    void a_leaking_hub_seal_accounts_for_a_wet_drum_until_the_cylinder_is_found_leaking_too() {
        Conclusions seal = on(found(Component.HUB_SEAL, Condition.LEAKING, REAR_RIGHT));
        Conclusions both = on(
                found(Component.HUB_SEAL, Condition.LEAKING, REAR_RIGHT),
                found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_RIGHT));

        assertThat(seal.of(ExplainedAway.class))
                .singleElement()
                .returns(CauseCode.WHEEL_CYLINDER_LEAKING, ExplainedAway::code)
                .returns(REAR_RIGHT, ExplainedAway::place)
                .satisfies(shownBy("CAU-834"));
        assertThat(both.of(ExplainedAway.class)).noneMatch(one -> one.code() == CauseCode.WHEEL_CYLINDER_LEAKING);
    }

    @Test
    void a_soaked_lining_sends_glaze_and_unlike_linings_to_the_background_but_water_does_not() {
        Conclusions oil = on(found(Component.SHOE_LINING, Condition.SOAKED, REAR_RIGHT, Agent.GEAR_OIL, null));
        Conclusions water = on(found(Component.SHOE_LINING, Condition.SOAKED, REAR_RIGHT, Agent.WATER, null));

        assertThat(oil.of(ExplainedAway.class))
                .extracting(one -> one.because().rule() + " " + one.code() + " " + one.place())
                .containsExactlyInAnyOrder("CAU-840 lining-glazed axle 2 right", "CAU-841 linings-unlike axle 2");
        assertThat(water.of(ExplainedAway.class)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "CAU-850, adjuster-on-wrong-side, SHOE_SET",
        "CAU-851, air-in-circuit, BRAKE_FLUID",
        "CAU-852, drum-soiled, SHOE_SET",
        "CAU-853, lining-not-bedded, DRUM",
        "CAU-854, lining-soiled-in-work, PAD_SET",
        "CAU-855, linings-unlike, PAD_SET",
        "CAU-856, pipe-union-leaking, BRAKE_PIPE",
        "CAU-857, shoes-misplaced, SHOE_SET",
        "CAU-858, shoes-over-adjusted, ADJUSTER",
        "CAU-859, wheel-cylinder-wrong-bore, WHEEL_CYLINDER"
    })
    void recent_work_makes_what_it_may_have_left_behind_likelier(String rule, String cause, ScopeItem item) {
        Threshold within =
                new Threshold(ThresholdCode.RECENT_WORK_DISTANCE, new BigDecimal("500000"), Verified.JUDGEMENT, "test");
        RecentWork lately = new RecentWork(item, REAR, null, new BigDecimal("500000"));
        RecentWork longAgo = new RecentWork(item, REAR, null, new BigDecimal("500001"));
        RecentWork undated = new RecentWork(item, REAR, null, null);

        assertThat(on(within, lately).of(Likelier.class))
                .filteredOn(one -> one.because().rule().equals(rule))
                .isNotEmpty()
                .allMatch(one -> one.code().toString().equals(cause));
        assertThat(on(within, longAgo).of(Likelier.class)).isEmpty();
        assertThat(on(within, undated).of(Likelier.class)).isEmpty();
        assertThat(on(lately).of(Likelier.class)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "CAU-870, WET_SURFACE",
        "CAU-871, REPORTED_CONDITION",
        "CAU-872, FIGURE_AGAINST_TRACE",
        "CAU-873, IDENTICAL_CHANNELS"
    })
    void a_doubt_about_a_test_makes_a_misleading_test_likelier(String rule, DoubtCode code) {
        TestDoubt doubt = new TestDoubt(code, REAR_LEFT, new EntryId("/lane", "rt-1"), "a doubt");

        assertThat(on(doubt).of(Likelier.class))
                .singleElement()
                .returns(CauseCode.TEST_NOT_VALID, Likelier::code)
                .returns(REAR, Likelier::place)
                .satisfies(shownBy(rule, "a doubt"));
    }

    @ParameterizedTest
    @CsvSource({
        "CAU-874, rust-film, STOOD_FOR_LONG",
        "CAU-874, rust-film, BRAKES_COLD",
        "CAU-875, grip-limit, TYRE_WET",
        "CAU-875, grip-limit, ROLLERS_WET",
        "CAU-875, grip-limit, ROLLERS_WORN",
        "CAU-875, grip-limit, LOAD_SHIFTED",
        "CAU-876, regenerative-blending, REGENERATIVE_BRAKING_ACTIVE",
        "CAU-877, tyres-unequal, TYRES_UNEQUAL",
        "CAU-877, tyres-unequal, TYRE_UNDER_INFLATED",
        "CAU-877, tyres-unequal, TYRE_DAMAGED",
        "CAU-878, long-disuse, STOOD_FOR_LONG"
    })
    void what_is_reported_with_a_test_makes_what_it_stands_for_likelier(
            String rule, String cause, TestCondition condition) {
        ReportedCondition reported =
                new ReportedCondition(condition, REAR, new EntryId("/lane", "rt-1"), BrakeSystem.SERVICE);
        Candidate blending = new Candidate(CauseCode.REGENERATIVE_BLENDING, REAR);

        assertThat(on(reported, blending).of(Likelier.class))
                .filteredOn(one -> one.because().rule().equals(rule))
                .singleElement()
                .returns(REAR, Likelier::place)
                .returns(cause, one -> one.code().toString())
                .satisfies(shownBy(rule, condition.toString()));
        assertThat(on(blending).of(Likelier.class)).isEmpty();
    }

    @Test
    void a_reading_that_does_not_come_back_misleads_unless_grip_drive_or_cold_brakes_account_for_it() {
        Symptom differs = new Symptom(SymptomCode.TEST_NOT_REPEATABLE, REAR, Strength.CLEAR, because("SYM-360"));
        ReportedCondition cold = new ReportedCondition(
                TestCondition.BRAKES_COLD, REAR, new EntryId("/lane", "rt-1"), BrakeSystem.SERVICE);
        ReportedCondition wet = new ReportedCondition(
                TestCondition.ROLLERS_WET, REAR, new EntryId("/lane", "rt-1"), BrakeSystem.SERVICE);

        assertThat(on(differs).of(Proof.class)).extracting(Proof::code).containsExactly(CauseCode.TEST_NOT_VALID);
        assertThat(on(differs, wet).of(Proof.class)).extracting(Proof::code).containsExactly(CauseCode.GRIP_LIMIT);
        assertThat(on(differs, cold).of(Proof.class)).isEmpty();
    }

    @Test
    void with_a_long_pedal_a_weak_pair_on_one_circuit_makes_the_loss_of_the_circuit_likelier() {
        Symptom pedal = new Symptom(SymptomCode.PEDAL_LONG, Place.VEHICLE, Strength.CLEAR, because("SYM-290"));
        Symptom diagonal =
                new Symptom(SymptomCode.DIAGONAL_LOW, Place.ofCircuit(2), Strength.CLEAR, because("SYM-030"));
        Symptom front = new Symptom(SymptomCode.FRONT_AXLE_LOW, Place.ofAxle(1), Strength.CLEAR, because("SYM-040"));
        List<Object> frontRear = new ArrayList<>(List.of(pedal, front));
        frontRear.add(Cases.vehicle(
                "N1",
                CircuitSplit.FRONT_REAR,
                van().axles().get(0),
                van().axles().get(1)));
        frontRear.add(new Candidate(CauseCode.CIRCUIT_LOST, Place.ofCircuit(1)));
        frontRear.add(new Candidate(CauseCode.CIRCUIT_LOST, Place.ofCircuit(2)));

        assertThat(on(pedal, diagonal).of(Likelier.class))
                .singleElement()
                .returns(Place.ofCircuit(2), Likelier::place)
                .satisfies(shownBy("CAU-861"));
        assertThat(on(diagonal).of(Likelier.class)).isEmpty();
        assertThat(RULES.conclude(frontRear).of(Likelier.class))
                .singleElement()
                .returns(Place.ofCircuit(1), Likelier::place)
                .satisfies(shownBy("CAU-860"));
    }

    @Test
    void new_linings_on_old_cylinders_are_a_question_and_on_new_ones_are_not() {
        Object worn = found(Component.SHOE_LINING, Condition.WORN, REAR_RIGHT);
        RecentWork cylinders = new RecentWork(ScopeItem.WHEEL_CYLINDER, REAR, null, null);

        assertThat(on(worn).of(OpenQuestion.class)).singleElement().satisfies(shownBy("CAU-880"));
        assertThat(on(worn, cylinders).of(OpenQuestion.class)).isEmpty();
    }

    private static Conclusions on(Object... facts) {
        List<Object> all = new ArrayList<>(List.of(facts));
        all.add(van());
        all.addAll(van().axles());
        List<Candidate> candidates = Cases.MODEL.candidates(van());
        all.addAll(candidates);
        return RULES.conclude(all);
    }
}
