package org.axlecause.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.fleet.ReferenceAxle.APPLICATION;
import static org.axlecause.fleet.ReferenceAxle.HEALTHY;
import static org.axlecause.fleet.ReferenceAxle.RECORDING;
import static org.axlecause.measurement.RollerTests.TEST;
import static org.axlecause.measurement.RollerTests.TWO_PERCENT_OF_READING;
import static org.axlecause.measurement.RollerTests.figure;
import static org.axlecause.measurement.RollerTests.serviceTest;
import static org.axlecause.measurement.RollerTests.traced;

import java.util.ArrayList;
import java.util.List;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.TestFigures;
import org.axlecause.facts.Trace;
import org.axlecause.fleet.ReferenceAxle;
import org.axlecause.fleet.Swing;
import org.axlecause.fleet.WheelBrake;
import org.junit.jupiter.api.Test;

/**
 * Seeded traces with noise of 3 % of the reading and 20 N, every 10 ms. How many is set by the property
 * {@code seeded.traces}; a failure names the seeds.
 */
class NoisyTracesTest {

    private static final int TRACES = Integer.getInteger("seeded.traces", 1000);
    private static final long FIRST_SEED = Long.getLong("seeded.first", 20_260_302);
    private static final WheelBrake PARTNER = HEALTHY.with(new Swing(0.01, 1.0, 0.01, 2.0));

    @Test
    void nothing_is_invented_on_an_even_axle() {
        List<String> invented = new ArrayList<>();
        for (long seed = FIRST_SEED; seed < FIRST_SEED + TRACES; seed++) {
            TestFigures figures = measured(HEALTHY, PARTNER, seed);
            for (Side side : Side.values()) {
                Place wheel = Place.ofWheel(2, side);
                if (above(figures, FigureKind.RISE_LAG, wheel, 0.2)
                        || above(figures, FigureKind.RELEASE_LAG, wheel, 0.2)
                        || above(figures, FigureKind.FLUCTUATION, wheel, 0.10)
                        || above(figures, FigureKind.DRAG, wheel, 100)
                        || above(figures, FigureKind.RESIDUAL, wheel, 100)) {
                    invented.add("seed " + seed + " " + side);
                }
            }
            if (figures.figures().stream().anyMatch(figure -> figure.kind() == FigureKind.SLIP_FORCE)) {
                invented.add("seed " + seed + " slip");
            }
            double left = steepness(figures, Side.LEFT);
            double right = steepness(figures, Side.RIGHT);
            if (!(Math.max(left, right) < 1.5 * Math.min(left, right))) {
                invented.add("seed " + seed + " grabbing " + left + " " + right);
            }
            if (!figures.shapes().isEmpty() || !figures.doubts().isEmpty()) {
                invented.add("seed " + seed + " " + figures.shapes() + figures.doubts());
            }
        }

        assertThat(invented)
                .as("false alarms in %d traces from seed %d: %s", TRACES, FIRST_SEED, invented)
                .hasSizeLessThanOrEqualTo(TRACES / 100);
    }

    @Test
    void forces_stay_within_three_percent_and_harmonics_within_ten() {
        List<String> wrong = new ArrayList<>();
        WheelBrake uneven = HEALTHY.with(new Swing(0.20, 0.3, 0.25, 1.2));
        TestFigures truth = measured(ReferenceAxle.run(uneven, PARTNER));
        for (long seed = FIRST_SEED; seed < FIRST_SEED + TRACES; seed++) {
            TestFigures figures = measured(uneven, PARTNER, seed);
            for (Side side : Side.values()) {
                Place wheel = Place.ofWheel(2, side);
                if (off(figures, truth, FigureKind.HOLD, wheel) > 0.03
                        || off(figures, truth, FigureKind.PEAK, wheel) > 0.03) {
                    wrong.add("seed " + seed + " force " + side);
                }
            }
            Place left = Place.ofWheel(2, Side.LEFT);
            if (off(figures, truth, FigureKind.FIRST_HARMONIC, left) > 0.10
                    || off(figures, truth, FigureKind.SECOND_HARMONIC, left) > 0.10) {
                wrong.add("seed " + seed + " harmonic");
            }
        }

        assertThat(wrong).as("%d traces from seed %d", TRACES, FIRST_SEED).hasSizeLessThanOrEqualTo(TRACES / 100);
    }

    @Test
    void a_lag_stays_where_it_is() {
        List<String> wrong = new ArrayList<>();
        WheelBrake late = HEALTHY.with(ReferenceAxle.HYDRAULICS.withClearanceTime(0.8));
        for (long seed = FIRST_SEED; seed < FIRST_SEED + TRACES; seed++) {
            TestFigures figures = measured(late, PARTNER, seed);
            if (!above(figures, FigureKind.RISE_LAG, Place.ofWheel(2, Side.LEFT), 0.4)
                    || above(figures, FigureKind.RISE_LAG, Place.ofWheel(2, Side.LEFT), 0.65)) {
                wrong.add("seed " + seed);
            }
        }

        assertThat(wrong).as("%d traces from seed %d", TRACES, FIRST_SEED).hasSizeLessThanOrEqualTo(TRACES / 100);
    }

    private static double off(TestFigures figures, TestFigures truth, FigureKind kind, Place place) {
        var found = figure(figures, kind, place).value();
        double expected = figure(truth, kind, place).value().doubleValue();
        return found == null ? Double.POSITIVE_INFINITY : Math.abs(found.doubleValue() / expected - 1);
    }

    private static double steepness(TestFigures figures, Side side) {
        var value =
                figure(figures, FigureKind.STEEPNESS, Place.ofWheel(2, side)).value();
        return value == null ? Double.NaN : value.doubleValue();
    }

    private static boolean above(TestFigures figures, FigureKind kind, Place place, double bound) {
        var value = figure(figures, kind, place).value();
        return value == null || value.doubleValue() > bound;
    }

    private static TestFigures measured(WheelBrake left, WheelBrake right, long seed) {
        return measured(ReferenceAxle.run(left, right, APPLICATION, RECORDING.noisy(0.03, 20, seed)));
    }

    private static TestFigures measured(Trace trace) {
        return MeasureTest.of(TEST, serviceTest(TWO_PERCENT_OF_READING, traced(null, null, trace)));
    }
}
