package org.axlecause.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.diagnosis.Cases.FRONT_LEFT;
import static org.axlecause.diagnosis.Cases.FRONT_RIGHT;
import static org.axlecause.diagnosis.Cases.MODEL;
import static org.axlecause.diagnosis.Cases.REAR;
import static org.axlecause.diagnosis.Cases.REAR_LEFT;
import static org.axlecause.diagnosis.Cases.REAR_RIGHT;
import static org.axlecause.diagnosis.Cases.couldShow;
import static org.axlecause.diagnosis.Cases.found;
import static org.axlecause.diagnosis.Cases.on;
import static org.axlecause.diagnosis.Cases.proved;
import static org.axlecause.diagnosis.Cases.ruledOut;
import static org.axlecause.diagnosis.Cases.shows;
import static org.axlecause.diagnosis.Cases.van;
import static org.axlecause.facts.Because.because;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.axlecause.diagnosis.Cases.Danger;
import org.axlecause.diagnosis.Cases.NoneOpenedYet;
import org.axlecause.diagnosis.Cases.Opened;
import org.axlecause.facts.Agent;
import org.axlecause.facts.Axle;
import org.axlecause.facts.Because;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.ExplainedAway;
import org.axlecause.facts.Likelier;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.Strength;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.UnlookedPart;
import org.junit.jupiter.api.Test;

/** Ranking, chains, next checks and questions on a van with rear drums. */
class DiagnoseTest {

    private static final Diagnose DIAGNOSE = new Diagnose(MODEL);
    private static final long SEED = 20260302L;

    @Test
    void a_cause_is_a_candidate_only_where_the_layout_allows_it() {
        assertThat(MODEL.candidates(van()))
                .contains(
                        new Candidate(CauseCode.WHEEL_CYLINDER_LEAKING, REAR_RIGHT),
                        new Candidate(CauseCode.SLIDE_PINS_SEIZED, FRONT_LEFT),
                        new Candidate(CauseCode.TEST_NOT_VALID, REAR))
                .doesNotContain(
                        new Candidate(CauseCode.WHEEL_CYLINDER_LEAKING, FRONT_LEFT),
                        new Candidate(CauseCode.SLIDE_PINS_SEIZED, REAR_RIGHT),
                        new Candidate(CauseCode.PARKING_CABLE_SEIZED, FRONT_LEFT));
        assertThat(MODEL.candidates(Cases.vehicle(
                        "N3",
                        CircuitSplit.FRONT_REAR,
                        new Axle(1, true, BrakeLayout.DRUM_SIMPLEX, ParkingLayout.NONE))))
                .isEmpty();
    }

    @Test
    void low_in_service_and_parking_points_to_friction_and_low_in_service_only_to_hydraulics() {
        Diagnosis both = DIAGNOSE.of(on(
                van(),
                shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT),
                shows(SymptomCode.PARKING_ONE_SIDE_LOW, REAR_RIGHT)));
        Diagnosis serviceOnly = DIAGNOSE.of(on(
                van(),
                shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT),
                couldShow(SymptomCode.PARKING_ONE_SIDE_LOW, REAR_RIGHT)));

        assertThat(probability(both, CauseCode.LINING_SOAKED_EARLIER))
                .isGreaterThan(3 * probability(both, CauseCode.WHEEL_CYLINDER_PISTON_STUCK));
        assertThat(probability(serviceOnly, CauseCode.WHEEL_CYLINDER_PISTON_STUCK))
                .isGreaterThan(3 * probability(serviceOnly, CauseCode.LINING_SOAKED_EARLIER));
    }

    @Test
    void what_was_weighed_for_one_case_serves_another_with_its_own_grounds() {
        Diagnose diagnose = new Diagnose(MODEL);
        Object checked = couldShow(SymptomCode.PARKING_ONE_SIDE_LOW, REAR_RIGHT);

        Diagnosis first = diagnose.of(on(van(), lowByRule("SYM-001"), checked));
        Diagnosis second = diagnose.of(on(van(), lowByRule("SYM-002"), checked));

        assertThat(second).isEqualTo(new Diagnose(MODEL).of(on(van(), lowByRule("SYM-002"), checked)));
        assertThat(second.nextChecks()).isEqualTo(first.nextChecks());
        assertThat(second.causes())
                .isNotEmpty()
                .allSatisfy(cause -> assertThat(cause.because())
                        .extracting(because -> because.rule())
                        .containsExactly("SYM-002"));
    }

    private static Symptom lowByRule(String rule) {
        return new Symptom(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT, Strength.CLEAR, Because.because(rule));
    }

    @Test
    void one_more_thing_known_is_weighed_anew() {
        Diagnose diagnose = new Diagnose(MODEL);
        Object low = shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT);
        Object leaking = found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_RIGHT);
        List<DiagnosisInput> inputs = List.of(
                on(van(), low),
                on(van(), low, couldShow(SymptomCode.PARKING_ONE_SIDE_LOW, REAR_RIGHT)),
                on(van(), low, leaking),
                on(van(), low, leaking, proved(CauseCode.WHEEL_CYLINDER_LEAKING, REAR_RIGHT)),
                on(van(), low, ruledOut(CauseCode.WHEEL_CYLINDER_LEAKING, REAR_RIGHT)),
                on(van(), low, found(Component.WHEEL_CYLINDER, Condition.NOT_ACCESSIBLE, REAR_RIGHT)));

        List<Diagnosis> weighed = inputs.stream().map(diagnose::of).toList();

        assertThat(weighed).doesNotHaveDuplicates();
        for (int i = 0; i < inputs.size(); i++) {
            assertThat(weighed.get(i)).isEqualTo(new Diagnose(MODEL).of(inputs.get(i)));
            assertThat(diagnose.withoutChecks(inputs.get(i)))
                    .isEqualTo(new Diagnosis(
                            weighed.get(i).causes(),
                            List.of(),
                            weighed.get(i).questions(),
                            weighed.get(i).unlooked()));
        }
    }

    @Test
    void a_proof_confirms_and_draws_the_chain_down_to_the_symptom() {
        Diagnosis diagnosis = DIAGNOSE.of(on(
                van(),
                shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT),
                found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_RIGHT),
                found(Component.SHOE_LINING, Condition.SOAKED, REAR_RIGHT, Agent.BRAKE_FLUID, null),
                proved(CauseCode.WHEEL_CYLINDER_LEAKING, REAR_RIGHT)));

        RankedCause first = diagnosis.causes().get(0);
        assertThat(first.code()).isEqualTo(CauseCode.WHEEL_CYLINDER_LEAKING);
        assertThat(first.standing()).isEqualTo(CauseStanding.CONFIRMED);
        assertThat(first.probability()).isEqualByComparingTo("1");
        assertThat(first.root()).isTrue();
        assertThat(first.chain())
                .extracting(node -> node.code() + (node.seen() ? " seen" : " inferred"))
                .containsExactly(
                        "wheel-cylinder-leaking seen",
                        "fluid-in-drum inferred",
                        "lining-soaked seen",
                        "friction-low inferred",
                        "one-wheel-low seen");
    }

    @Test
    void a_glazed_lining_below_a_proved_tight_piston_is_no_root() {
        Diagnosis diagnosis = DIAGNOSE.of(on(
                van(),
                shows(SymptomCode.DRAG_ONE_WHEEL, REAR_RIGHT),
                proved(CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT, REAR_RIGHT),
                proved(CauseCode.LINING_GLAZED, REAR_RIGHT)));

        assertThat(ranked(diagnosis, CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT).root())
                .isTrue();
        assertThat(ranked(diagnosis, CauseCode.LINING_GLAZED).root()).isFalse();
        assertThat(diagnosis.questions()).noneMatch(question -> question.code() == QuestionCode.UPSTREAM_UNPROVEN);
    }

    @Test
    void a_glazed_lining_alone_asks_what_made_it_hot() {
        Diagnosis diagnosis = DIAGNOSE.of(on(van(), proved(CauseCode.LINING_GLAZED, REAR_RIGHT)));

        assertThat(diagnosis.questions())
                .filteredOn(question -> question.code() == QuestionCode.UPSTREAM_UNPROVEN)
                .singleElement()
                .satisfies(question -> assertThat(question.resolve())
                        .contains("wheel-cylinder-pistons-tight (axle 2 right)", "parking-cable-seized"));
    }

    @Test
    void a_symptom_whose_causes_are_all_ruled_out_is_said_to_be_unexplained() {
        Object[] ruledOut = MODEL.causes().stream()
                .filter(cause ->
                        cause.links().stream().anyMatch(link -> link.evidence().equals("parking-stays-on")))
                .flatMap(cause -> List.of(REAR_RIGHT, REAR_LEFT, REAR, Place.VEHICLE).stream()
                        .map(place -> ruledOut(cause.code(), place)))
                .toArray();
        List<Object> evidence = new ArrayList<>(List.of(ruledOut));
        evidence.add(shows(SymptomCode.PARKING_STAYS_ON, REAR_RIGHT));

        Diagnosis diagnosis = DIAGNOSE.of(on(van(), evidence.toArray()));

        assertThat(diagnosis.questions())
                .filteredOn(question -> question.code() == QuestionCode.EVIDENCE_UNEXPLAINED)
                .singleElement()
                .returns(REAR_RIGHT, Question::place);
    }

    @Test
    void a_cause_both_proved_and_ruled_out_is_a_contradiction_and_only_suspected() {
        Diagnosis diagnosis = DIAGNOSE.of(on(
                van(),
                proved(CauseCode.HUB_SEAL_LEAKING, REAR_RIGHT),
                ruledOut(CauseCode.HUB_SEAL_LEAKING, REAR_RIGHT)));

        assertThat(ranked(diagnosis, CauseCode.HUB_SEAL_LEAKING).standing()).isEqualTo(CauseStanding.SUSPECTED);
        assertThat(diagnosis.questions()).extracting(Question::code).contains(QuestionCode.CONTRADICTION);
    }

    @Test
    void an_opened_axle_is_looked_over_on_both_wheels_whatever_is_proved() {
        Diagnosis diagnosis = DIAGNOSE.of(on(
                van(),
                new Opened(2),
                shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT),
                found(Component.HUB_SEAL, Condition.LEAKING, REAR_RIGHT),
                found(Component.ADJUSTER, Condition.NOT_ACCESSIBLE, REAR_LEFT),
                proved(CauseCode.HUB_SEAL_LEAKING, REAR_RIGHT)));

        assertThat(diagnosis.nextChecks())
                .filteredOn(NextCheck::lookingOver)
                .extracting(check -> check.check() + " " + check.place())
                .containsExactlyInAnyOrder(
                        "lining-look axle 2 left",
                        "push-pistons-back axle 2 left",
                        "hub-seal-look axle 2 left",
                        "lining-look axle 2 right",
                        "push-pistons-back axle 2 right",
                        "hardware-look axle 2 right");
        assertThat(diagnosis.unlooked())
                .extracting(UnlookedPart::shown)
                .containsExactlyInAnyOrder(
                        "shoe lining at axle 2 left not looked at",
                        "wheel cylinder at axle 2 left not looked at",
                        "hub seal at axle 2 left not looked at",
                        "shoe lining at axle 2 right not looked at",
                        "wheel cylinder at axle 2 right not looked at",
                        "adjuster at axle 2 right not looked at");
    }

    @Test
    void no_roller_hold_or_road_check_is_asked_for_in_danger() {
        Object low = shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT);
        Diagnosis safe = DIAGNOSE.of(on(van(), low));
        Diagnosis danger = DIAGNOSE.of(on(van(), low, new Danger()));

        assertThat(safe.nextChecks()).extracting(NextCheck::check).contains(CheckCode.PEDAL_CHECK);
        assertThat(danger.nextChecks())
                .isNotEmpty()
                .allMatch(check -> MODEL.check(check.check()).drives() == null);
    }

    @Test
    void every_check_can_be_answered_with_not_accessible() {
        Diagnosis diagnosis = DIAGNOSE.of(on(van(), shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT)));

        assertThat(diagnosis.nextChecks())
                .isNotEmpty()
                .allSatisfy(check -> assertThat(
                                check.answers().get(check.answers().size() - 1).condition())
                        .isEqualTo(Condition.NOT_ACCESSIBLE));
    }

    @Test
    void a_check_of_the_whole_vehicle_offers_the_fault_of_each_wheel() {
        Diagnosis diagnosis = DIAGNOSE.of(on(van(), shows(SymptomCode.WARNING_LAMP_LIT, Place.VEHICLE)));

        assertThat(diagnosis.nextChecks())
                .filteredOn(check -> check.check() == CheckCode.ANTILOCK_DATA_CHECK)
                .singleElement()
                .satisfies(check -> assertThat(check.answers())
                        .filteredOn(answer -> answer.component() == Component.ANTILOCK_SENSOR
                                && answer.condition() == Condition.BROKEN)
                        .extracting(NextCheck.Answer::place)
                        .containsExactly(FRONT_LEFT, FRONT_RIGHT, REAR_LEFT, REAR_RIGHT));
    }

    @Test
    void what_makes_a_cause_likelier_or_explains_it_away_stands_among_its_evidence_in_decibans() {
        DiagnosisInput plain = on(
                van(),
                shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT),
                shows(SymptomCode.PARKING_ONE_SIDE_LOW, REAR_RIGHT));
        DiagnosisInput told = new DiagnosisInput(
                plain.vehicle(),
                plain.day(),
                plain.weights(),
                plain.symptoms(),
                plain.observable(),
                plain.findings(),
                plain.proofs(),
                plain.refutations(),
                List.of(new ExplainedAway(CauseCode.LINING_SOAKED_EARLIER, REAR_RIGHT, because("CAU-840"))),
                List.of(new Likelier(CauseCode.LINING_SOILED_IN_WORK, REAR_RIGHT, because("CAU-854"))),
                plain.openedAxles(),
                plain.danger(),
                plain.openingBarred());

        assertThat(weight(DIAGNOSE.of(told), CauseCode.LINING_SOILED_IN_WORK, "made-likelier"))
                .isEqualByComparingTo("7.0");
        assertThat(DIAGNOSE.of(told).causes())
                .filteredOn(cause -> cause.code() == CauseCode.LINING_SOILED_IN_WORK
                        && cause.place().equals(REAR_RIGHT))
                .singleElement()
                .satisfies(cause -> assertThat(cause.evidence())
                        .extracting(EvidenceWeight::code)
                        .doesNotContain("no-work-told"));
        assertThat(weight(DIAGNOSE.of(told), CauseCode.LINING_SOAKED_EARLIER, "explained-away"))
                .isEqualByComparingTo("-10.0");
        assertThat(weight(DIAGNOSE.of(plain), CauseCode.LINING_SOAKED_EARLIER, "one-wheel-low"))
                .isPositive();
    }

    private static BigDecimal weight(Diagnosis diagnosis, CauseCode code, String evidence) {
        return diagnosis.causes().stream()
                .filter(cause ->
                        cause.code() == code && List.of(REAR_RIGHT, REAR).contains(cause.place()))
                .flatMap(cause -> cause.evidence().stream())
                .filter(weight -> weight.code().equals(evidence))
                .map(EvidenceWeight::decibans)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_harmful_check_never_stands_before_a_harmless_one_that_tells_as_much() {
        Diagnosis diagnosis = DIAGNOSE.of(on(van(), new Opened(2), shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT)));

        assertThat(diagnosis.nextChecks())
                .extracting(NextCheck::check)
                .doesNotContain(CheckCode.BOOT_EDGE_LOOK, CheckCode.SLIGHT_PEDAL_PRESS);
    }

    @Test
    void a_reading_is_repeated_before_anything_is_taken_apart_for_it() {
        Symptom low = shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT);

        assertThat(DIAGNOSE.of(on(van(), low)).nextChecks().get(0))
                .returns(CheckCode.REPEAT_ROLLER_TEST, NextCheck::check)
                .returns(REAR, NextCheck::place);
        assertThat(DIAGNOSE.of(on(van(), low, couldShow(SymptomCode.TEST_NOT_REPEATABLE, REAR)))
                        .nextChecks()
                        .get(0)
                        .check())
                .isNotEqualTo(CheckCode.REPEAT_ROLLER_TEST);
        assertThat(DIAGNOSE.of(on(van(), low, new Opened(2)))
                        .nextChecks()
                        .get(0)
                        .check())
                .isNotEqualTo(CheckCode.REPEAT_ROLLER_TEST);
        assertThat(DIAGNOSE.of(on(van(), low, new Danger())).nextChecks())
                .noneMatch(check -> check.check() == CheckCode.REPEAT_ROLLER_TEST);
    }

    @Test
    void what_a_second_run_still_shows_is_not_put_down_to_the_first_one() {
        Object low = shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT);
        Object differs = shows(SymptomCode.TEST_NOT_REPEATABLE, REAR);
        Diagnosis once = DIAGNOSE.of(on(van(), low, proved(CauseCode.TEST_NOT_VALID, REAR)));
        Diagnosis twice = DIAGNOSE.of(on(van(), low, differs, proved(CauseCode.TEST_NOT_VALID, REAR)));

        assertThat(ranked(once, CauseCode.TEST_NOT_VALID).evidence())
                .extracting(EvidenceWeight::code)
                .contains("one-wheel-low");
        assertThat(once.nextChecks()).isEmpty();
        assertThat(ranked(twice, CauseCode.TEST_NOT_VALID).evidence())
                .extracting(EvidenceWeight::code)
                .contains("test-not-repeatable")
                .doesNotContain("one-wheel-low");
        assertThat(twice.nextChecks()).isNotEmpty();
    }

    @Test
    void what_a_second_run_tells_is_not_settled_before_it() {
        Object[] rough = {
            shows(SymptomCode.IRREGULAR_FORCE, REAR_LEFT),
            shows(SymptomCode.IRREGULAR_FORCE, REAR_RIGHT),
            shows(SymptomCode.FORCE_SWING_ONE_WHEEL, REAR_LEFT),
            shows(SymptomCode.FORCE_SWING_ONE_WHEEL, REAR_RIGHT)
        };
        List<Object> evidence = new ArrayList<>(List.of(rough));
        MODEL.candidates(van()).stream()
                .filter(candidate -> candidate.code() != CauseCode.RUST_FILM
                        && candidate.place().axle() != null)
                .forEach(candidate -> evidence.add(ruledOut(candidate.code(), candidate.place())));
        List<Object> again = new ArrayList<>(evidence);
        again.add(shows(SymptomCode.TEST_NOT_REPEATABLE, REAR));
        again.add(shows(SymptomCode.SWING_CLEARS, REAR_LEFT));

        Diagnosis before = DIAGNOSE.of(on(van(), evidence.toArray()));

        assertThat(probability(before, CauseCode.RUST_FILM)).isGreaterThan(0.97);
        assertThat(before.nextChecks()).extracting(NextCheck::check).contains(CheckCode.REPEAT_ROLLER_TEST);
        assertThat(DIAGNOSE.of(on(van(), again.toArray())).nextChecks())
                .noneMatch(check -> check.place().equals(REAR));
    }

    @Test
    void a_lost_circuit_is_asked_about_until_the_leak_behind_it_is_proved() {
        List<Object> evidence = new ArrayList<>(List.of(
                shows(SymptomCode.NO_FORCE_AT_WHEEL, FRONT_LEFT),
                shows(SymptomCode.NO_FORCE_AT_WHEEL, REAR_RIGHT),
                shows(SymptomCode.FLUID_LOW, Place.VEHICLE),
                proved(CauseCode.CIRCUIT_LOST, Place.ofCircuit(van().circuitOf(FRONT_LEFT))),
                new Danger()));
        Diagnosis lost = DIAGNOSE.of(on(van(), evidence.toArray()));
        evidence.add(proved(CauseCode.BRAKE_PIPE_CORRODED, REAR_RIGHT));
        evidence.add(ruledOut(CauseCode.BRAKE_PIPE_CORRODED, REAR_LEFT));
        Diagnosis leaking = DIAGNOSE.of(on(van(), evidence.toArray()));

        assertThat(lost.nextChecks()).extracting(NextCheck::check).contains(CheckCode.OUTSIDE_LOOK_FOR_LIQUID);
        assertThat(leaking.nextChecks()).isEmpty();
    }

    @Test
    void a_lining_is_looked_over_by_a_look_that_sees_its_thickness() {
        Object first = found(Component.SHOE_LINING, Condition.SOUND, REAR_LEFT, null, CheckCode.LOOK_BEFORE_TOUCHING);
        Object soaked = found(Component.SHOE_LINING, Condition.SOAKED, REAR_LEFT, null, CheckCode.LOOK_BEFORE_TOUCHING);
        Object second = found(Component.SHOE_LINING, Condition.SOUND, REAR_LEFT, null, CheckCode.LINING_LOOK);
        Object unnamed = found(Component.SHOE_LINING, Condition.SOUND, REAR_LEFT);

        assertThat(lookedOver(first)).contains("lining-look axle 2 left");
        assertThat(lookedOver(soaked)).doesNotContain("lining-look axle 2 left");
        assertThat(lookedOver(first, second)).doesNotContain("lining-look axle 2 left");
        assertThat(lookedOver(unnamed)).doesNotContain("lining-look axle 2 left");
    }

    private static List<String> lookedOver(Object... evidence) {
        List<Object> all = new ArrayList<>(List.of(evidence));
        all.add(new Opened(2));
        return DIAGNOSE.of(on(van(), all.toArray())).nextChecks().stream()
                .filter(NextCheck::lookingOver)
                .map(check -> check.check() + " " + check.place())
                .toList();
    }

    @Test
    void a_cause_that_only_work_brings_about_is_less_likely_where_none_is_told_of() {
        List<Object> evidence = new ArrayList<>(List.of(
                shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT), shows(SymptomCode.PARKING_ONE_SIDE_LOW, REAR_RIGHT)));
        MODEL.candidates(van()).stream()
                .filter(candidate -> candidate.code() != CauseCode.LINING_SOILED_IN_WORK
                        && candidate.code() != CauseCode.LINING_SOAKED_EARLIER)
                .forEach(candidate -> evidence.add(ruledOut(candidate.code(), candidate.place())));
        Diagnosis diagnosis = DIAGNOSE.of(on(van(), evidence.toArray()));

        assertThat(weight(diagnosis, CauseCode.LINING_SOILED_IN_WORK, "no-work-told"))
                .isEqualByComparingTo("-7.0");
        assertThat(diagnosis.causes())
                .filteredOn(cause -> cause.code() == CauseCode.LINING_SOAKED_EARLIER)
                .allSatisfy(cause -> assertThat(cause.evidence())
                        .extracting(EvidenceWeight::code)
                        .doesNotContain("no-work-told"));
    }

    @Test
    void two_roots_on_one_axle_have_a_chain_each() {
        Diagnosis diagnosis = DIAGNOSE.of(on(
                van(),
                shows(SymptomCode.ONE_WHEEL_LOW, REAR_LEFT),
                shows(SymptomCode.PARKING_ONE_SIDE_LOW, REAR_RIGHT),
                proved(CauseCode.HUB_SEAL_LEAKING, REAR_LEFT),
                proved(CauseCode.PARKING_CABLE_SEIZED, REAR_RIGHT)));

        assertThat(diagnosis.causes())
                .filteredOn(cause -> cause.standing() == CauseStanding.CONFIRMED)
                .allMatch(RankedCause::root)
                .extracting(cause -> cause.chain().stream()
                        .map(node -> node.code() + " " + node.place())
                        .toList())
                .containsExactlyInAnyOrder(
                        List.of(
                                "hub-seal-leaking axle 2 left",
                                "grease-on-lining axle 2 left",
                                "friction-low axle 2 left",
                                "one-wheel-low axle 2 left"),
                        List.of(
                                "parking-cable-seized axle 2 right",
                                "lever-not-pulled axle 2 right",
                                "parking-one-side-low axle 2 right"));
    }

    @Test
    void no_wheel_comes_off_while_opening_is_barred() {
        Symptom low = shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT);

        assertThat(DIAGNOSE.of(on(van(), low, new NoneOpenedYet())).nextChecks())
                .isNotEmpty()
                .allMatch(check -> check.access() < 2);
        assertThat(DIAGNOSE.of(on(van(), low)).nextChecks()).anyMatch(check -> check.access() >= 2);
    }

    @Test
    void nothing_is_asked_once_a_proved_cause_accounts_for_what_shows() {
        Object low = shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT);

        assertThat(DIAGNOSE.of(on(van(), low, proved(CauseCode.HUB_SEAL_LEAKING, REAR_RIGHT)))
                        .nextChecks())
                .isEmpty();
        assertThat(DIAGNOSE.of(on(van(), low)).nextChecks()).isNotEmpty();
    }

    @Test
    void a_check_that_can_not_be_made_is_no_evidence_and_is_not_asked_again() {
        Object low = shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT);
        Diagnosis before = DIAGNOSE.of(on(van(), low));
        NextCheck asked = before.nextChecks().get(0);
        NextCheck.Answer notAccessible = asked.answers().get(asked.answers().size() - 1);

        Diagnosis after = DIAGNOSE.of(on(
                van(),
                low,
                found(notAccessible.component(), Condition.NOT_ACCESSIBLE, asked.place(), null, asked.check())));

        assertThat(after.causes()).isEqualTo(before.causes());
        assertThat(after.nextChecks())
                .isNotEmpty()
                .noneMatch(
                        check -> check.check() == asked.check() && check.place().equals(asked.place()));
    }

    @Test
    void a_fault_recorded_without_its_wheel_is_asked_back() {
        Diagnosis diagnosis = DIAGNOSE.of(on(van(), found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR)));

        assertThat(diagnosis.questions())
                .singleElement()
                .returns(QuestionCode.PLACE_UNCLEAR, Question::code)
                .returns(REAR, Question::place);
    }

    @Test
    void without_evidence_nothing_is_suspected_and_nothing_asked() {
        assertThat(DIAGNOSE.of(on(van()))).isEqualTo(Diagnosis.NONE);
    }

    @Test
    void the_order_of_the_evidence_changes_nothing() {
        List<Object> evidence = new ArrayList<>(List.of(
                new Opened(2),
                shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT),
                shows(SymptomCode.PARKING_ONE_SIDE_LOW, REAR_LEFT),
                shows(SymptomCode.PEDAL_LONG, Place.VEHICLE),
                couldShow(SymptomCode.DRAG_ONE_WHEEL, REAR_RIGHT),
                couldShow(SymptomCode.FORCE_SWING_ONE_WHEEL, REAR_LEFT),
                found(Component.HUB_SEAL, Condition.SOUND, REAR_LEFT),
                found(Component.SHOE_LINING, Condition.SOAKED, REAR_RIGHT, Agent.GREASE, null),
                proved(CauseCode.HUB_SEAL_LEAKING, REAR_RIGHT),
                ruledOut(CauseCode.HUB_SEAL_LEAKING, REAR_LEFT)));
        Diagnosis expected = DIAGNOSE.of(on(van(), evidence.toArray()));
        Random random = new Random(SEED);
        for (int run = 0; run < 20; run++) {
            Collections.shuffle(evidence, random);
            assertThat(DIAGNOSE.of(on(van(), evidence.toArray())))
                    .as("run %d of the shuffles with seed %d", run, SEED)
                    .isEqualTo(expected);
        }
    }

    private static double probability(Diagnosis diagnosis, CauseCode code) {
        return diagnosis.causes().stream()
                .filter(cause ->
                        cause.code() == code && List.of(REAR_RIGHT, REAR).contains(cause.place()))
                .mapToDouble(cause -> cause.probability().doubleValue())
                .findFirst()
                .orElse(0);
    }

    private static RankedCause ranked(Diagnosis diagnosis, CauseCode code) {
        return diagnosis.causes().stream()
                .filter(cause ->
                        cause.code() == code && List.of(REAR_RIGHT, REAR).contains(cause.place()))
                .findFirst()
                .orElseThrow();
    }
}
