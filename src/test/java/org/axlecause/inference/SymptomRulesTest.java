package org.axlecause.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.inference.RuleBench.shownBy;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.Complaint;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.EarlierFigure;
import org.axlecause.facts.EarlierShape;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.ExpectedForce;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Finding;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.LossShape;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Measurement;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.Place;
import org.axlecause.facts.ReportedCondition;
import org.axlecause.facts.ShapeOfLoss;
import org.axlecause.facts.Side;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Strength;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.Verified;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Each symptom shows from its threshold on, not just below it, and only where a test could show it. */
class SymptomRulesTest {

    private static final RuleBench RULES = RuleBench.forFolder("symptoms");
    private static final Place FRONT_LEFT = Place.ofWheel(1, Side.LEFT);
    private static final Place FRONT_RIGHT = Place.ofWheel(1, Side.RIGHT);
    private static final Place LEFT = Place.ofWheel(2, Side.LEFT);
    private static final Place RIGHT = Place.ofWheel(2, Side.RIGHT);
    private static final Place REAR = Place.ofAxle(2);
    private static final BrakeSystem SERVICE = BrakeSystem.SERVICE;
    private static final BrakeSystem PARKING = BrakeSystem.PARKING;

    @ParameterizedTest
    @CsvSource({"1000, 800, SLIGHT", "1000, 700, CLEAR", "1000, 500, STRONG"})
    void a_wheel_that_holds_too_little_beside_its_partner_is_low(String high, String low, Strength strength) {
        assertThat(service(figure(FigureKind.HOLD, LEFT, high), figure(FigureKind.HOLD, RIGHT, low)))
                .singleElement()
                .returns(SymptomCode.ONE_WHEEL_LOW, Symptom::code)
                .returns(RIGHT, Symptom::place)
                .returns(strength, Symptom::strength)
                .satisfies(shownBy("SYM-010", "hold axle 2 right", "hold axle 2 left"));
    }

    @Test
    void a_wheel_just_above_the_permitted_shortfall_is_not_low() {
        assertThat(service(figure(FigureKind.HOLD, LEFT, "1000"), figure(FigureKind.HOLD, RIGHT, "801")))
                .isEmpty();
    }

    @Test
    void peaks_speak_only_where_no_held_force_is_known() {
        Figure left = figure(FigureKind.PEAK, LEFT, "1610");
        Figure right = figure(FigureKind.PEAK, RIGHT, "590");

        assertThat(service(left, right)).singleElement().satisfies(shownBy("SYM-011", "590 N", "1610 N"));
        assertThat(service(left, right, figure(FigureKind.HOLD, LEFT, "900"), figure(FigureKind.HOLD, RIGHT, "900")))
                .isEmpty();
    }

    @Test
    void a_final_test_speaks_about_no_cause() {
        assertThat(service(
                        figure(FigureKind.PEAK, LEFT, "1610", Stage.FINAL, SERVICE, "rt-9"),
                        figure(FigureKind.PEAK, RIGHT, "590", Stage.FINAL, SERVICE, "rt-9")))
                .isEmpty();
    }

    @Test
    void without_a_threshold_no_wheel_is_low() {
        assertThat(RULES.given(figure(FigureKind.PEAK, LEFT, "1610"), figure(FigureKind.PEAK, RIGHT, "590"))
                        .concluded(Symptom.class))
                .isEmpty();
    }

    @Test
    void two_wheels_that_were_read_could_have_shown_a_weak_one() {
        assertThat(observable(figure(FigureKind.PEAK, LEFT, "1000"), figure(FigureKind.PEAK, RIGHT, "990")))
                .contains("SYM-015 one-wheel-low axle 2 left", "SYM-015 one-wheel-low axle 2 right");
        assertThat(observable(figure(FigureKind.PEAK, LEFT, "1000"), unseen(FigureKind.PEAK, RIGHT)))
                .doesNotContain("SYM-015 one-wheel-low axle 2 left");
    }

    @Test
    void an_axle_in_balance_that_brakes_little_for_its_load_is_low() {
        Figure weak = figure(FigureKind.EFFICIENCY, REAR, "0.19");
        Figure even = figure(FigureKind.PEAK_IMBALANCE, REAR, "0.14");

        assertThat(service(weak, even))
                .singleElement()
                .returns(SymptomCode.AXLE_LOW, Symptom::code)
                .satisfies(shownBy("SYM-020"));
        assertThat(service(figure(FigureKind.EFFICIENCY, REAR, "0.20"), even)).isEmpty();
        assertThat(service(weak, figure(FigureKind.PEAK_IMBALANCE, REAR, "0.15")))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"SYM-030, LEFT, RIGHT, 1", "SYM-031, RIGHT, LEFT, 2"})
    void a_diagonal_pair_that_reads_low_shows_its_circuit(String rule, Side front, Side rear, int circuit) {
        Figure[] figures = {
            figure(FigureKind.PEAK, Place.ofWheel(1, front), "900"),
            figure(FigureKind.PEAK, Place.ofWheel(1, front).opposite(), "2000"),
            figure(FigureKind.PEAK, Place.ofWheel(2, rear), "300"),
            figure(FigureKind.PEAK, Place.ofWheel(2, rear).opposite(), "1000")
        };

        assertThat(service(with(figures, vehicle(CircuitSplit.DIAGONAL))))
                .filteredOn(symptom -> symptom.code() == SymptomCode.DIAGONAL_LOW)
                .singleElement()
                .returns(Place.ofCircuit(circuit), Symptom::place)
                .satisfies(shownBy(rule));
        assertThat(service(with(figures, vehicle(CircuitSplit.FRONT_REAR))))
                .noneMatch(symptom -> symptom.code() == SymptomCode.DIAGONAL_LOW);
    }

    @ParameterizedTest
    @CsvSource({"SYM-040, 1, FRONT_AXLE_LOW", "SYM-050, 2, REAR_AXLE_LOW"})
    void an_axle_with_a_circuit_of_its_own_is_named(String rule, int axle, SymptomCode code) {
        Place place = Place.ofAxle(axle);
        Figure weak = figure(FigureKind.EFFICIENCY, place, "0.05");
        Figure even = figure(FigureKind.PEAK_IMBALANCE, place, "0.02");

        assertThat(service(weak, even, vehicle(CircuitSplit.FRONT_REAR)))
                .filteredOn(symptom -> symptom.code() == code)
                .singleElement()
                .satisfies(shownBy(rule));
        assertThat(service(weak, even, vehicle(CircuitSplit.DIAGONAL))).noneMatch(symptom -> symptom.code() == code);
    }

    @Test
    void a_vehicle_in_balance_that_brakes_weakly_is_low_on_all_wheels() {
        Figure weak = figure(FigureKind.EFFICIENCY, Place.VEHICLE, "0.39");
        Figure front = figure(FigureKind.PEAK_IMBALANCE, Place.ofAxle(1), "0.05");

        assertThat(service(weak, front))
                .singleElement()
                .returns(SymptomCode.ALL_WHEELS_LOW, Symptom::code)
                .satisfies(shownBy("SYM-060"));
        assertThat(service(weak, front, figure(FigureKind.PEAK_IMBALANCE, REAR, "0.15")))
                .isEmpty();
        assertThat(service(figure(FigureKind.EFFICIENCY, Place.VEHICLE, "0.40"), front))
                .isEmpty();
    }

    @Test
    void a_wheel_with_less_than_a_tenth_of_its_partner_gives_no_force() {
        Figure high = figure(FigureKind.PEAK, LEFT, "2000");

        assertThat(service(high, figure(FigureKind.PEAK, RIGHT, "199")))
                .filteredOn(symptom -> symptom.code() == SymptomCode.NO_FORCE_AT_WHEEL)
                .singleElement()
                .returns(RIGHT, Symptom::place)
                .satisfies(shownBy("SYM-250"));
        assertThat(service(high, figure(FigureKind.PEAK, RIGHT, "200")))
                .noneMatch(symptom -> symptom.code() == SymptomCode.NO_FORCE_AT_WHEEL);
        assertThat(observable(high, figure(FigureKind.PEAK, RIGHT, "200")))
                .contains("SYM-255 no-force-at-wheel axle 2 right", "SYM-255 no-force-at-wheel axle 2 left");
    }

    @Test
    void one_wheel_that_needs_force_to_roll_drags() {
        Figure free = figure(FigureKind.DRAG, LEFT, "60");

        assertThat(service(free, figure(FigureKind.DRAG, RIGHT, "150")))
                .extracting(symptom -> symptom.because().rule() + " " + symptom.place())
                .containsExactly("SYM-070 axle 2 right", "SYM-071 axle 2 right");
        assertThat(service(figure(FigureKind.DRAG, LEFT, "100"), figure(FigureKind.DRAG, RIGHT, "149")))
                .isEmpty();
        assertThat(service(free, figure(FigureKind.DRAG, RIGHT, "120"))).isEmpty();
        assertThat(service(free, figure(FigureKind.DRAG, RIGHT, "121")))
                .singleElement()
                .satisfies(shownBy("SYM-071", "121 N", "60 N"));
        assertThat(observable(free)).containsExactly("SYM-075 drag-one-wheel axle 2 left");
    }

    @Test
    void a_light_wheel_drags_by_its_share_of_the_load_though_the_force_is_small() {
        Figure left = figure(FigureKind.DRAG, LEFT, "80");
        Figure right = figure(FigureKind.DRAG, RIGHT, "100");
        Figure little = figure(FigureKind.DRAG_SHARE_OF_AXLE_LOAD, LEFT, "0.0160");
        Figure much = figure(FigureKind.DRAG_SHARE_OF_AXLE_LOAD, RIGHT, "0.0200");

        assertThat(service(left, right, little, much))
                .singleElement()
                .returns(SymptomCode.DRAG_ONE_WHEEL, Symptom::code)
                .satisfies(shownBy("SYM-074", "100 N"));
        assertThat(service(left, right, little, figure(FigureKind.DRAG_SHARE_OF_AXLE_LOAD, RIGHT, "0.0199")))
                .isEmpty();
        assertThat(service(left, figure(FigureKind.DRAG, RIGHT, "99"), little, much))
                .isEmpty();
        assertThat(service(left, right, figure(FigureKind.DRAG_SHARE_OF_AXLE_LOAD, LEFT, "0.0200"), much))
                .isEmpty();
        assertThat(service(left, right, much)).isEmpty();
    }

    @Test
    void a_wheel_turned_by_hand_tells_drag_from_none() {
        assertThat(service(finding(Component.TYRE, Condition.TIGHT, RIGHT, CheckCode.WHEEL_TURN_BY_HAND)))
                .singleElement()
                .returns(SymptomCode.DRAG_ONE_WHEEL, Symptom::code)
                .satisfies(shownBy("SYM-072"));
        assertThat(service(finding(Component.HUB_BEARING, Condition.HEAT_MARKED, RIGHT, null)))
                .singleElement()
                .returns(SymptomCode.DRAG_ONE_WHEEL, Symptom::code)
                .satisfies(shownBy("SYM-073"));
        assertThat(observable(finding(Component.TYRE, Condition.SOUND, RIGHT, CheckCode.WHEEL_TURN_BY_HAND)))
                .containsExactly("SYM-076 drag-one-wheel axle 2 right");
        assertThat(service(finding(Component.TYRE, Condition.TIGHT, RIGHT, null)))
                .isEmpty();
    }

    @Test
    void two_dragging_wheels_are_a_dragging_axle_and_four_a_dragging_vehicle() {
        List<Object> figures =
                new ArrayList<>(List.of(figure(FigureKind.DRAG, LEFT, "160"), figure(FigureKind.DRAG, RIGHT, "150")));
        assertThat(service(figures.toArray()))
                .singleElement()
                .returns(SymptomCode.DRAG_AXLE, Symptom::code)
                .returns(REAR, Symptom::place)
                .satisfies(shownBy("SYM-080"));

        figures.add(figure(FigureKind.DRAG, FRONT_LEFT, "155"));
        figures.add(figure(FigureKind.DRAG, FRONT_RIGHT, "170"));
        assertThat(service(figures.toArray()))
                .filteredOn(symptom -> symptom.code() == SymptomCode.DRAG_ALL)
                .singleElement()
                .satisfies(shownBy("SYM-090"));
    }

    @Test
    void force_left_after_release_shows_and_could_have_shown() {
        assertThat(service(figure(FigureKind.RESIDUAL, RIGHT, "100")))
                .singleElement()
                .returns(SymptomCode.RESIDUAL_DECAYING, Symptom::code)
                .satisfies(shownBy("SYM-160"));
        assertThat(service(figure(FigureKind.RESIDUAL, RIGHT, "99"))).isEmpty();
        assertThat(observable(figure(FigureKind.RESIDUAL, RIGHT, "5")))
                .containsExactly("SYM-165 residual-decaying axle 2 right");
        assertThat(observable(unseen(FigureKind.RESIDUAL, RIGHT))).isEmpty();
    }

    @Test
    void a_wheel_that_stays_braked_after_the_parking_brake_shows_and_could_have_shown() {
        assertThat(service(parking(FigureKind.RESIDUAL, RIGHT, "100")))
                .singleElement()
                .returns(SymptomCode.PARKING_STAYS_ON, Symptom::code)
                .satisfies(shownBy("SYM-210"));
        assertThat(observable(parking(FigureKind.RESIDUAL, RIGHT, "99")))
                .containsExactly("SYM-215 parking-stays-on axle 2 right");
    }

    @Test
    void a_swing_within_the_turn_shows_at_one_wheel_or_at_both() {
        Figure swings = figure(FigureKind.FLUCTUATION, LEFT, "0.20");

        assertThat(service(swings, figure(FigureKind.FLUCTUATION, RIGHT, "0.19")))
                .singleElement()
                .returns(LEFT, Symptom::place)
                .satisfies(shownBy("SYM-100", "20.00 %"));
        assertThat(service(swings, figure(FigureKind.FLUCTUATION, RIGHT, "0.20")))
                .singleElement()
                .returns(SymptomCode.FORCE_SWING_AXLE, Symptom::code)
                .satisfies(shownBy("SYM-110"));
        assertThat(observable(swings)).containsExactly("SYM-105 force-swing-one-wheel axle 2 left");
    }

    @Test
    void a_late_or_slow_wheel_shows() {
        assertThat(service(figure(FigureKind.RISE_TIME, LEFT, "1.8"), figure(FigureKind.RISE_TIME, RIGHT, "2.8")))
                .singleElement()
                .returns(RIGHT, Symptom::place)
                .satisfies(shownBy("SYM-120"));
        assertThat(service(figure(FigureKind.RISE_TIME, LEFT, "1.8"), figure(FigureKind.RISE_TIME, RIGHT, "2.7")))
                .isEmpty();
        assertThat(service(figure(FigureKind.RISE_LAG, RIGHT, "0.3")))
                .singleElement()
                .satisfies(shownBy("SYM-121"));
        assertThat(service(shape(LossShape.LATE)))
                .singleElement()
                .returns(SymptomCode.SLOW_RISE_ONE_WHEEL, Symptom::code)
                .satisfies(shownBy("SYM-122"));
        assertThat(observable(figure(FigureKind.RISE_LAG, RIGHT, "0.29")))
                .contains("SYM-125 slow-rise-one-wheel axle 2 right", "SYM-265 high-threshold axle 2 right");
    }

    @Test
    void a_wheel_that_lets_go_late_shows_at_one_wheel_or_at_both() {
        Figure late = figure(FigureKind.RELEASE_TIME, LEFT, "1.0");

        assertThat(service(late, figure(FigureKind.RELEASE_TIME, RIGHT, "0.3")))
                .singleElement()
                .returns(LEFT, Symptom::place)
                .satisfies(shownBy("SYM-140"));
        assertThat(service(late, figure(FigureKind.RELEASE_TIME, RIGHT, "1.2")))
                .singleElement()
                .returns(SymptomCode.SLOW_RELEASE_AXLE, Symptom::code)
                .satisfies(shownBy("SYM-150"));
        assertThat(service(figure(FigureKind.RELEASE_TIME, LEFT, "0.99"))).isEmpty();
        assertThat(observable(late)).containsExactly("SYM-145 slow-release-one-wheel axle 2 left");
    }

    @Test
    void a_wheel_that_locked_on_a_light_load_locked_early() {
        assertThat(service(new TestDoubt(DoubtCode.LOCKED_ON_LIGHT_LOAD, LEFT, test("rt-1"), "locked at 900 N")))
                .singleElement()
                .returns(SymptomCode.EARLY_LOCK, Symptom::code)
                .satisfies(shownBy("SYM-180", "locked at 900 N"));
        assertThat(service(new TestDoubt(DoubtCode.LOCKED_ON_LIGHT_LOAD, REAR, test("rt-1"), "an axle")))
                .isEmpty();
    }

    @Test
    void wide_hysteresis_and_a_decay_while_held_show_and_could_have_shown() {
        assertThat(service(figure(FigureKind.HYSTERESIS, LEFT, "0.25")))
                .singleElement()
                .satisfies(shownBy("SYM-240"));
        assertThat(service(figure(FigureKind.HYSTERESIS, LEFT, "0.24"))).isEmpty();
        assertThat(observable(figure(FigureKind.HYSTERESIS, LEFT, "0.24")))
                .containsExactly("SYM-245 wide-hysteresis axle 2 left");
        assertThat(service(figure(FigureKind.DECAY_WHILE_HELD, LEFT, "0.10")))
                .singleElement()
                .satisfies(shownBy("SYM-270"));
        assertThat(service(figure(FigureKind.DECAY_WHILE_HELD, LEFT, "0.09"))).isEmpty();
        assertThat(observable(figure(FigureKind.DECAY_WHILE_HELD, LEFT, "0.09")))
                .containsExactly("SYM-275 force-decays-while-held axle 2 left");
    }

    @Test
    void a_late_wheel_with_a_constant_loss_has_a_high_threshold() {
        Figure lag = figure(FigureKind.RISE_LAG, RIGHT, "0.3");

        assertThat(service(lag, shape(LossShape.OFFSET)))
                .filteredOn(symptom -> symptom.code() == SymptomCode.HIGH_THRESHOLD)
                .singleElement()
                .satisfies(shownBy("SYM-260"));
        assertThat(service(lag)).noneMatch(symptom -> symptom.code() == SymptomCode.HIGH_THRESHOLD);
    }

    @ParameterizedTest
    @CsvSource({
        "OFFSET, SYM-220, LOW_EFFORT_IMBALANCE",
        "CAPPED, SYM-230, HIGH_EFFORT_IMBALANCE",
        "PROPORTIONAL, SYM-235, PROPORTIONAL_LOSS"
    })
    void a_shape_of_the_loss_shows_as_its_symptom_and_the_other_shapes_could_have_shown(
            LossShape shape, String rule, SymptomCode code) {
        assertThat(service(shape(shape)))
                .singleElement()
                .returns(code, Symptom::code)
                .returns(RIGHT, Symptom::place)
                .satisfies(shownBy(rule));
        assertThat(observable(shape(shape)))
                .containsExactlyInAnyOrder(
                        "SYM-225 low-effort-imbalance axle 2 right",
                        "SYM-236 high-effort-imbalance axle 2 right",
                        "SYM-237 proportional-loss axle 2 right");
    }

    @ParameterizedTest
    @EnumSource(names = {"UNDECIDED", "CYCLIC", "EXTRA"})
    void a_shape_that_is_no_loss_over_effort_says_nothing_about_the_others(LossShape shape) {
        assertThat(observable(shape(shape))).isEmpty();
    }

    @Test
    void an_imbalance_at_light_or_at_full_effort_only_shows_at_the_wheel_behind() {
        Figure[] light = {
            figure(FigureKind.IMBALANCE_LOW, REAR, "0.30"),
            figure(FigureKind.IMBALANCE_HIGH, REAR, "0.14"),
            figure(FigureKind.RISE_LAG, RIGHT, "0.2"),
            figure(FigureKind.RISE_LAG, LEFT, "0")
        };
        Figure[] full = {
            figure(FigureKind.IMBALANCE_LOW, REAR, "0.14"),
            figure(FigureKind.IMBALANCE_HIGH, REAR, "0.25"),
            figure(FigureKind.HOLD, LEFT, "1000"),
            figure(FigureKind.HOLD, RIGHT, "810")
        };

        assertThat(service((Object[]) light))
                .singleElement()
                .returns(RIGHT, Symptom::place)
                .satisfies(shownBy("SYM-221"));
        assertThat(service((Object[]) full))
                .singleElement()
                .returns(RIGHT, Symptom::place)
                .satisfies(shownBy("SYM-231"));
    }

    @Test
    void the_parking_brake_of_one_side_or_of_both_is_low() {
        Figure high = parking(FigureKind.PEAK, LEFT, "800");

        assertThat(service(high, parking(FigureKind.PEAK, RIGHT, "560")))
                .singleElement()
                .returns(SymptomCode.PARKING_ONE_SIDE_LOW, Symptom::code)
                .returns(RIGHT, Symptom::place)
                .satisfies(shownBy("SYM-190"));
        assertThat(service(high, parking(FigureKind.PEAK, RIGHT, "561"))).isEmpty();
        assertThat(observable(high, parking(FigureKind.PEAK, RIGHT, "561")))
                .containsExactlyInAnyOrder(
                        "SYM-195 parking-one-side-low axle 2 left", "SYM-195 parking-one-side-low axle 2 right");
        assertThat(service(
                        parking(FigureKind.EFFICIENCY, Place.VEHICLE, "0.19"),
                        parking(FigureKind.PEAK_IMBALANCE, REAR, "0.29")))
                .singleElement()
                .returns(SymptomCode.PARKING_BOTH_LOW, Symptom::code)
                .returns(REAR, Symptom::place)
                .satisfies(shownBy("SYM-200"));
        assertThat(service(
                        parking(FigureKind.EFFICIENCY, Place.VEHICLE, "0.20"),
                        parking(FigureKind.PEAK_IMBALANCE, REAR, "0.29")))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "SYM-290, LONG_PEDAL, PEDAL_LONG, SYM-291, LONG_TRAVEL, SYM-295",
        "SYM-300, SPONGY_PEDAL, PEDAL_SPONGY, SYM-301, SPONGY, SYM-305",
        "SYM-310, SINKING_PEDAL, PEDAL_SINKING, SYM-311, SINKING, SYM-315",
        "SYM-320, HARD_PEDAL, PEDAL_HARD, SYM-321, HARD, SYM-325",
        "SYM-330, PULSATING_PEDAL, PEDAL_PULSATING, SYM-331, PULSATING, SYM-335"
    })
    void the_pedal_speaks_by_complaint_and_by_finding(
            String reported,
            ComplaintCode complaint,
            SymptomCode code,
            String found,
            Condition condition,
            String sound) {
        assertThat(service(new Complaint(complaint)))
                .singleElement()
                .returns(code, Symptom::code)
                .returns(Place.VEHICLE, Symptom::place)
                .satisfies(shownBy(reported));
        assertThat(service(finding(Component.PEDAL, condition, Place.VEHICLE, null)))
                .singleElement()
                .returns(code, Symptom::code)
                .satisfies(shownBy(found));
        assertThat(observable(finding(Component.PEDAL, Condition.SOUND, Place.VEHICLE, null)))
                .contains(sound + " " + code + " vehicle");
    }

    @Test
    void too_little_reserve_is_a_long_pedal() {
        assertThat(service(reserve("0.19"))).singleElement().satisfies(shownBy("SYM-292"));
        assertThat(service(reserve("0.20"))).isEmpty();
    }

    @Test
    void fluid_and_lamps_speak_by_complaint_and_by_finding() {
        assertThat(service(new Complaint(ComplaintCode.FLUID_LOSS)))
                .singleElement()
                .satisfies(shownBy("SYM-340"));
        assertThat(service(finding(Component.BRAKE_FLUID, Condition.LOW, Place.VEHICLE, null)))
                .singleElement()
                .satisfies(shownBy("SYM-341"));
        assertThat(observable(finding(Component.BRAKE_FLUID, Condition.SOUND, Place.VEHICLE, null)))
                .containsExactly("SYM-345 fluid-low vehicle");
        assertThat(service(new Complaint(ComplaintCode.WARNING_LAMP)))
                .singleElement()
                .satisfies(shownBy("SYM-350"));
        assertThat(service(finding(Component.WARNING_LAMP, Condition.LIT, Place.VEHICLE, null)))
                .singleElement()
                .satisfies(shownBy("SYM-351"));
        assertThat(observable(finding(Component.WARNING_LAMP, Condition.SOUND, Place.VEHICLE, null)))
                .containsExactly("SYM-355 warning-lamp-lit vehicle");
    }

    @Test
    void a_second_run_that_reads_otherwise_shows_that_the_first_did_not_hold() {
        EarlierFigure first = new EarlierFigure(figure(FigureKind.PEAK_IMBALANCE, REAR, "0.35"));
        Figure gone = figure(FigureKind.PEAK_IMBALANCE, REAR, "0.14", Stage.DIAGNOSTIC, SERVICE, "rt-2");
        Figure back = figure(FigureKind.PEAK_IMBALANCE, REAR, "0.33", Stage.DIAGNOSTIC, SERVICE, "rt-2");

        assertThat(service(first, gone))
                .singleElement()
                .returns(REAR, Symptom::place)
                .satisfies(shownBy("SYM-360"));
        assertThat(service(first, back)).isEmpty();
        assertThat(service(
                        new EarlierFigure(figure(FigureKind.PEAK_IMBALANCE, REAR, "0.24")),
                        figure(FigureKind.PEAK_IMBALANCE, REAR, "0.14", Stage.DIAGNOSTIC, SERVICE, "rt-2")))
                .isEmpty();
        assertThat(observable(first, back)).containsExactly("SYM-365 test-not-repeatable axle 2");
        assertThat(observable(first)).isEmpty();
    }

    @Test
    void a_weak_wheel_that_changes_sides_in_a_second_run_was_never_weak() {
        Object[] runs = {
            new EarlierFigure(figure(FigureKind.PEAK, LEFT, "1000")),
            new EarlierFigure(figure(FigureKind.PEAK, RIGHT, "600")),
            figure(FigureKind.PEAK, LEFT, "600", Stage.DIAGNOSTIC, SERVICE, "rt-2"),
            figure(FigureKind.PEAK, RIGHT, "1000", Stage.DIAGNOSTIC, SERVICE, "rt-2")
        };

        assertThat(service(runs))
                .filteredOn(symptom -> symptom.code() == SymptomCode.TEST_NOT_REPEATABLE)
                .singleElement()
                .returns(REAR, Symptom::place)
                .satisfies(shownBy("SYM-362"));
    }

    /** 600 of 1000 N in the first run; another effort on the pedal leaves the ratio as it is. */
    @ParameterizedTest(name = "{0} and {1} N in the second run")
    @CsvSource({"721, 1000, true", "719, 1000, false", "900, 1500, false", "400, 660, false", "600, 1300, true"})
    void a_second_run_in_which_the_wheels_stand_otherwise_to_each_other_is_not_the_same(
            String left, String right, boolean differs) {
        Object[] runs = {
            new EarlierFigure(figure(FigureKind.PEAK, LEFT, "600")),
            new EarlierFigure(figure(FigureKind.PEAK, RIGHT, "1000")),
            figure(FigureKind.PEAK, LEFT, left, Stage.DIAGNOSTIC, SERVICE, "rt-2"),
            figure(FigureKind.PEAK, RIGHT, right, Stage.DIAGNOSTIC, SERVICE, "rt-2")
        };

        assertThat(service(runs))
                .filteredOn(symptom -> symptom.code() == SymptomCode.TEST_NOT_REPEATABLE)
                .hasSize(differs ? 1 : 0)
                .allSatisfy(symptom -> assertThat(symptom.place()).isEqualTo(REAR))
                .allSatisfy(shownBy("SYM-362"));
    }

    @ParameterizedTest
    @CsvSource({"1000, 1151, true", "1000, 1150, false", "1000, 900, false", "300, 401, true", "300, 400, false"})
    void force_that_comes_up_clearly_in_a_second_run_recovers_warm(String cold, String warm, boolean recovers) {
        EarlierFigure first = new EarlierFigure(figure(FigureKind.PEAK, LEFT, cold));
        Figure second = figure(FigureKind.PEAK, LEFT, warm, Stage.DIAGNOSTIC, SERVICE, "rt-2");

        assertThat(service(first, second)).hasSize(recovers ? 1 : 0).allSatisfy(symptom -> {
            assertThat(symptom.code()).isEqualTo(SymptomCode.FORCE_RECOVERS_WARM);
            assertThat(symptom.place()).isEqualTo(LEFT);
            assertThat(symptom).satisfies(shownBy("SYM-370"));
        });
        assertThat(observable(first, second)).contains("SYM-375 force-recovers-warm axle 2 left");
        assertThat(asked(first, second)).isEqualTo(recovers ? List.of("SYM-371 doubtful-test axle 2 left") : List.of());
    }

    @Test
    void a_second_run_with_cold_brakes_shows_no_recovery() {
        EarlierFigure first = new EarlierFigure(figure(FigureKind.PEAK, LEFT, "1000"));
        Figure second = figure(FigureKind.PEAK, LEFT, "1300", Stage.DIAGNOSTIC, SERVICE, "rt-2");
        ReportedCondition cold = new ReportedCondition(TestCondition.BRAKES_COLD, REAR, test("rt-2"), SERVICE);

        assertThat(service(first, second, cold)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"160, 106, true", "160, 107, false", "140, 60, false", "300, 160, false"})
    void drag_that_is_gone_in_a_second_run_shows_that_the_first_did_not_hold(
            String first, String second, boolean gone) {
        assertThat(service(
                        new EarlierFigure(figure(FigureKind.DRAG, LEFT, first)),
                        figure(FigureKind.DRAG, LEFT, second, Stage.DIAGNOSTIC, SERVICE, "rt-2")))
                .filteredOn(symptom -> symptom.code() == SymptomCode.TEST_NOT_REPEATABLE)
                .hasSize(gone ? 1 : 0)
                .allSatisfy(symptom -> {
                    assertThat(symptom.place()).isEqualTo(REAR);
                    assertThat(symptom).satisfies(shownBy("SYM-363"));
                });
    }

    @ParameterizedTest
    @CsvSource({
        "FLUCTUATION, 0.30, 0.14, SYM-390, SYM-395, true",
        "FLUCTUATION, 0.30, 0.15, SYM-390, SYM-395, false",
        "FLUCTUATION, 0.50, 0.20, SYM-390, SYM-395, false",
        "SCATTER, 0.10, 0.04, SYM-391, SYM-396, true",
        "SCATTER, 0.10, 0.05, SYM-391, SYM-396, false"
    })
    void a_swing_or_scatter_that_is_gone_in_a_second_run_clears(
            FigureKind kind, String first, String second, String rule, String looked, boolean clears) {
        EarlierFigure before = new EarlierFigure(figure(kind, LEFT, first));
        Figure after = figure(kind, LEFT, second, Stage.DIAGNOSTIC, SERVICE, "rt-2");

        assertThat(service(before, after))
                .filteredOn(symptom -> symptom.code() == SymptomCode.SWING_CLEARS)
                .hasSize(clears ? 1 : 0)
                .allSatisfy(symptom -> {
                    assertThat(symptom.place()).isEqualTo(LEFT);
                    assertThat(symptom).satisfies(shownBy(rule));
                });
        assertThat(observable(before, after)).contains(looked + " swing-clears axle 2 left");
    }

    @ParameterizedTest
    @CsvSource({"FLUCTUATION, 0.20, 0.19, force-swing-one-wheel", "SCATTER, 0.10, 0.09, irregular-force"})
    void what_swung_or_jumped_in_an_earlier_run_is_not_absent(
            FigureKind kind, String showed, String didNot, String symptom) {
        Figure after = figure(kind, LEFT, "0.05", Stage.DIAGNOSTIC, SERVICE, "rt-2");

        assertThat(observable(new EarlierFigure(figure(kind, LEFT, showed)), after))
                .noneMatch(one -> one.contains(symptom));
        assertThat(observable(new EarlierFigure(figure(kind, LEFT, didNot)), after))
                .anyMatch(one -> one.contains(symptom));
    }

    @Test
    void a_wheel_that_did_not_swing_has_nothing_to_clear() {
        EarlierFigure even = new EarlierFigure(figure(FigureKind.FLUCTUATION, LEFT, "0.19"));
        Figure after = figure(FigureKind.FLUCTUATION, LEFT, "0.05", Stage.DIAGNOSTIC, SERVICE, "rt-2");

        assertThat(service(even, after)).isEmpty();
        assertThat(observable(even, after)).noneMatch(one -> one.contains("swing-clears"));
    }

    @ParameterizedTest
    @CsvSource({"1000, 1151, true", "1000, 1150, false"})
    void a_wheel_that_slipped_or_stood_still_and_brakes_more_in_a_second_run_met_the_limit_of_grip(
            String first, String second, boolean returns) {
        Figure after = figure(FigureKind.PEAK, RIGHT, second, Stage.DIAGNOSTIC, SERVICE, "rt-2");
        EarlierFigure slip = new EarlierFigure(figure(FigureKind.SLIP_FORCE, RIGHT, first));
        EarlierFigure peak = new EarlierFigure(figure(FigureKind.PEAK, RIGHT, first));
        EarlierShape stoodStill = new EarlierShape(shape(LossShape.CAPPED));

        assertThat(service(slip, after))
                .filteredOn(symptom -> symptom.code() == SymptomCode.GRIP_RETURNS)
                .hasSize(returns ? 1 : 0)
                .allSatisfy(symptom -> assertThat(symptom).satisfies(shownBy("SYM-400")));
        assertThat(observable(slip, after)).contains("SYM-405 grip-returns axle 2 right");
        assertThat(observable(new EarlierFigure(unseen(FigureKind.SLIP_FORCE, RIGHT)), after))
                .noneMatch(one -> one.contains("grip-returns"));
        assertThat(service(stoodStill, peak, after))
                .filteredOn(symptom -> symptom.code() == SymptomCode.GRIP_RETURNS)
                .hasSize(returns ? 1 : 0)
                .allSatisfy(symptom -> assertThat(symptom).satisfies(shownBy("SYM-401")));
        assertThat(observable(stoodStill, peak, after)).contains("SYM-406 grip-returns axle 2 right");
        assertThat(service(new EarlierShape(shape(LossShape.PROPORTIONAL)), peak, after))
                .noneMatch(symptom -> symptom.code() == SymptomCode.GRIP_RETURNS);
    }

    @ParameterizedTest
    @CsvSource({"160, 241, true", "160, 240, false", "90, 149, false"})
    void drag_that_grows_in_a_second_run_is_told(String cold, String warm, boolean grows) {
        EarlierFigure first = new EarlierFigure(figure(FigureKind.DRAG, LEFT, cold));
        Figure second = figure(FigureKind.DRAG, LEFT, warm, Stage.DIAGNOSTIC, SERVICE, "rt-2");

        assertThat(service(first, second))
                .filteredOn(symptom -> symptom.code() == SymptomCode.DRAG_GROWS)
                .hasSize(grows ? 1 : 0)
                .allSatisfy(symptom -> assertThat(symptom).satisfies(shownBy("SYM-380")));
    }

    @Test
    void drag_that_was_read_twice_or_tried_after_pumping_could_have_grown() {
        EarlierFigure first = new EarlierFigure(figure(FigureKind.DRAG, LEFT, "160"));
        Figure second = figure(FigureKind.DRAG, LEFT, "150", Stage.DIAGNOSTIC, SERVICE, "rt-2");

        assertThat(observable(first, second)).contains("SYM-385 drag-grows axle 2 left");
        assertThat(service(finding(Component.TYRE, Condition.TIGHT, LEFT, CheckCode.PUMP_AND_TURN)))
                .singleElement()
                .returns(SymptomCode.DRAG_GROWS, Symptom::code)
                .satisfies(shownBy("SYM-381"));
        assertThat(observable(finding(Component.TYRE, Condition.SOUND, LEFT, CheckCode.PUMP_AND_TURN)))
                .containsExactly("SYM-386 drag-grows axle 2 left");
    }

    @ParameterizedTest
    @CsvSource({"1000, 1250, 1000, true", "1000, 1249, 1000, false", "1000, 1300, 801, true", "1000, 1300, 800, false"})
    void a_wheel_far_above_its_record_grabs_where_its_partner_brakes_as_expected(
            String expected, String high, String low, boolean grabs) {
        assertThat(service(
                        figure(FigureKind.PEAK, LEFT, high),
                        expected(LEFT, expected),
                        figure(FigureKind.PEAK, RIGHT, low),
                        expected(RIGHT, expected)))
                .filteredOn(symptom -> symptom.code() == SymptomCode.GRAB_ONE_WHEEL)
                .hasSize(grabs ? 1 : 0)
                .allSatisfy(symptom -> {
                    assertThat(symptom.place()).isEqualTo(LEFT);
                    assertThat(symptom).satisfies(shownBy("SYM-170", "expected force axle 2 left"));
                });
        assertThat(observable(figure(FigureKind.PEAK, LEFT, high), expected(LEFT, expected)))
                .contains("SYM-175 grab-one-wheel axle 2 left");
    }

    @Test
    void a_wheel_grabs_only_where_its_partner_was_read() {
        Figure high = figure(FigureKind.PEAK, LEFT, "1300");
        ExpectedForce ofHigh = expected(LEFT, "1000");
        ExpectedForce ofPartner = expected(RIGHT, "1000");

        assertThat(service(high, ofHigh, figure(FigureKind.PEAK, RIGHT, "1000"), ofPartner))
                .extracting(Symptom::code)
                .contains(SymptomCode.GRAB_ONE_WHEEL);
        assertThat(service(high, ofHigh, unseen(FigureKind.PEAK, RIGHT), ofPartner))
                .isEmpty();
        assertThat(service(high, ofHigh, ofPartner)).isEmpty();
    }

    @Test
    void the_lower_wheel_is_not_low_where_it_brakes_as_its_record_leads_to_expect() {
        Figure high = figure(FigureKind.PEAK, LEFT, "1500");
        Figure low = figure(FigureKind.PEAK, RIGHT, "1000");

        assertThat(service(high, low)).extracting(Symptom::code).containsExactly(SymptomCode.ONE_WHEEL_LOW);
        assertThat(service(high, low, expected(RIGHT, "1200"))).isEmpty();
        assertThat(service(high, low, expected(RIGHT, "1250")))
                .extracting(Symptom::code)
                .containsExactly(SymptomCode.ONE_WHEEL_LOW);
    }

    @Test
    void wheels_below_their_record_are_low_although_they_balance() {
        Figure left = figure(FigureKind.PEAK, LEFT, "699");
        Figure right = figure(FigureKind.PEAK, RIGHT, "699");

        assertThat(service(left, right)).isEmpty();
        assertThat(service(left, right, expected(LEFT, "1000"), expected(RIGHT, "1000")))
                .singleElement()
                .returns(SymptomCode.AXLE_LOW, Symptom::code)
                .returns(REAR, Symptom::place)
                .satisfies(shownBy("SYM-021"));
        assertThat(service(left, right, expected(LEFT, "1000"), expected(RIGHT, "700")))
                .singleElement()
                .returns(SymptomCode.ONE_WHEEL_LOW, Symptom::code)
                .returns(LEFT, Symptom::place)
                .satisfies(shownBy("SYM-012"));
        assertThat(service(left, right, expected(LEFT, "998"), expected(RIGHT, "998")))
                .isEmpty();
    }

    @Test
    void a_wheel_that_met_the_limit_of_grip_shows_nothing_of_its_brake() {
        Figure high = figure(FigureKind.PEAK, LEFT, "1500");
        Figure low = figure(FigureKind.PEAK, RIGHT, "800");
        TestDoubt slipped = new TestDoubt(DoubtCode.LOCKED_ON_LIGHT_LOAD, RIGHT, test("rt-1"), "locked at 800 N");

        assertThat(service(high, low, slipped)).extracting(Symptom::code).containsExactly(SymptomCode.EARLY_LOCK);
        assertThat(observable(high, low, slipped)).doesNotContain("SYM-015 one-wheel-low axle 2 right");
    }

    @Test
    void a_dead_axle_gives_no_force_although_its_wheels_read_alike() {
        assertThat(service(figure(FigureKind.PEAK, LEFT, "149"), figure(FigureKind.PEAK, RIGHT, "145")))
                .extracting(symptom -> symptom.because().rule() + " " + symptom.place())
                .containsExactlyInAnyOrder("SYM-251 axle 2 left", "SYM-251 axle 2 right");
        assertThat(observable(figure(FigureKind.PEAK, LEFT, "149"), figure(FigureKind.PEAK, RIGHT, "145")))
                .noneMatch(one -> one.startsWith("SYM-255"));
        assertThat(service(figure(FigureKind.PEAK, LEFT, "150"), figure(FigureKind.PEAK, RIGHT, "150")))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"3.0, 3.0, true", "3.0, 2.99, false"})
    void an_axle_whose_wheels_both_need_too_long_rises_slowly(String left, String right, boolean slow) {
        assertThat(service(figure(FigureKind.RISE_TIME, LEFT, left), figure(FigureKind.RISE_TIME, RIGHT, right)))
                .hasSize(slow ? 1 : 0)
                .allSatisfy(symptom -> {
                    assertThat(symptom.code()).isEqualTo(SymptomCode.SLOW_RISE_AXLE);
                    assertThat(symptom).satisfies(shownBy("SYM-130"));
                });
    }

    @ParameterizedTest
    @CsvSource({"0.10, 0.19, true", "0.099, 0.19, false", "0.10, 0.20, false"})
    void force_that_scatters_without_a_rhythm_is_irregular(String scatter, String swing, boolean irregular) {
        Figure jumps = figure(FigureKind.SCATTER, LEFT, scatter);

        assertThat(service(jumps, figure(FigureKind.FLUCTUATION, LEFT, swing)))
                .filteredOn(symptom -> symptom.code() == SymptomCode.IRREGULAR_FORCE)
                .hasSize(irregular ? 1 : 0)
                .allSatisfy(symptom -> assertThat(symptom).satisfies(shownBy("SYM-280")));
        assertThat(observable(jumps)).containsExactly("SYM-285 irregular-force axle 2 left");
        assertThat(observable(unseen(FigureKind.SCATTER, LEFT))).isEmpty();
    }

    @Test
    void a_complaint_that_no_test_has_answered_stays_a_question() {
        assertThat(asked(new Complaint(ComplaintCode.PULLS))).containsExactly("SYM-911 complaint-unanswered vehicle");
        assertThat(asked(new Complaint(ComplaintCode.PULLS), figure(FigureKind.PEAK_IMBALANCE, REAR, "0.20")))
                .isEmpty();
        assertThat(asked(new Complaint(ComplaintCode.PULLS), figure(FigureKind.DRAG, LEFT, "150")))
                .isEmpty();
        assertThat(asked(new Complaint(ComplaintCode.PULLS), figure(FigureKind.RESIDUAL, LEFT, "100")))
                .isEmpty();
        assertThat(asked(new Complaint(ComplaintCode.HOT_WHEEL)))
                .containsExactly("SYM-912 complaint-unanswered vehicle");
        assertThat(asked(new Complaint(ComplaintCode.HOT_WHEEL), figure(FigureKind.DRAG, LEFT, "150")))
                .isEmpty();
        assertThat(asked(new Complaint(ComplaintCode.NOISE))).containsExactly("SYM-913 complaint-unanswered vehicle");
        assertThat(asked(
                        new Complaint(ComplaintCode.NOISE),
                        finding(Component.HUB_BEARING, Condition.SOUND, LEFT, CheckCode.HUB_PLAY_CHECK)))
                .isEmpty();
        assertThat(asked(new Complaint(ComplaintCode.PARKING_BRAKE_WEAK)))
                .containsExactly("SYM-914 complaint-unanswered vehicle");
        assertThat(asked(new Complaint(ComplaintCode.PARKING_BRAKE_WEAK), parking(FigureKind.PEAK, LEFT, "300")))
                .isEmpty();
    }

    private static List<String> asked(Object... facts) {
        return RULES.given(facts).and(thresholds()).concluded(OpenQuestion.class).stream()
                .map(open -> open.because().rule() + " " + open.code() + " " + open.place())
                .toList();
    }

    private static ExpectedForce expected(Place place, String force) {
        return new ExpectedForce(place, test("rt-1"), Stage.ARRIVAL, SERVICE, new BigDecimal(force));
    }

    private static List<Symptom> service(Object... facts) {
        return RULES.given(facts).and(thresholds()).concluded(Symptom.class);
    }

    private static List<String> observable(Object... facts) {
        return RULES.given(facts).and(thresholds()).concluded(SymptomObservable.class).stream()
                .map(one -> one.because().rule() + " " + one.code() + " " + one.place())
                .toList();
    }

    private static Object[] with(Figure[] figures, Vehicle vehicle) {
        List<Object> all = new ArrayList<>(Arrays.asList((Object[]) figures));
        all.add(vehicle);
        return all.toArray();
    }

    private static Object[] thresholds() {
        return new Object[] {
            threshold(ThresholdCode.ONE_WHEEL_LOW_IMBALANCE, "0.20"),
            threshold(ThresholdCode.ONE_WHEEL_LOW_CLEAR, "0.30"),
            threshold(ThresholdCode.ONE_WHEEL_LOW_STRONG, "0.50"),
            threshold(ThresholdCode.AXLE_LOW_EFFICIENCY, "0.20"),
            threshold(ThresholdCode.VEHICLE_LOW_EFFICIENCY, "0.40"),
            threshold(ThresholdCode.BALANCED_IMBALANCE, "0.15"),
            threshold(ThresholdCode.NO_FORCE_SHARE, "0.10"),
            threshold(ThresholdCode.DRAG_FORCE, "150"),
            threshold(ThresholdCode.DRAG_SHARE_OF_LOAD, "0.04"),
            threshold(ThresholdCode.DRAG_RATIO, "2"),
            threshold(ThresholdCode.DRAG_RATIO_FORCE, "100"),
            threshold(ThresholdCode.RESIDUAL, "100"),
            threshold(ThresholdCode.FLUCTUATION, "0.20"),
            threshold(ThresholdCode.RISE_RATIO, "1.5"),
            threshold(ThresholdCode.LAG, "0.3"),
            threshold(ThresholdCode.RELEASE_TIME, "1.0"),
            threshold(ThresholdCode.HYSTERESIS, "0.25"),
            threshold(ThresholdCode.DECAY_WHILE_HELD, "0.10"),
            threshold(ThresholdCode.LOW_EFFORT_IMBALANCE_LOW, "0.30"),
            threshold(ThresholdCode.LOW_EFFORT_IMBALANCE_HIGH, "0.15"),
            threshold(ThresholdCode.HIGH_EFFORT_IMBALANCE_LOW, "0.15"),
            threshold(ThresholdCode.HIGH_EFFORT_IMBALANCE_HIGH, "0.25"),
            threshold(ThresholdCode.PARKING_IMBALANCE, "0.30"),
            threshold(ThresholdCode.PARKING_LOW_EFFICIENCY, "0.20"),
            threshold(ThresholdCode.PEDAL_RESERVE_LEAST, "0.20"),
            threshold(ThresholdCode.AXLE_LOW_SHARE, "0.70"),
            threshold(ThresholdCode.GRAB_ABOVE_EXPECTED, "0.25"),
            threshold(ThresholdCode.SCATTER, "0.10"),
            threshold(ThresholdCode.RISE_TIME, "3.0"),
            threshold(ThresholdCode.WARM_RECOVERY, "1.15"),
            threshold(ThresholdCode.DRAG_GROWTH, "1.5"),
            threshold(ThresholdCode.SWING_CLEARANCE, "2"),
            threshold(ThresholdCode.IMBALANCE_CLEARANCE, "1.75"),
            threshold(ThresholdCode.WHEEL_GAIN, "1.2"),
            threshold(ThresholdCode.WARM_RECOVERY_FORCE, "100")
        };
    }

    private static Threshold threshold(ThresholdCode code, String value) {
        return new Threshold(code, new BigDecimal(value), Verified.JUDGEMENT, "test");
    }

    private static Figure figure(FigureKind kind, Place place, String value) {
        return figure(kind, place, value, Stage.ARRIVAL, SERVICE, "rt-1");
    }

    private static Figure parking(FigureKind kind, Place place, String value) {
        return figure(kind, place, value, Stage.ARRIVAL, PARKING, "rt-p");
    }

    private static Figure figure(
            FigureKind kind, Place place, String value, Stage stage, BrakeSystem brake, String test) {
        return new Figure(kind, test(test), stage, brake, place, new BigDecimal(value), null, true, null);
    }

    private static Figure unseen(FigureKind kind, Place place) {
        return new Figure(kind, test("rt-1"), Stage.ARRIVAL, SERVICE, place, null, null, false, null);
    }

    private static ShapeOfLoss shape(LossShape shape) {
        return new ShapeOfLoss(shape, RIGHT, test("rt-1"), "a shape");
    }

    private static EntryId test(String id) {
        return new EntryId("/lane", id);
    }

    private static Finding finding(Component component, Condition condition, Place place, CheckCode check) {
        return new Finding(
                new EntryId("/bay", "f-1"),
                FindingStage.AS_FOUND,
                component,
                condition,
                place,
                check,
                null,
                null,
                null);
    }

    private static Finding reserve(String share) {
        return new Finding(
                new EntryId("/bay", "f-1"),
                FindingStage.AS_FOUND,
                Component.PEDAL,
                Condition.WORN,
                Place.VEHICLE,
                null,
                null,
                null,
                new Measurement(MeasuredQuantity.PEDAL_RESERVE, new BigDecimal(share), null, share));
    }

    private static Vehicle vehicle(CircuitSplit split) {
        return new Vehicle(
                "N1", null, null, null, null, null, null, null, null, null, null, null, null, null, null, split, null,
                null, List.of(), null);
    }
}
