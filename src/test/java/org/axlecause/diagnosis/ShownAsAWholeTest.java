package org.axlecause.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.axlecause.diagnosis.Cases.FRONT_LEFT;
import static org.axlecause.diagnosis.Cases.FRONT_RIGHT;
import static org.axlecause.diagnosis.Cases.MODEL;
import static org.axlecause.diagnosis.Cases.REAR_LEFT;
import static org.axlecause.diagnosis.Cases.REAR_RIGHT;
import static org.axlecause.diagnosis.Cases.couldShow;
import static org.axlecause.diagnosis.Cases.on;
import static org.axlecause.diagnosis.Cases.shows;
import static org.axlecause.diagnosis.Cases.van;

import java.util.ArrayList;
import java.util.List;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Place;
import org.axlecause.facts.SymptomCode;
import org.junit.jupiter.api.Test;

/** What a cause of the whole vehicle is held to where only some of its wheels show what it would show. */
class ShownAsAWholeTest {

    private static final double HARDLY_SHOWS = 0.2;

    @Test
    void one_low_wheel_of_four_neither_speaks_for_a_cause_of_all_nor_more_against_it_than_none_would() {
        List<EvidenceWeight> one = lowWheels(List.of(REAR_LEFT), List.of(FRONT_LEFT, FRONT_RIGHT, REAR_RIGHT));
        List<EvidenceWeight> none = lowWheels(List.of(), List.of(FRONT_LEFT, FRONT_RIGHT, REAR_RIGHT));

        assertThat(one).extracting(EvidenceWeight::shows).containsExactly(false, false, false);
        assertThat(decibans(one)).isCloseTo(10 * Math.log10(1 - HARDLY_SHOWS), within(0.2));
        assertThat(decibans(one)).isEqualTo(decibans(none));
    }

    @Test
    void three_low_wheels_of_four_speak_for_a_cause_of_all() {
        List<EvidenceWeight> three = lowWheels(List.of(REAR_LEFT, FRONT_LEFT, FRONT_RIGHT), List.of(REAR_RIGHT));

        assertThat(three)
                .filteredOn(EvidenceWeight::shows)
                .hasSize(3)
                .allSatisfy(weight -> assertThat(weight.decibans().signum()).isPositive());
    }

    /** What low wheels say about a master cylinder that lets the pedal sink. */
    private static List<EvidenceWeight> lowWheels(List<Place> low, List<Place> sound) {
        List<Object> evidence = new ArrayList<>();
        evidence.add(shows(SymptomCode.PEDAL_SINKING, Place.VEHICLE));
        low.forEach(wheel -> evidence.add(shows(SymptomCode.ONE_WHEEL_LOW, wheel)));
        sound.forEach(wheel -> evidence.add(couldShow(SymptomCode.ONE_WHEEL_LOW, wheel)));
        return new Diagnose(MODEL)
                .of(on(van(), evidence.toArray())).causes().stream()
                        .filter(cause -> cause.code() == CauseCode.MASTER_CYLINDER_BYPASSING)
                        .flatMap(cause -> cause.evidence().stream())
                        .filter(weight -> weight.code().equals(SymptomCode.ONE_WHEEL_LOW.toString()))
                        .toList();
    }

    private static double decibans(List<EvidenceWeight> weights) {
        return weights.stream()
                .mapToDouble(weight -> weight.decibans().doubleValue())
                .sum();
    }
}
