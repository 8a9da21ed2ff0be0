package org.axlecause.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.diagnosis.Cases.FRONT_LEFT;
import static org.axlecause.diagnosis.Cases.FRONT_RIGHT;
import static org.axlecause.diagnosis.Cases.REAR_LEFT;
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
    void a_swing_that_clears_proves_the_film_of_rust_unless_a_disc_of_the_axle_is_corroded() {
        Finding here = found(Component.DISC, Condition.CORRODED, FRONT_LEFT);
        Finding opposite = found(Component.DISC, Condition.CORRODED, FRONT_RIGHT);
        Finding worn = found(Component.DISC, Condition.WORN, FRONT_LEFT);

        assertThat(proofs(CauseCode.RUST_FILM, CLEARS, DIFFERS))
                .singleElement()
                .returns(FRONT, Proof::place)
                .satisfies(shownBy("CAU-403"));
        assertThat(proofs(CauseCode.RUST_FILM, CLEARS, RECOVERS))
                .singleElement()
                .satisfies(shownBy("CAU-404"));
        assertThat(proofs(CauseCode.RUST_FILM, CLEARS, DIFFERS, worn)).hasSize(1);
        assertThat(proofs(CauseCode.RUST_FILM, CLEARS, DIFFERS, RECOVERS, here)).isEmpty();
        assertThat(proofs(CauseCode.RUST_FILM, CLEARS, DIFFERS, RECOVERS, opposite))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "FORCE_SWING_ONE_WHEEL, 1, LEFT, 0",
        "FORCE_SWING_ONE_WHEEL, 1, RIGHT, 1",
        "IRREGULAR_FORCE, 1, LEFT, 0",
        "IRREGULAR_FORCE, 2, LEFT, 1",
        "DRAG_ONE_WHEEL, 1, LEFT, 1"
    })
    void a_wheel_that_goes_beyond_its_slip_met_the_limit_of_grip_unless_its_force_swings_or_jumps(
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
