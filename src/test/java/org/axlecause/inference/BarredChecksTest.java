package org.axlecause.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.facts.Because.because;
import static org.axlecause.inference.RuleBench.shownBy;

import java.util.List;
import java.util.stream.Stream;
import org.axlecause.facts.Complaint;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.DrivenCheckBarred;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Extent;
import org.axlecause.facts.Finding;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.OpeningBarred;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.Strength;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class BarredChecksTest {

    private static final RuleBench RULES = RuleBench.forFile("symptoms/barred-checks.drl");
    private static final Place WHEEL = Place.ofWheel(2, Side.LEFT);

    static Stream<Arguments> dangers() {
        return Stream.of(
                Arguments.of("SYM-901", finding(Component.PEDAL, Condition.SINKING, Place.VEHICLE, null)),
                Arguments.of("SYM-902", new Complaint(ComplaintCode.SINKING_PEDAL)),
                Arguments.of("SYM-903", finding(Component.BRAKE_FLUID, Condition.NOT_VISIBLE, Place.VEHICLE, null)),
                Arguments.of("SYM-904", finding(Component.WHEEL_CYLINDER, Condition.LEAKING, WHEEL, Extent.SEVERE)),
                Arguments.of("SYM-904", finding(Component.CALLIPER, Condition.LEAKING, WHEEL, Extent.SEVERE)),
                Arguments.of("SYM-905", finding(Component.BRAKE_PIPE, Condition.LEAKING, WHEEL, null)),
                Arguments.of("SYM-905", finding(Component.FLEXIBLE_HOSE, Condition.LEAKING, WHEEL, Extent.LIGHT)));
    }

    static Stream<Object> harmless() {
        return Stream.of(
                finding(Component.PEDAL, Condition.SPONGY, Place.VEHICLE, null),
                new Complaint(ComplaintCode.SPONGY_PEDAL),
                finding(Component.BRAKE_FLUID, Condition.LOW, Place.VEHICLE, null),
                finding(Component.WHEEL_CYLINDER, Condition.LEAKING, WHEEL, Extent.MODERATE),
                finding(Component.WHEEL_CYLINDER, Condition.LEAKING, WHEEL, null),
                finding(Component.WHEEL_CYLINDER, Condition.DAMP, WHEEL, Extent.SEVERE),
                finding(Component.HUB_SEAL, Condition.LEAKING, WHEEL, Extent.SEVERE),
                finding(Component.BRAKE_PIPE, Condition.CORRODED, WHEEL, Extent.SEVERE));
    }

    @ParameterizedTest
    @MethodSource("dangers")
    void a_brake_that_may_fail_under_load_is_neither_run_nor_loaded(String rule, Object danger) {
        List<DrivenCheckBarred> barred = RULES.given(danger).concluded(DrivenCheckBarred.class);

        assertThat(barred).singleElement().satisfies(shownBy(rule));
    }

    @ParameterizedTest
    @MethodSource("harmless")
    void what_does_not_fail_under_load_bars_no_check(Object fact) {
        assertThat(RULES.given(fact).concluded(DrivenCheckBarred.class)).isEmpty();
    }

    @Test
    void no_wheel_is_opened_for_weak_brakes_all_round_and_a_hard_pedal_before_the_servo_is_checked() {
        Symptom weak = new Symptom(SymptomCode.ALL_WHEELS_LOW, Place.VEHICLE, Strength.CLEAR, because("SYM-060"));
        Symptom hard = new Symptom(SymptomCode.PEDAL_HARD, Place.VEHICLE, Strength.CLEAR, because("SYM-320"));
        Finding servo = finding(Component.SERVO, Condition.SOUND, Place.VEHICLE, null);

        assertThat(RULES.given(weak, hard).concluded(OpeningBarred.class))
                .singleElement()
                .satisfies(shownBy("SYM-906"));
        assertThat(RULES.given(weak).concluded(OpeningBarred.class)).isEmpty();
        assertThat(RULES.given(hard).concluded(OpeningBarred.class)).isEmpty();
        assertThat(RULES.given(weak, hard, servo).concluded(OpeningBarred.class))
                .isEmpty();
    }

    private static Finding finding(Component component, Condition condition, Place place, @Nullable Extent extent) {
        return new Finding(
                new EntryId("/sites/quay-street", "f-1"),
                FindingStage.AS_FOUND,
                component,
                condition,
                place,
                null,
                extent,
                null,
                null);
    }
}
