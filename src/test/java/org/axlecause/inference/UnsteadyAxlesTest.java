package org.axlecause.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.facts.Because.because;
import static org.axlecause.inference.RuleBench.shownBy;

import java.util.List;
import java.util.stream.Stream;
import org.axlecause.facts.Axle;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Finding;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.Strength;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.UnsteadyAxle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class UnsteadyAxlesTest {

    private static final RuleBench RULES = RuleBench.forFile("symptoms/unsteady-axles.drl");
    private static final Place WHEEL = Place.ofWheel(2, Side.LEFT);
    private static final Place REAR = Place.ofAxle(2);

    static Stream<Arguments> unsteady() {
        return Stream.of(
                Arguments.of("SYM-410", symptom(SymptomCode.DRAG_ONE_WHEEL, WHEEL)),
                Arguments.of("SYM-410", symptom(SymptomCode.DRAG_AXLE, REAR)),
                Arguments.of("SYM-411", finding(Component.DRUM, Condition.SCORED, WHEEL)),
                Arguments.of("SYM-411", finding(Component.DISC, Condition.CORRODED, WHEEL)),
                Arguments.of("SYM-411", finding(Component.DISC, Condition.CRACKED, WHEEL)),
                Arguments.of("SYM-412", finding(Component.PAD, Condition.WORN, WHEEL)),
                Arguments.of("SYM-412", finding(Component.SHOE_LINING, Condition.DETACHED, WHEEL)),
                Arguments.of("SYM-413", finding(Component.WHEEL_CYLINDER, Condition.SEIZED, WHEEL)),
                Arguments.of("SYM-413", finding(Component.CALLIPER, Condition.TIGHT, WHEEL)),
                Arguments.of("SYM-413", finding(Component.SLIDE_PIN, Condition.CORRODED, WHEEL)),
                Arguments.of("SYM-413", finding(Component.PAD, Condition.SEIZED, WHEEL)),
                Arguments.of("SYM-413", finding(Component.SHOE_LEVER, Condition.NOT_RETURNING, WHEEL)),
                Arguments.of("SYM-414", finding(Component.HUB_BEARING, Condition.WORN, WHEEL)));
    }

    static Stream<Object> steady() {
        return Stream.of(
                symptom(SymptomCode.ONE_WHEEL_LOW, WHEEL),
                symptom(SymptomCode.DRAG_ALL, Place.VEHICLE),
                finding(Component.DRUM, Condition.OVERSIZE, WHEEL),
                finding(Component.DRUM, Condition.SOUND, WHEEL),
                finding(Component.PAD, Condition.GLAZED, WHEEL),
                finding(Component.CALLIPER, Condition.LEAKING, WHEEL),
                finding(Component.PARKING_CABLE, Condition.SEIZED, WHEEL),
                finding(Component.HUB_BEARING, Condition.SOUND, WHEEL),
                finding(Component.HUB_BEARING, Condition.WORN, Place.VEHICLE));
    }

    @ParameterizedTest
    @MethodSource("unsteady")
    void what_drags_sticks_is_rough_or_has_play_reads_differently_by_itself(String rule, Object fact) {
        assertThat(drawn(fact))
                .singleElement()
                .returns(REAR, UnsteadyAxle::place)
                .satisfies(shownBy(rule));
    }

    @ParameterizedTest
    @MethodSource("steady")
    void what_neither_drags_nor_sticks_reads_alike_in_each_run(Object fact) {
        assertThat(drawn(fact)).isEmpty();
    }

    @Test
    void a_weak_servo_makes_every_axle_read_differently() {
        Finding weak = finding(Component.SERVO, Condition.WEAK, Place.VEHICLE);
        Axle front = new Axle(1, true, BrakeLayout.DISC_FLOATING, ParkingLayout.NONE);
        Axle rear = new Axle(2, false, BrakeLayout.DRUM_SIMPLEX, ParkingLayout.CABLE_ON_SERVICE_SHOES);

        assertThat(drawn(weak, front, rear))
                .allSatisfy(axle -> assertThat(axle).satisfies(shownBy("SYM-415")))
                .extracting(UnsteadyAxle::place)
                .containsExactlyInAnyOrder(Place.ofAxle(1), REAR);
        assertThat(drawn(finding(Component.SERVO, Condition.SOUND, Place.VEHICLE), front, rear))
                .isEmpty();
        assertThat(drawn(weak)).isEmpty();
    }

    private static List<UnsteadyAxle> drawn(Object... facts) {
        return RULES.given(facts).concluded(UnsteadyAxle.class);
    }

    private static Symptom symptom(SymptomCode code, Place place) {
        return new Symptom(code, place, Strength.CLEAR, because("SYM-000"));
    }

    private static Finding finding(Component component, Condition condition, Place place) {
        return new Finding(
                new EntryId("/bay", "fi-1"),
                FindingStage.AS_FOUND,
                component,
                condition,
                place,
                null,
                null,
                null,
                null);
    }
}
