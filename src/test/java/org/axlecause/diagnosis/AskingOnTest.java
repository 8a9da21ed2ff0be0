package org.axlecause.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.diagnosis.Cases.FRONT_LEFT;
import static org.axlecause.diagnosis.Cases.MODEL;
import static org.axlecause.diagnosis.Cases.REAR;
import static org.axlecause.diagnosis.Cases.REAR_LEFT;
import static org.axlecause.diagnosis.Cases.REAR_RIGHT;
import static org.axlecause.diagnosis.Cases.couldShow;
import static org.axlecause.diagnosis.Cases.on;
import static org.axlecause.diagnosis.Cases.proved;
import static org.axlecause.diagnosis.Cases.ruledOut;
import static org.axlecause.diagnosis.Cases.shows;
import static org.axlecause.diagnosis.Cases.van;

import java.util.ArrayList;
import java.util.List;
import org.axlecause.diagnosis.Cases.Danger;
import org.axlecause.facts.Axle;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.Vehicle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** When one cause that is known does not end the asking, since a second may be there. */
class AskingOnTest {

    private static final Diagnose DIAGNOSE = new Diagnose(MODEL);

    @Test
    void a_proved_cause_that_hardly_shows_a_symptom_leaves_the_likelier_ones_to_be_asked_about() {
        List<Object> evidence = new ArrayList<>(List.of(
                shows(SymptomCode.PARKING_ONE_SIDE_LOW, REAR_LEFT),
                shows(SymptomCode.PARKING_ONE_SIDE_LOW, REAR_RIGHT),
                couldShow(SymptomCode.ONE_WHEEL_LOW, REAR_LEFT),
                couldShow(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT),
                shows(SymptomCode.TEST_NOT_REPEATABLE, REAR),
                proved(CauseCode.GRIP_LIMIT, REAR)));
        Diagnosis open = DIAGNOSE.of(on(van(), evidence.toArray()));
        MODEL.candidates(van()).stream()
                .filter(candidate -> candidate.code() != CauseCode.GRIP_LIMIT)
                .forEach(candidate -> evidence.add(ruledOut(candidate.code(), candidate.place())));
        Diagnosis alone = DIAGNOSE.of(on(van(), evidence.toArray()));

        assertThat(probability(open, CauseCode.PARKING_CABLE_STRETCHED, REAR)).isBetween(0.08, 0.99);
        assertThat(open.nextChecks()).extracting(NextCheck::check).contains(CheckCode.LEVER_CLICK_COUNT);
        assertThat(alone.nextChecks()).isEmpty();
    }

    @Test
    void a_rival_keeps_the_asking_going_only_where_it_makes_other_work() {
        Diagnosis unproved = DIAGNOSE.of(testNotValidOr(CauseCode.RUST_FILM));
        Diagnosis rerun = DIAGNOSE.of(testNotValidOr(CauseCode.RUST_FILM, proved(CauseCode.TEST_NOT_VALID, REAR)));
        Diagnosis renewal =
                DIAGNOSE.of(testNotValidOr(CauseCode.LINING_GLAZED, proved(CauseCode.TEST_NOT_VALID, REAR)));

        assertThat(unproved.nextChecks()).extracting(NextCheck::check).contains(CheckCode.LIQUID_IDENTITY);
        assertThat(probability(rerun, CauseCode.RUST_FILM, REAR)).isBetween(0.08, 0.99);
        assertThat(rerun.nextChecks()).isEmpty();
        assertThat(probability(renewal, CauseCode.LINING_GLAZED, REAR_LEFT)).isBetween(0.08, 0.99);
        assertThat(renewal.nextChecks()).extracting(NextCheck::check).contains(CheckCode.LINING_LOOK);
    }

    @Test
    void rivals_that_are_unlikely_each_keep_the_asking_going_together() {
        Diagnosis low = DIAGNOSE.of(
                on(van(), shows(SymptomCode.FLUID_LOW, Place.VEHICLE), proved(CauseCode.LINING_WORN_OUT, FRONT_LEFT)));

        assertThat(low.causes())
                .filteredOn(cause -> cause.code() != CauseCode.LINING_WORN_OUT)
                .isNotEmpty()
                .allSatisfy(
                        cause -> assertThat(cause.probability().doubleValue()).isLessThan(0.08));
        assertThat(low.nextChecks()).extracting(NextCheck::check).contains(CheckCode.OUTSIDE_LOOK_FOR_LIQUID);
    }

    /** An axle that read weak on both sides and otherwise when warm, with all ruled out but a false test and the rival. */
    private static DiagnosisInput testNotValidOr(CauseCode rival, Object... proofs) {
        List<Object> evidence = new ArrayList<>(List.of(proofs));
        evidence.add(shows(SymptomCode.TEST_NOT_REPEATABLE, REAR));
        for (Place wheel : List.of(REAR_LEFT, REAR_RIGHT)) {
            evidence.add(shows(SymptomCode.SWING_CLEARS, wheel));
            evidence.add(shows(SymptomCode.FORCE_RECOVERS_WARM, wheel));
            evidence.add(shows(SymptomCode.PARKING_ONE_SIDE_LOW, wheel));
        }
        MODEL.candidates(van()).stream()
                .filter(candidate -> candidate.code() != CauseCode.TEST_NOT_VALID && candidate.code() != rival)
                .forEach(candidate -> evidence.add(ruledOut(candidate.code(), candidate.place())));
        return on(van(), evidence.toArray());
    }

    @Test
    void a_circuit_that_is_all_but_proved_lost_is_asked_about_until_its_leak_is_known() {
        List<Object> evidence = new ArrayList<>(List.of(
                shows(SymptomCode.DIAGONAL_LOW, Place.ofCircuit(van().circuitOf(FRONT_LEFT))),
                shows(SymptomCode.NO_FORCE_AT_WHEEL, FRONT_LEFT),
                shows(SymptomCode.NO_FORCE_AT_WHEEL, REAR_RIGHT),
                shows(SymptomCode.PEDAL_LONG, Place.VEHICLE),
                shows(SymptomCode.FLUID_LOW, Place.VEHICLE),
                shows(SymptomCode.WARNING_LAMP_LIT, Place.VEHICLE),
                new Danger()));
        MODEL.candidates(van()).stream()
                .filter(candidate -> candidate.code() != CauseCode.CIRCUIT_LOST
                        && !candidate.equals(new Candidate(CauseCode.BRAKE_PIPE_CORRODED, REAR_RIGHT)))
                .forEach(candidate -> evidence.add(ruledOut(candidate.code(), candidate.place())));
        Diagnosis lost = DIAGNOSE.of(on(van(), evidence.toArray()));
        evidence.add(proved(CauseCode.BRAKE_PIPE_CORRODED, REAR_RIGHT));
        Diagnosis leaking = DIAGNOSE.of(on(van(), evidence.toArray()));

        assertThat(probability(lost, CauseCode.CIRCUIT_LOST, Place.ofCircuit(van().circuitOf(FRONT_LEFT))))
                .isGreaterThan(0.95);
        assertThat(lost.nextChecks()).extracting(NextCheck::check).contains(CheckCode.OUTSIDE_LOOK_FOR_LIQUID);
        assertThat(leaking.nextChecks()).extracting(NextCheck::check).doesNotContain(CheckCode.OUTSIDE_LOOK_FOR_LIQUID);
    }

    @Test
    void a_leak_that_may_have_emptied_a_circuit_is_looked_for_however_little_its_look_tells() {
        Candidate unlikely = new Candidate(CauseCode.HOSE_LEAKING, REAR_RIGHT);
        Place lost = Place.ofCircuit(van().circuitOf(REAR_RIGHT));
        List<Object> evidence = new ArrayList<>(List.of(
                shows(SymptomCode.PEDAL_LONG, Place.VEHICLE),
                couldShow(SymptomCode.FLUID_LOW, Place.VEHICLE),
                couldShow(SymptomCode.PEDAL_SINKING, Place.VEHICLE),
                couldShow(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT),
                proved(CauseCode.CIRCUIT_LOST, lost)));
        MODEL.candidates(van()).stream()
                .filter(candidate -> candidate.code() != CauseCode.CIRCUIT_LOST && !candidate.equals(unlikely))
                .forEach(candidate -> evidence.add(ruledOut(candidate.code(), candidate.place())));
        Diagnosis diagnosis = DIAGNOSE.of(on(van(), evidence.toArray()));

        assertThat(diagnosis.nextChecks())
                .filteredOn(check -> check.check() == CheckCode.OUTSIDE_LOOK_FOR_LIQUID)
                .isNotEmpty()
                .allSatisfy(check ->
                        assertThat(check.expectedInformation().doubleValue()).isLessThan(0.02));
    }

    @Test
    void an_axle_that_was_run_twice_is_not_run_for_what_neither_run_showed() {
        Object late = shows(SymptomCode.LOW_EFFORT_IMBALANCE, REAR_LEFT);
        Diagnosis once = DIAGNOSE.of(on(van(), late));
        Diagnosis twice = DIAGNOSE.of(on(van(), late, couldShow(SymptomCode.TEST_NOT_REPEATABLE, REAR)));

        assertThat(once.nextChecks())
                .anyMatch(check -> check.check() == CheckCode.WATCH_RELEASE
                        && check.place().equals(REAR));
        assertThat(twice.nextChecks()).isNotEmpty();
        assertThat(twice.nextChecks())
                .noneMatch(check -> check.check() == CheckCode.WATCH_RELEASE
                        && check.place().equals(REAR));
    }

    @ParameterizedTest
    @CsvSource({"SHOES_IN_DISC, false", "CABLE_ON_CALLIPER, true", "ELECTRIC_ON_CALLIPER, true"})
    void worn_pads_account_for_a_weak_parking_brake_only_where_it_presses_them(
            ParkingLayout parking, boolean accounts) {
        Vehicle car = Cases.vehicle(
                "M1",
                CircuitSplit.DIAGONAL,
                new Axle(1, true, BrakeLayout.DISC_FLOATING, ParkingLayout.NONE),
                new Axle(2, false, BrakeLayout.DISC_FLOATING, parking));
        Diagnosis diagnosis = DIAGNOSE.of(on(
                car, shows(SymptomCode.PARKING_ONE_SIDE_LOW, REAR_LEFT), proved(CauseCode.LINING_WORN_OUT, REAR_LEFT)));

        assertThat(diagnosis.causes())
                .filteredOn(cause -> cause.code() == CauseCode.LINING_WORN_OUT
                        && cause.place().equals(REAR_LEFT))
                .singleElement()
                .satisfies(cause -> assertThat(cause.evidence().stream()
                                .anyMatch(weight -> weight.code().equals("parking-one-side-low")))
                        .isEqualTo(accounts));
    }

    private static double probability(Diagnosis diagnosis, CauseCode code, Place place) {
        return diagnosis.causes().stream()
                .filter(cause -> cause.code() == code && cause.place().equals(place))
                .mapToDouble(cause -> cause.probability().doubleValue())
                .sum();
    }
}
