package org.axlecause.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static org.axlecause.fleet.ReferenceAxle.APPLICATION;
import static org.axlecause.fleet.ReferenceAxle.HEALTHY;
import static org.axlecause.fleet.ReferenceAxle.RECORDING;
import static org.axlecause.measurement.RollerTests.TEST;
import static org.axlecause.measurement.RollerTests.TWO_PERCENT_OF_READING;
import static org.axlecause.measurement.RollerTests.figure;
import static org.axlecause.measurement.RollerTests.serviceTest;
import static org.axlecause.measurement.RollerTests.traced;
import static org.axlecause.measurement.RollerTests.wheel;
import static org.axlecause.measurement.RollerTests.withoutPedal;

import java.math.BigDecimal;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntToDoubleFunction;
import org.axlecause.facts.Accuracy;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Samples;
import org.axlecause.facts.Side;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.TestFigures;
import org.axlecause.facts.Tester;
import org.axlecause.facts.Trace;
import org.axlecause.fleet.Application;
import org.axlecause.fleet.ReferenceAxle;
import org.axlecause.fleet.Swing;
import org.axlecause.fleet.WheelBrake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What is wrong with a trace is named, and nothing is guessed over it. */
class BadTracesTest {

    private static final Place AXLE = Place.ofAxle(2);
    private static final Place LEFT = Place.ofWheel(2, Side.LEFT);
    private static final Place RIGHT = Place.ofWheel(2, Side.RIGHT);
    private static final WheelBrake PARTNER = HEALTHY.with(new Swing(0.01, 1.0, 0.01, 2.0));

    @Test
    void a_good_trace_raises_no_doubt() {
        assertThat(doubtsOf(good())).isEmpty();
        assertThat(doubtsOf(withoutPedal(good()))).isEmpty();
        assertThat(doubtsOf(noisy())).isEmpty();
    }

    @Test
    void two_channels_with_the_same_samples_are_not_compared() {
        Trace good = good();
        TestFigures figures = measured(new Trace(good.samplePeriod(), good.left(), good.left(), good.pedal()));

        assertThat(figures.doubts())
                .extracting(TestDoubt::code, TestDoubt::place)
                .containsExactly(tuple(DoubtCode.IDENTICAL_CHANNELS, AXLE));
        for (FigureKind kind :
                List.of(FigureKind.IMBALANCE_MID, FigureKind.IMBALANCE_HIGH, FigureKind.PEAK_IMBALANCE)) {
            assertThat(figure(figures, kind, AXLE).observable()).isFalse();
        }
        assertThat(figure(figures, FigureKind.RISE_LAG, LEFT).observable()).isFalse();
        assertThat(figures.shapes()).isEmpty();
    }

    /** Rolling ends at 1.5 s, the hold lasts from 3.5 s to 7.5 s. */
    @Test
    void a_gap_hides_only_the_figures_that_fall_into_it() {
        TestFigures figures = measured(withLeft(good(), i -> i >= 600 && i < 620 ? Double.NaN : 0));

        assertThat(figures.doubts())
                .extracting(TestDoubt::code, TestDoubt::place)
                .containsExactly(tuple(DoubtCode.GAP, LEFT));
        assertThat(figures.doubts().get(0).says())
                .isEqualTo("20 of 1051 samples are missing, the first at 6.00 s: what falls into the gaps is not made"
                        + " up");
        assertThat(figure(figures, FigureKind.DRAG, LEFT).value().doubleValue()).isCloseTo(60, within(0.5));
        assertThat(figure(figures, FigureKind.RESIDUAL, LEFT).observable()).isTrue();
        for (FigureKind kind : List.of(FigureKind.PEAK, FigureKind.HOLD, FigureKind.FLUCTUATION, FigureKind.ONSET)) {
            assertThat(figure(figures, kind, LEFT)).as("%s", kind).returns(false, Figure::observable);
            assertThat(figure(figures, kind, RIGHT)).as("%s", kind).returns(true, Figure::observable);
        }
        assertThat(figure(figures, FigureKind.IMBALANCE_HIGH, AXLE).observable())
                .isFalse();
    }

    @Test
    void a_gap_in_the_rolling_phase_hides_what_is_taken_off_from_it() {
        TestFigures figures = measured(withLeft(good(), i -> i >= 100 && i < 110 ? Double.NaN : 0));

        assertThat(figure(figures, FigureKind.DRAG, LEFT).observable()).isFalse();
        assertThat(figure(figures, FigureKind.HOLD, LEFT).observable()).isFalse();
        assertThat(figure(figures, FigureKind.PEAK, LEFT).value().doubleValue()).isCloseTo(1033, within(1.0));
        assertThat(figure(figures, FigureKind.HOLD, RIGHT).observable()).isTrue();
    }

    @Test
    void a_force_at_the_end_of_the_testers_range_is_cut_off() {
        Trace cut = changed(noisy(), force -> Math.min(force, 800), force -> force);
        Tester tester = new Tester(new BigDecimal("0.02"), Accuracy.RANGE, new BigDecimal("800"), null, speed());

        TestFigures figures = MeasureTest.of(TEST, serviceTest(tester, traced(null, null, cut)));

        assertThat(figures.doubts()).extracting(TestDoubt::code).contains(DoubtCode.CLIPPED);
    }

    @Test
    void a_noisy_force_that_stands_still_at_its_top_is_cut_off() {
        TestFigures figures = measured(changed(noisy(), force -> Math.min(force, 800), force -> force));

        assertThat(figures.doubts())
                .extracting(TestDoubt::code, TestDoubt::place)
                .containsExactly(tuple(DoubtCode.CLIPPED, LEFT));
        for (FigureKind kind :
                List.of(FigureKind.PEAK, FigureKind.HOLD, FigureKind.FLUCTUATION, FigureKind.RISE_TIME)) {
            assertThat(figure(figures, kind, LEFT)).as("%s", kind).returns(false, Figure::observable);
        }
        assertThat(figure(figures, FigureKind.DRAG, LEFT).observable()).isTrue();
        assertThat(figure(figures, FigureKind.HOLD, RIGHT).observable()).isTrue();
        assertThat(figure(figures, FigureKind.IMBALANCE_HIGH, AXLE).observable())
                .isFalse();
        assertThat(figures.shapes()).isEmpty();
    }

    @Test
    void two_forces_that_end_at_one_and_the_same_value_are_cut_off() {
        Trace cut = changed(good(), force -> Math.min(force, 800), force -> Math.min(force, 800));

        assertThat(doubtsOf(cut)).containsExactly(tuple(DoubtCode.CLIPPED, LEFT), tuple(DoubtCode.CLIPPED, RIGHT));
    }

    @Test
    void a_tyre_that_slips_is_not_taken_for_a_cut_off_force() {
        assertThat(doubtsOf(ReferenceAxle.run(HEALTHY.withGrip(0.35), HEALTHY))).isEmpty();
    }

    @ParameterizedTest(name = "{0} N a second")
    @CsvSource({"15", "-15"})
    void a_zero_that_moves_is_pointed_out(double perSecond) {
        TestFigures figures = measured(withLeft(good(), i -> perSecond * i * 0.01));

        assertThat(figures.doubts())
                .extracting(TestDoubt::code, TestDoubt::place)
                .containsExactly(tuple(DoubtCode.DRIFTING_ZERO, LEFT));
        for (FigureKind kind : List.of(FigureKind.DRAG, FigureKind.RESIDUAL)) {
            assertThat(figure(figures, kind, LEFT)).as("%s", kind).returns(false, Figure::observable);
            assertThat(figure(figures, kind, RIGHT)).as("%s", kind).returns(true, Figure::observable);
        }
    }

    @Test
    void a_force_below_nothing_is_a_wrong_zero() {
        assertThat(doubtsOf(withLeft(good(), i -> -110))).containsExactly(tuple(DoubtCode.DRIFTING_ZERO, LEFT));
    }

    @Test
    void a_brake_that_hangs_on_is_not_taken_for_a_moving_zero() {
        WheelBrake choked = HEALTHY.with(ReferenceAxle.HYDRAULICS.restricted(0.8, 1.5, 0));

        assertThat(doubtsOf(ReferenceAxle.run(choked, HEALTHY))).isEmpty();
    }

    @Test
    void a_pedal_that_is_only_tapped_has_no_hold() {
        Application tap = new Application(1.5, 2.0, 0.1, 0.3, 7, 100);

        TestFigures figures = measured(ReferenceAxle.run(HEALTHY, PARTNER, tap, RECORDING));

        assertThat(figures.doubts())
                .extracting(TestDoubt::code, TestDoubt::place)
                .containsExactly(tuple(DoubtCode.NO_HOLD, AXLE));
        for (FigureKind kind : List.of(FigureKind.HOLD, FigureKind.FLUCTUATION, FigureKind.DECAY_WHILE_HELD)) {
            assertThat(figure(figures, kind, LEFT)).as("%s", kind).returns(false, Figure::observable);
        }
        assertThat(figure(figures, FigureKind.PEAK, LEFT).observable()).isTrue();
        assertThat(figure(figures, FigureKind.DRAG, LEFT).observable()).isTrue();
    }

    @Test
    void a_tap_without_a_recorded_pedal_has_no_hold_either() {
        Application tap = new Application(1.5, 2.0, 0.1, 0.3, 7, 100);

        assertThat(doubtsOf(withoutPedal(ReferenceAxle.run(HEALTHY, PARTNER, tap, RECORDING))))
                .containsExactly(tuple(DoubtCode.NO_HOLD, AXLE));
    }

    /** One and a half turns: the mean over a turn can be told, the swing can't. */
    @Test
    void a_hold_of_less_than_two_turns_shows_the_force_but_not_the_swing() {
        Application brief = new Application(1.5, 2.0, 2.0, 0.3, 8, 100);

        TestFigures figures = measured(ReferenceAxle.run(HEALTHY, PARTNER, brief, RECORDING));

        assertThat(figures.doubts()).extracting(TestDoubt::code).containsExactly(DoubtCode.NO_HOLD);
        assertThat(figure(figures, FigureKind.HOLD, LEFT).value().doubleValue()).isCloseTo(956, within(10.0));
        assertThat(figure(figures, FigureKind.FLUCTUATION, LEFT).observable()).isFalse();
        assertThat(figure(figures, FigureKind.FIRST_HARMONIC, LEFT).observable())
                .isFalse();
    }

    @Test
    void a_trace_without_rolling_before_the_brake_is_too_short() {
        Application atOnce = new Application(0.2, 2.0, 4.0, 0.3, 9, 100);
        Trace trace = ReferenceAxle.run(HEALTHY, PARTNER, atOnce, RECORDING);

        TestFigures figures = measured(trace);
        TestFigures withDrag = MeasureTest.of(
                TEST,
                serviceTest(
                        TWO_PERCENT_OF_READING,
                        traced(wheel(null, "60", null, null), wheel(null, "60", null, null), trace)));

        assertThat(figures.doubts())
                .extracting(TestDoubt::code, TestDoubt::place)
                .containsExactly(tuple(DoubtCode.TOO_SHORT, AXLE));
        assertThat(figure(figures, FigureKind.DRAG, LEFT).observable()).isFalse();
        assertThat(figure(figures, FigureKind.HOLD, LEFT).observable()).isFalse();
        assertThat(withDrag.doubts()).isEmpty();
        assertThat(figure(withDrag, FigureKind.HOLD, LEFT).value().doubleValue())
                .isCloseTo(956, within(1.0));
    }

    @Test
    void a_handful_of_samples_is_too_short_and_leaves_the_reported_peaks() {
        Trace few = new Trace(new BigDecimal("0.1"), Samples.of(60, 60, 300, 900), Samples.of(60, 61, 310, 905), null);

        TestFigures figures = MeasureTest.of(
                TEST, serviceTest(null, traced(wheel("900", null, null, null), wheel("905", null, null, null), few)));

        assertThat(figures.doubts()).extracting(TestDoubt::code).containsExactly(DoubtCode.TOO_SHORT);
        assertThat(figure(figures, FigureKind.PEAK, LEFT).value()).isEqualByComparingTo("900");
    }

    @Test
    void what_the_record_ends_before_is_not_shown() {
        Application cut = new Application(1.5, 2.0, 4.0, 0.3, 7.4, 100);

        TestFigures figures = measured(ReferenceAxle.run(HEALTHY, PARTNER, cut, RECORDING));

        assertThat(figures.doubts()).isEmpty();
        assertThat(figure(figures, FigureKind.HOLD, LEFT).value().doubleValue()).isCloseTo(956, within(1.0));
        for (FigureKind kind : List.of(FigureKind.RELEASE_TIME, FigureKind.RELEASE_LAG, FigureKind.RESIDUAL)) {
            assertThat(figure(figures, kind, LEFT)).as("%s", kind).returns(false, Figure::observable);
        }
    }

    /** The tester stops on slip while the foot is still down. */
    @Test
    void a_test_that_stops_on_slip_shows_no_release() {
        Trace stopped = new Trace(
                good().samplePeriod(),
                Samples.of(stoppedAt(good().left(), 700)),
                Samples.of(stoppedAt(good().right(), 700)),
                good().pedal());

        TestFigures figures = measured(stopped);

        assertThat(figure(figures, FigureKind.RELEASE_TIME, LEFT).observable()).isFalse();
        assertThat(figure(figures, FigureKind.RESIDUAL, LEFT).observable()).isFalse();
        assertThat(figure(figures, FigureKind.HOLD, LEFT).value().doubleValue()).isCloseTo(956, within(10.0));
    }

    /** The left tyre lets go a tenth of a second before the tester stops both rollers. */
    @Test
    void the_wheel_whose_force_breaks_down_first_is_the_one_that_slipped() {
        Trace stopped = new Trace(
                good().samplePeriod(),
                Samples.of(stoppedAt(good().left(), 690)),
                Samples.of(stoppedAt(good().right(), 700)),
                good().pedal());
        Trace together = new Trace(
                good().samplePeriod(),
                Samples.of(stoppedAt(good().left(), 700)),
                Samples.of(stoppedAt(good().right(), 700)),
                good().pedal());

        assertThat(measured(stopped).figures())
                .filteredOn(figure -> figure.kind() == FigureKind.SLIP_FORCE)
                .extracting(Figure::place)
                .containsExactly(LEFT);
        assertThat(measured(stopped).doubts()).isEmpty();
        assertThat(measured(together).figures()).noneMatch(figure -> figure.kind() == FigureKind.SLIP_FORCE);
        assertThat(measured(together).doubts()).extracting(TestDoubt::code).containsExactly(DoubtCode.STOPPED_ON_SLIP);
        assertThat(measured(good()).figures()).noneMatch(figure -> figure.kind() == FigureKind.SLIP_FORCE);
    }

    @Test
    void a_trace_without_any_braking_has_no_application() {
        double[] rolling = new double[600];
        double[] other = new double[600];
        for (int i = 0; i < 600; i++) {
            rolling[i] = 60 + Math.sin(i);
            other[i] = 62 + Math.cos(i);
        }

        TestFigures figures = measured(new Trace(new BigDecimal("0.01"), Samples.of(rolling), Samples.of(other), null));

        assertThat(figures.doubts()).extracting(TestDoubt::code).containsExactly(DoubtCode.NO_HOLD);
        assertThat(figure(figures, FigureKind.DRAG, LEFT).value().doubleValue()).isCloseTo(60, within(0.5));
        assertThat(figure(figures, FigureKind.ONSET, LEFT).observable()).isFalse();
    }

    /** Reference axle: 1033 N peak, 60 N rolling, 3 % swing. */
    @ParameterizedTest(name = "peak {0}, drag {1}, swing {2}: {3} doubts")
    @CsvSource({
        "1033, 60, 0.03, 0",
        "1080, 100, 0.10, 0",
        "1100, 60, 0.03, 1",
        "900, 60, 0.03, 1",
        "1033, 120, 0.03, 1",
        "1033, 60, 0.20, 1",
        "1300, 200, 0.30, 3"
    })
    void a_figure_that_disagrees_with_its_own_trace_is_doubted(String peak, String drag, String swing, int doubts) {
        AxleReading axle = traced(wheel(peak, drag, swing, null), null, good());

        TestFigures figures = MeasureTest.of(TEST, serviceTest(TWO_PERCENT_OF_READING, axle));

        assertThat(figures.doubts()).hasSize(doubts).allSatisfy(doubt -> {
            assertThat(doubt.code()).isEqualTo(DoubtCode.FIGURE_AGAINST_TRACE);
            assertThat(doubt.place()).isEqualTo(LEFT);
        });
    }

    @Test
    void a_reported_peak_is_shown_as_displayed_where_the_trace_agrees_and_the_traces_where_not() {
        TestFigures agreeing = MeasureTest.of(
                TEST, serviceTest(TWO_PERCENT_OF_READING, traced(wheel("1040", null, null, null), null, good())));
        TestFigures differing = MeasureTest.of(
                TEST, serviceTest(TWO_PERCENT_OF_READING, traced(wheel("1400", null, null, null), null, good())));

        assertThat(figure(agreeing, FigureKind.PEAK, LEFT).value()).isEqualByComparingTo("1040");
        assertThat(figure(differing, FigureKind.PEAK, LEFT).value().doubleValue())
                .isCloseTo(1033, within(1.0));
        assertThat(differing.doubts())
                .singleElement()
                .satisfies(doubt -> assertThat(doubt.says()).isEqualTo("reported peak 1400 N, trace 1033 N"));
    }

    @ParameterizedTest
    @EnumSource(Side.class)
    void a_dead_wheel_is_a_force_of_nothing_and_not_a_missing_one(Side dead) {
        WheelBrake none = HEALTHY.withFriction(0);
        Trace trace = dead == Side.LEFT ? ReferenceAxle.run(none, HEALTHY) : ReferenceAxle.run(HEALTHY, none);

        TestFigures figures = measured(trace);

        Place place = Place.ofWheel(2, dead);
        assertThat(figure(figures, FigureKind.HOLD, place).value().doubleValue())
                .isCloseTo(0, within(0.01));
        assertThat(figure(figures, FigureKind.ONSET, place).observable()).isFalse();
        assertThat(figure(figures, FigureKind.IMBALANCE_HIGH, AXLE).value()).isEqualByComparingTo("1");
    }

    private static BigDecimal speed() {
        return new BigDecimal("1.389");
    }

    private static Trace good() {
        return ReferenceAxle.run(HEALTHY, PARTNER);
    }

    private static Trace noisy() {
        return ReferenceAxle.run(HEALTHY, PARTNER, APPLICATION, RECORDING.noisy(0.01, 5, 11));
    }

    private static double[] stoppedAt(Samples samples, int index) {
        double[] forces = samples.toArray();
        for (int i = index; i < forces.length; i++) {
            forces[i] = Math.max(0, forces[i] * Math.exp(-(i - index) / 5.0));
        }
        return forces;
    }

    private static Trace withLeft(Trace trace, IntToDoubleFunction added) {
        double[] left = trace.left().toArray();
        for (int i = 0; i < left.length; i++) {
            left[i] += added.applyAsDouble(i);
        }
        return new Trace(trace.samplePeriod(), Samples.of(left), trace.right(), trace.pedal());
    }

    private static Trace changed(Trace trace, DoubleUnaryOperator left, DoubleUnaryOperator right) {
        return new Trace(trace.samplePeriod(), mapped(trace.left(), left), mapped(trace.right(), right), trace.pedal());
    }

    private static Samples mapped(Samples samples, DoubleUnaryOperator each) {
        double[] values = samples.toArray();
        for (int i = 0; i < values.length; i++) {
            values[i] = each.applyAsDouble(values[i]);
        }
        return Samples.of(values);
    }

    private static List<org.assertj.core.groups.Tuple> doubtsOf(Trace trace) {
        return measured(trace).doubts().stream()
                .map(doubt -> tuple(doubt.code(), doubt.place()))
                .toList();
    }

    private static TestFigures measured(Trace trace) {
        return MeasureTest.of(TEST, serviceTest(TWO_PERCENT_OF_READING, traced(null, null, trace)));
    }
}
