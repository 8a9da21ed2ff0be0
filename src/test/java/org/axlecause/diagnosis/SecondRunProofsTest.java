package org.axlecause.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.diagnosis.Cases.FRONT_LEFT;
import static org.axlecause.diagnosis.Cases.FRONT_RIGHT;
import static org.axlecause.diagnosis.Cases.REAR_LEFT;
import static org.axlecause.diagnosis.Cases.couldShow;
import static org.axlecause.diagnosis.Cases.found;
import static org.axlecause.diagnosis.Cases.shows;
import static org.axlecause.diagnosis.Cases.van;
import static org.axlecause.inference.RuleBench.shownBy;

import java.util.ArrayList;
import java.util.List;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Place;
import org.axlecause.facts.Proof;
import org.axlecause.facts.Side;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.inference.RuleBase;
import org.axlecause.inference.RuleBench;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** When a second run proves the film of rust or the limit of grip, and what else may have changed the reading. */
class SecondRunProofsTest {

    private static final RuleBase RULES = RuleBench.all();
    private static final Place FRONT = Place.ofAxle(1);
    private static final Symptom CLEARS = shows(SymptomCode.SWING_CLEARS, FRONT_LEFT);
    private static final Symptom DIFFERS = shows(SymptomCode.TEST_NOT_REPEATABLE, FRONT);
    private static final Symptom RECOVERS = shows(SymptomCode.FORCE_RECOVERS_WARM, FRONT_LEFT);
    private static final Symptom RETURNS = shows(SymptomCode.GRIP_RETURNS, FRONT_LEFT);

    @Test
    void a_swing_that_clears_proves_the_film_of_rust() {
        assertThat(proofs(CauseCode.RUST_FILM, CLEARS, DIFFERS))
                .singleElement()
                .returns(FRONT, Proof::place)
                .satisfies(shownBy("CAU-403"));
        assertThat(proofs(CauseCode.RUST_FILM, CLEARS, RECOVERS))
                .singleElement()
                .satisfies(shownBy("CAU-404"));
    }

    @ParameterizedTest
    @CsvSource({
        "DISC, CORRODED, 1, LEFT, 0",
        "DISC, CORRODED, 1, RIGHT, 0",
        "DISC, CORRODED, 2, LEFT, 2",
        "DISC, WORN, 1, LEFT, 2",
        "DISC, CRACKED, 1, LEFT, 0",
        "DRUM, SCORED, 1, LEFT, 0",
        "DRUM, OVAL, 1, LEFT, 2",
        "PAD, WORN, 1, RIGHT, 0",
        "PAD, DETACHED, 1, LEFT, 0",
        "PAD, GLAZED, 1, LEFT, 2",
        "SHOE_LINING, WORN, 1, LEFT, 0",
        "SHOE_LINING, WORN, 2, LEFT, 2",
        "CALLIPER, SEIZED, 1, RIGHT, 0",
        "CALLIPER, SEIZED, 2, RIGHT, 2",
        "CALLIPER, LEAKING, 1, RIGHT, 2",
        "HUB_BEARING, WORN, 1, LEFT, 0"
    })
    void an_axle_that_reads_differently_by_itself_leaves_the_film_of_rust_unproved(
            Component component, Condition condition, int axle, Side side, int proofs) {
        Finding look = found(component, condition, Place.ofWheel(axle, side));

        assertThat(proofs(CauseCode.RUST_FILM, CLEARS, DIFFERS, RECOVERS, look)).hasSize(proofs);
    }

    @ParameterizedTest
    @CsvSource({
        "DRAG_ONE_WHEEL, 1, LEFT, 0",
        "DRAG_ONE_WHEEL, 1, RIGHT, 0",
        "DRAG_ONE_WHEEL, 2, LEFT, 2",
        "FORCE_SWING_ONE_WHEEL, 1, RIGHT, 0",
        "FORCE_SWING_ONE_WHEEL, 2, RIGHT, 2",
        "FORCE_SWING_AXLE, 1, , 0",
        "FORCE_SWING_AXLE, 2, , 2",
        "IRREGULAR_FORCE, 1, LEFT, 0",
        "IRREGULAR_FORCE, 2, LEFT, 2",
        "ONE_WHEEL_LOW, 1, LEFT, 2"
    })
    void an_axle_that_drags_or_is_still_uneven_leaves_the_film_of_rust_unproved(
            SymptomCode beside, int axle, Side side, int proofs) {
        Symptom other = shows(beside, side == null ? Place.ofAxle(axle) : Place.ofWheel(axle, side));

        assertThat(proofs(CauseCode.RUST_FILM, CLEARS, DIFFERS, RECOVERS, other))
                .hasSize(proofs);
    }

    @ParameterizedTest
    @CsvSource({"HUB_BEARING, WORN, 0", "HUB_BEARING, SOUND, 1", "DISC, SCORED, 0", "DISC, WORN, 1"})
    void an_axle_that_reads_differently_by_itself_leaves_the_limit_of_grip_unproved(
            Component component, Condition condition, int proofs) {
        Finding look = found(component, condition, FRONT_RIGHT);

        assertThat(proofs(CauseCode.GRIP_LIMIT, RETURNS, look)).hasSize(proofs);
    }

    @ParameterizedTest
    @CsvSource({
        "FORCE_SWING_ONE_WHEEL, 1, LEFT, 0",
        "FORCE_SWING_ONE_WHEEL, 1, RIGHT, 1",
        "IRREGULAR_FORCE, 1, LEFT, 0",
        "IRREGULAR_FORCE, 2, LEFT, 1",
        "SLOW_RISE_ONE_WHEEL, 1, LEFT, 0",
        "SLOW_RISE_ONE_WHEEL, 1, RIGHT, 1",
        "DRAG_ONE_WHEEL, 1, LEFT, 0",
        "DRAG_ONE_WHEEL, 1, RIGHT, 0",
        "DRAG_ONE_WHEEL, 2, LEFT, 1"
    })
    void a_wheel_that_goes_beyond_its_slip_met_the_limit_of_grip_unless_its_force_is_uneven_or_late_or_its_axle_drags(
            SymptomCode beside, int axle, Side side, int proofs) {
        Symptom other = shows(beside, Place.ofWheel(axle, side));

        assertThat(proofs(CauseCode.GRIP_LIMIT, RETURNS, other)).hasSize(proofs);
    }

    @Test
    void a_swing_of_the_whole_axle_leaves_the_limit_of_grip_unproved() {
        assertThat(proofs(CauseCode.GRIP_LIMIT, RETURNS))
                .singleElement()
                .returns(FRONT, Proof::place)
                .satisfies(shownBy("CAU-712"));
        assertThat(proofs(CauseCode.GRIP_LIMIT, RETURNS, shows(SymptomCode.FORCE_SWING_AXLE, FRONT)))
                .isEmpty();
        assertThat(proofs(CauseCode.GRIP_LIMIT, RETURNS, shows(SymptomCode.FORCE_SWING_ONE_WHEEL, REAR_LEFT)))
                .hasSize(1);
    }

    @Test
    void a_wheel_whose_force_was_uneven_when_it_slipped_leaves_the_limit_of_grip_unproved() {
        assertThat(proofs(CauseCode.GRIP_LIMIT, RETURNS, couldShow(SymptomCode.SWING_CLEARS, FRONT_LEFT)))
                .isEmpty();
        assertThat(proofs(CauseCode.GRIP_LIMIT, RETURNS, couldShow(SymptomCode.SWING_CLEARS, FRONT_RIGHT)))
                .hasSize(1);
    }

    private static List<Proof> proofs(CauseCode code, Object... facts) {
        List<Object> all = new ArrayList<>(List.of(facts));
        all.add(van());
        all.addAll(van().axles());
        all.addAll(Cases.MODEL.candidates(van()));
        return RULES.conclude(all).of(Proof.class).stream()
                .filter(proof -> proof.code() == code)
                .toList();
    }
}
