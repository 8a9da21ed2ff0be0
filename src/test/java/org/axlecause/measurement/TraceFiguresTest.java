package org.axlecause.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.axlecause.fleet.ReferenceAxle.APPLICATION;
import static org.axlecause.fleet.ReferenceAxle.HEALTHY;
import static org.axlecause.fleet.ReferenceAxle.RECORDING;
import static org.axlecause.measurement.RollerTests.TEST;
import static org.axlecause.measurement.RollerTests.TWO_PERCENT_OF_READING;
import static org.axlecause.measurement.RollerTests.figure;
import static org.axlecause.measurement.RollerTests.serviceTest;
import static org.axlecause.measurement.RollerTests.traced;
import static org.axlecause.measurement.RollerTests.withoutPedal;

import java.math.BigDecimal;
import java.util.List;
import org.axlecause.facts.Accuracy;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Samples;
import org.axlecause.facts.Side;
import org.axlecause.facts.TestFigures;
import org.axlecause.facts.Tester;
import org.axlecause.facts.Trace;
import org.axlecause.fleet.Application;
import org.axlecause.fleet.Recording;
import org.axlecause.fleet.ReferenceAxle;
import org.axlecause.fleet.SignatureTable;
import org.axlecause.fleet.SignatureTable.Pair;
import org.axlecause.fleet.SignatureTable.Row;
import org.axlecause.fleet.Swing;
import org.axlecause.fleet.WheelBrake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Traces of the reference axle give back the figures of the trade's signature table (derived) and the truth that the
 * model was given: times within a sample and 10 ms, forces within 1 %, harmonics within 5 %.
 */
class TraceFiguresTest {

    private static final Place AXLE = Place.ofAxle(2);
    /** One sample of 10 ms, and 10 ms. */
    private static final double TIME = 0.01 + 0.01;

    static List<Row> rows() {
        return SignatureTable.rows();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void forces_are_found(Row row) {
        TestFigures figures = measured(row);

        near(figures, FigureKind.DRAG, row.rolling(), 0.5, 0.01);
        near(figures, FigureKind.HOLD, row.hold(), 0.5, 0.01);
        near(figures, FigureKind.RESIDUAL, row.residual(), 0.6, 0.01);
    }

    @ParameterizedTest
    @MethodSource("rows")
    void times_are_found(Row row) {
        TestFigures figures = measured(row);

        near(figures, FigureKind.ONSET, row.onset(), TIME, 0);
        near(figures, FigureKind.RISE_TIME, row.rise(), TIME, 0);
        near(figures, FigureKind.RELEASE_TIME, row.release(), TIME, 0);
    }

    @ParameterizedTest
    @MethodSource("rows")
    void swings_and_harmonics_are_found(Row row) {
        TestFigures figures = measured(row);

        near(figures, FigureKind.FLUCTUATION, scaled(row.swing()), 0.006, 0);
        for (Side side : Side.values()) {
            WheelBrake wheel = side == Side.LEFT ? row.first() : row.second();
            if (row.name().startsWith("first wheel slips") && side == Side.LEFT) {
                continue;
            }
            assertThat(value(figures, FigureKind.FIRST_HARMONIC, side))
                    .isCloseTo(
                            wheel.swing().first(), within(0.05 * wheel.swing().first()));
            assertThat(value(figures, FigureKind.SECOND_HARMONIC, side))
                    .isCloseTo(
                            wheel.swing().second(), within(0.05 * wheel.swing().second()));
        }
    }

    @ParameterizedTest
    @MethodSource("rows")
    void imbalance_over_effort_is_found(Row row) {
        EffortCurve curve = EffortCurve.of(traced(null, null, run(row)), TWO_PERCENT_OF_READING);

        assertThat(100 * curve.at(0.25).towards(Side.LEFT))
                .isCloseTo(row.imbalance().quarter(), within(0.6));
        assertThat(100 * curve.at(0.5).towards(Side.LEFT))
                .isCloseTo(row.imbalance().half(), within(0.6));
        assertThat(100 * curve.at(1).towards(Side.LEFT))
                .isCloseTo(row.imbalance().full(), within(0.6));
        assertThat(curve.points()).hasSize(20);
    }

    @ParameterizedTest
    @MethodSource("rows")
    void without_a_pedal_forces_and_lags_are_found_all_the_same(Row row) {
        TestFigures figures =
                MeasureTest.of(TEST, serviceTest(TWO_PERCENT_OF_READING, traced(null, null, withoutPedal(run(row)))));

        near(figures, FigureKind.DRAG, row.rolling(), 0.5, 0.01);
        near(figures, FigureKind.HOLD, row.hold(), 0.5, 0.01);
        if (!row.name().equals("healthy")) {
            double lag = row.onset().first() - row.onset().second();
            assertThat(value(figures, FigureKind.RISE_LAG, Side.LEFT)).isCloseTo(Math.max(0, lag), within(TIME));
            assertThat(value(figures, FigureKind.RISE_LAG, Side.RIGHT)).isCloseTo(Math.max(0, -lag), within(TIME));
        }
        assertThat(figure(figures, FigureKind.ONSET, Place.ofWheel(2, Side.LEFT))
                        .basis())
                .isEqualTo("from-first-rise-of-force");
        assertThat(figure(figures, FigureKind.HYSTERESIS, Place.ofWheel(2, Side.LEFT))
                        .observable())
                .isFalse();
    }

    @Test
    void imbalance_at_low_effort_is_left_out_where_both_forces_are_small() {
        TestFigures weak = measured(SignatureTable.named("soaked lining, friction 0.12"));
        TestFigures strong = measured(SignatureTable.named("second wheel grabbing, friction 0.50"));

        assertThat(figure(weak, FigureKind.IMBALANCE_LOW, AXLE).observable()).isFalse();
        assertThat(figure(weak, FigureKind.IMBALANCE_MID, AXLE).value()).isEqualByComparingTo("0.7302");
        assertThat(figure(strong, FigureKind.IMBALANCE_LOW, AXLE).value().doubleValue())
                .isCloseTo(0.345, within(0.001));
    }

    @Test
    void net_forces_show_no_imbalance_where_a_wheel_only_rubs() {
        TestFigures figures = measured(SignatureTable.named("second wheel rubbing, 150 N"));

        assertThat(figure(figures, FigureKind.IMBALANCE_HIGH, AXLE).value()).isEqualByComparingTo("0");
        assertThat(figure(figures, FigureKind.PEAK_IMBALANCE, AXLE).value().doubleValue())
                .isCloseTo(0.127, within(0.001));
    }

    @Test
    void a_force_that_never_lets_go_is_timed_at_least_as_long_as_the_record() {
        TestFigures figures = measured(SignatureTable.named("hose with a one-way flap"));

        Figure release = figure(figures, FigureKind.RELEASE_TIME, Place.ofWheel(2, Side.LEFT));
        assertThat(release.basis()).isEqualTo("at-least-until-the-record-ends");
        assertThat(release.value().doubleValue()).isCloseTo(3.0, within(0.02));
        assertThat(value(figures, FigureKind.RESIDUAL_DECAY, Side.LEFT)).isBetween(0.1, 0.2);
        assertThat(value(figures, FigureKind.RELEASE_LAG, Side.LEFT)).isGreaterThan(2.5);
        assertThat(value(figures, FigureKind.RELEASE_LAG, Side.RIGHT)).isZero();
    }

    @Test
    void a_residual_that_stays_does_not_decay() {
        TestFigures figures = measured(SignatureTable.named("tight piston, 12 bar"));

        assertThat(value(figures, FigureKind.RESIDUAL_DECAY, Side.LEFT)).isCloseTo(0, within(0.02));
        assertThat(figure(figures, FigureKind.RESIDUAL_DECAY, Place.ofWheel(2, Side.RIGHT))
                        .observable())
                .isFalse();
    }

    @Test
    void friction_in_the_pistons_widens_the_hysteresis() {
        TestFigures figures = measured(SignatureTable.named("tight piston, 12 bar"));

        assertThat(value(figures, FigureKind.HYSTERESIS, Side.LEFT)).isGreaterThan(0.5);
        assertThat(value(figures, FigureKind.HYSTERESIS, Side.RIGHT)).isLessThan(0.1);
    }

    /** Both pressures fall by a fifth in five seconds while the pedal stands still, as when a seal leaks. */
    @Test
    void a_force_that_falls_under_a_steady_pedal_is_seen() {
        Application longHold = new Application(1.5, 2.0, 10.0, 0.3, 16.0, 100);
        Trace steady = ReferenceAxle.run(HEALTHY, HEALTHY.withFriction(0.37), longHold, RECORDING);
        double[] sinking = steady.left().toArray();
        for (int i = 350; i < sinking.length; i++) {
            sinking[i] = 60 + (sinking[i] - 60) * (1 - 0.04 * (Math.min(i, 1350) - 350) * 0.01);
        }
        Trace trace = new Trace(steady.samplePeriod(), Samples.of(sinking), steady.right(), steady.pedal());

        TestFigures figures = measured(trace);

        assertThat(value(figures, FigureKind.DECAY_WHILE_HELD, Side.LEFT)).isBetween(0.2, 0.35);
        assertThat(value(figures, FigureKind.DECAY_WHILE_HELD, Side.RIGHT)).isCloseTo(0, within(0.005));
    }

    @ParameterizedTest(name = "sampled every {0} s")
    @CsvSource({"0.001", "0.005", "0.02", "0.05", "0.1"})
    void the_sample_rate_does_not_matter(BigDecimal period) {
        Row row = SignatureTable.named("tight piston, 12 bar");
        Recording recording = new Recording(period, ReferenceAxle.ROLLER_SPEED, 0, 0, 1);

        TestFigures figures = measured(ReferenceAxle.run(row.first(), row.second(), APPLICATION, recording));

        double time = period.doubleValue() + 0.01 + 0.005;
        near(figures, FigureKind.HOLD, row.hold(), 0.5, 0.01);
        near(figures, FigureKind.DRAG, row.rolling(), 0.5, 0.01);
        near(figures, FigureKind.ONSET, row.onset(), time, 0);
        near(figures, FigureKind.RISE_TIME, row.rise(), time, 0);
        assertThat(value(figures, FigureKind.RISE_LAG, Side.LEFT)).isCloseTo(0.42, within(time));
    }

    /** At 2.5 km/h and an unknown tyre the turn is read off the signal itself. */
    @ParameterizedTest(name = "tyre {0} m at {1} m/s")
    @CsvSource({"0.28, 0.694", "0.33, 0.694", "0.30, 1.389", "0.34, 1.389"})
    void the_turn_of_the_wheel_is_found_in_the_signal(double tyreRadius, double speed) {
        WheelBrake wheel = withTyre(HEALTHY.with(new Swing(0.15, 0.4, 0.05, 1.0)), tyreRadius);
        Application longHold = new Application(4, 2.0, 9.0, 0.3, 19, 100);
        Recording recording = new Recording(new BigDecimal("0.01"), speed, 0, 0, 1);
        Trace trace = ReferenceAxle.run(wheel, withTyre(HEALTHY, tyreRadius), longHold, recording);
        Tester tester = new Tester(new BigDecimal("0.02"), Accuracy.READING, null, null, BigDecimal.valueOf(speed));

        TestFigures figures = MeasureTest.of(TEST, serviceTest(tester, traced(null, null, trace)));

        assertThat(value(figures, FigureKind.FIRST_HARMONIC, Side.LEFT)).isCloseTo(0.15, within(0.0075));
        assertThat(value(figures, FigureKind.SECOND_HARMONIC, Side.LEFT)).isCloseTo(0.05, within(0.0025));
    }

    @Test
    void without_the_testers_speed_a_single_swing_could_be_once_or_twice_a_turn() {
        Trace trace = ReferenceAxle.run(HEALTHY.with(new Swing(0.2, 0, 0, 0)), HEALTHY.with(Swing.NONE));
        Tester unknownSpeed = new Tester(new BigDecimal("0.02"), Accuracy.READING, null, null, null);

        TestFigures figures = MeasureTest.of(TEST, serviceTest(unknownSpeed, traced(null, null, trace)));

        assertThat(figure(figures, FigureKind.FIRST_HARMONIC, Place.ofWheel(2, Side.LEFT))
                        .observable())
                .isFalse();
        assertThat(value(figures, FigureKind.FLUCTUATION, Side.LEFT)).isCloseTo(0.32, within(0.006));
    }

    @Test
    void every_kind_of_figure_is_there_once_for_each_place_whether_shown_or_not() {
        List<FigureKind> ofPeaks = kinds(MeasureTest.of(
                TEST,
                serviceTest(
                        null,
                        RollerTests.rearAxle(
                                null,
                                RollerTests.wheel("900", null, null, null),
                                RollerTests.wheel("900", null, null, null)))));

        List<FigureKind> ofTrace = kinds(measured(SignatureTable.named("oval drum on the second wheel")));

        assertThat(ofTrace).isEqualTo(ofPeaks);
    }

    @Test
    void the_same_trace_gives_the_same_figures() {
        Row row = SignatureTable.named("hose choked both ways");

        assertThat(measured(row)).isEqualTo(measured(row));
    }

    private static List<FigureKind> kinds(TestFigures figures) {
        return figures.figures().stream().map(Figure::kind).toList();
    }

    private static WheelBrake withTyre(WheelBrake wheel, double radius) {
        return new WheelBrake(
                wheel.pair(),
                wheel.actuatorArea(),
                wheel.effectiveRadius(),
                radius,
                wheel.hydraulics(),
                wheel.swing(),
                wheel.rollingForce(),
                wheel.dragForce(),
                wheel.grip(),
                wheel.load());
    }

    private static Trace run(Row row) {
        return ReferenceAxle.run(row.first(), row.second());
    }

    private static TestFigures measured(Row row) {
        return measured(run(row));
    }

    private static TestFigures measured(Trace trace) {
        return MeasureTest.of(TEST, serviceTest(TWO_PERCENT_OF_READING, traced(null, null, trace)));
    }

    private static double value(TestFigures figures, FigureKind kind, Side side) {
        BigDecimal value = figure(figures, kind, Place.ofWheel(2, side)).value();
        assertThat(value).as("%s %s", kind, side).isNotNull();
        return value.doubleValue();
    }

    private static Pair scaled(Pair percent) {
        return new Pair(percent.first() / 100, percent.second() / 100);
    }

    private static void near(TestFigures figures, FigureKind kind, Pair expected, double digit, double share) {
        near(kind, value(figures, kind, Side.LEFT), expected.first(), digit, share);
        near(kind, value(figures, kind, Side.RIGHT), expected.second(), digit, share);
    }

    private static void near(FigureKind kind, double actual, double expected, double digit, double share) {
        if (Double.isInfinite(expected)) {
            assertThat(actual).as("%s", kind).isGreaterThan(2.5);
        } else {
            assertThat(actual).as("%s", kind).isCloseTo(expected, within(digit + share * Math.abs(expected)));
        }
    }
}
