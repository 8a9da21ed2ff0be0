package org.axlecause.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.axlecause.measurement.RollerTests.TEST;
import static org.axlecause.measurement.RollerTests.TWO_PERCENT_OF_READING;
import static org.axlecause.measurement.RollerTests.figure;
import static org.axlecause.measurement.RollerTests.rearAxle;
import static org.axlecause.measurement.RollerTests.serviceTest;
import static org.axlecause.measurement.RollerTests.wheel;
import static org.axlecause.measurement.RollerTests.with;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import org.axlecause.facts.Accuracy;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Side;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Surface;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.TestFigures;
import org.axlecause.facts.Tester;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class MeasureTestTest {

    private static final Place AXLE = Place.ofAxle(2);
    private static final Place LEFT = Place.ofWheel(2, Side.LEFT);
    private static final Place RIGHT = Place.ofWheel(2, Side.RIGHT);

    private final RollerTestRecorded weakRight = serviceTest(
            TWO_PERCENT_OF_READING,
            rearAxle("560", wheel("1610", "62", "0.08", false), wheel("590", "66", "0.09", false)));

    @Test
    void reported_figures_are_taken_over_as_they_are() {
        TestFigures figures = MeasureTest.of(TEST, weakRight);

        assertThat(figure(figures, FigureKind.PEAK, LEFT).value()).isEqualByComparingTo("1610");
        assertThat(figure(figures, FigureKind.DRAG, RIGHT).value()).isEqualByComparingTo("66");
        assertThat(figure(figures, FigureKind.FLUCTUATION, RIGHT).value()).isEqualByComparingTo("0.09");
        assertThat(figures.doubts()).isEmpty();
        assertThat(figures.shapes()).isEmpty();
    }

    /** Print-out of a periodic test, as tabulated in the trade (secondary): 11, 34 and 51 %. */
    @ParameterizedTest(name = "{0} N and {1} N differ by {2} %")
    @CsvSource({"2190, 2450, 10.6", "750, 1140, 34.2", "380, 780, 51.3", "0, 800, 100", "900, 900, 0"})
    void the_imbalance_of_peaks_is_the_difference_over_the_higher(String left, String right, double percent) {
        RollerTestRecorded test =
                serviceTest(null, rearAxle(null, wheel(left, null, null, null), wheel(right, null, null, null)));

        BigDecimal imbalance = figure(MeasureTest.of(TEST, test), FigureKind.PEAK_IMBALANCE, AXLE)
                .value();

        assertThat(imbalance.doubleValue() * 100).isCloseTo(percent, within(0.05));
    }

    @Test
    void two_wheels_without_effort_have_no_imbalance() {
        RollerTestRecorded test =
                serviceTest(null, rearAxle(null, wheel("0", null, null, null), wheel("0", null, null, null)));

        Figure imbalance = figure(MeasureTest.of(TEST, test), FigureKind.PEAK_IMBALANCE, AXLE);

        assertThat(imbalance.observable()).isFalse();
        assertThat(imbalance.value()).isNull();
    }

    @ParameterizedTest
    @EnumSource(
            value = FigureKind.class,
            names = {
                "HOLD",
                "ONSET",
                "RISE_TIME",
                "RELEASE_TIME",
                "RISE_LAG",
                "RELEASE_LAG",
                "RESIDUAL",
                "FIRST_HARMONIC",
                "SECOND_HARMONIC",
                "HYSTERESIS",
                "DECAY_WHILE_HELD"
            })
    void what_is_over_in_time_is_not_observable_from_peaks(FigureKind kind) {
        TestFigures figures = MeasureTest.of(TEST, weakRight);

        for (Place wheel : List.of(LEFT, RIGHT)) {
            assertThat(figure(figures, kind, wheel))
                    .returns(false, Figure::observable)
                    .returns(null, Figure::value)
                    .returns(null, Figure::uncertainty);
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = FigureKind.class,
            names = {"IMBALANCE_LOW", "IMBALANCE_MID", "IMBALANCE_HIGH"})
    void imbalance_over_effort_is_not_observable_from_peaks(FigureKind kind) {
        assertThat(figure(MeasureTest.of(TEST, weakRight), kind, AXLE)).returns(false, Figure::observable);
    }

    @Test
    void what_was_not_measured_is_no_figure_of_zero() {
        RollerTestRecorded test = serviceTest(null, rearAxle(null, wheel("1610", null, null, null), null));

        TestFigures figures = MeasureTest.of(TEST, test);

        assertThat(figure(figures, FigureKind.PEAK, LEFT).observable()).isTrue();
        assertThat(figure(figures, FigureKind.DRAG, LEFT))
                .returns(false, Figure::observable)
                .returns(null, Figure::value);
        assertThat(figure(figures, FigureKind.FLUCTUATION, LEFT)).returns(false, Figure::observable);
        assertThat(figure(figures, FigureKind.PEAK, RIGHT)).returns(false, Figure::observable);
        assertThat(figure(figures, FigureKind.PEAK_IMBALANCE, AXLE)).returns(false, Figure::observable);
    }

    /** Half-width a of a rectangular distribution gives a / sqrt(3), a step r gives r / sqrt(12): JCGM 100:2008, 4.3.7. */
    @Test
    void accuracy_and_resolution_make_the_uncertainty_of_a_force() {
        Tester ofReading = new Tester(new BigDecimal("0.02"), Accuracy.READING, null, new BigDecimal("10"), null);
        Tester ofRange =
                new Tester(new BigDecimal("0.01"), Accuracy.RANGE, new BigDecimal("6000"), new BigDecimal("10"), null);

        assertThat(uncertaintyOfPeak(ofReading).doubleValue()).isCloseTo(18.813, within(0.001));
        assertThat(uncertaintyOfPeak(ofRange).doubleValue()).isCloseTo(34.761, within(0.001));
    }

    @Test
    void without_the_testers_accuracy_no_uncertainty_is_stated() {
        assertThat(uncertaintyOfPeak(null)).isNull();
        assertThat(uncertaintyOfPeak(new Tester(null, null, null, new BigDecimal("10"), null)))
                .isNull();
        assertThat(uncertaintyOfPeak(new Tester(new BigDecimal("0.02"), null, null, null, null)))
                .isNull();
        assertThat(uncertaintyOfPeak(new Tester(new BigDecimal("0.02"), Accuracy.RANGE, null, null, null)))
                .isNull();
    }

    private static BigDecimal uncertaintyOfPeak(Tester tester) {
        RollerTestRecorded test =
                serviceTest(tester, rearAxle(null, wheel("1610", null, null, null), wheel("1600", null, null, null)));
        return figure(MeasureTest.of(TEST, test), FigureKind.PEAK, LEFT).uncertainty();
    }

    /** An oval drum beside a healthy one, mean forces equal: the peaks differ by about 19 %. */
    @Test
    void a_swing_that_makes_a_false_imbalance_is_pointed_out() {
        RollerTestRecorded test =
                serviceTest(null, rearAxle(null, wheel("1026", null, "0.03", null), wheel("1256", null, "0.39", null)));

        List<TestDoubt> doubts = MeasureTest.of(TEST, test).doubts();

        assertThat(doubts).singleElement().satisfies(doubt -> {
            assertThat(doubt.code()).isEqualTo(DoubtCode.SWING_HIDDEN_BY_PEAK);
            assertThat(doubt.place()).isEqualTo(AXLE);
            assertThat(doubt.says())
                    .startsWith(
                            "the wheels swing by 3 % and 39 % of their highest force within a turn; the peaks differ"
                                    + " by 18 %, the mean forces by about 0 %");
        });
    }

    @ParameterizedTest(name = "{0} N swinging {1}, {2} N swinging {3}")
    @CsvSource({
        "1610, 0.08, 590, 0.09",
        "1600, 0.12, 1590, 0.12",
        "1600, 0.20, 1000, 0.20",
        "1600, 0.09, 1300, 0.00",
        "1600, 0.12, 1580, 0.01"
    })
    void a_swing_that_changes_no_judgement_is_left_alone(String left, String ofLeft, String right, String ofRight) {
        RollerTestRecorded test =
                serviceTest(null, rearAxle(null, wheel(left, null, ofLeft, null), wheel(right, null, ofRight, null)));

        assertThat(MeasureTest.of(TEST, test).doubts()).isEmpty();
    }

    /** An oval drum alone makes 15 % to 20 % of imbalance of the peaks (derived); nobody said whether one swings. */
    @ParameterizedTest(name = "1000 and {0} N: {1} doubts")
    @CsvSource({"851, 0", "850, 1", "800, 1", "799, 0"})
    void peaks_without_a_swing_that_a_swing_could_explain_are_pointed_out(String right, int doubts) {
        TestFigures figures = MeasureTest.of(
                TEST,
                serviceTest(null, rearAxle(null, wheel("1000", null, null, null), wheel(right, null, null, null))));

        assertThat(figures.doubts())
                .hasSize(doubts)
                .allSatisfy(doubt -> assertThat(doubt.code()).isEqualTo(DoubtCode.SWING_HIDDEN_BY_PEAK));
    }

    @Test
    void a_swing_on_the_weak_wheel_that_hides_an_imbalance_is_pointed_out() {
        RollerTestRecorded test =
                serviceTest(null, rearAxle(null, wheel("1000", null, "0.40", null), wheel("1100", null, "0.02", null)));

        assertThat(MeasureTest.of(TEST, test).doubts())
                .singleElement()
                .returns(DoubtCode.SWING_HIDDEN_BY_PEAK, TestDoubt::code);
    }

    /** 560 kg on the axle are about 2746 N on a wheel, half of it 1373 N. */
    @ParameterizedTest(name = "locked at {0} N: doubt {1}")
    @CsvSource({"1300, true", "1380, false"})
    void a_lock_on_a_light_axle_is_doubted(String peak, boolean doubted) {
        RollerTestRecorded test =
                serviceTest(null, rearAxle("560", wheel(peak, null, null, true), wheel(peak, null, null, false)));

        List<TestDoubt> doubts = MeasureTest.of(TEST, test).doubts();

        assertThat(doubts)
                .extracting(TestDoubt::code, TestDoubt::place)
                .isEqualTo(
                        doubted
                                ? List.of(org.assertj.core.groups.Tuple.tuple(DoubtCode.LOCKED_ON_LIGHT_LOAD, LEFT))
                                : List.of());
    }

    @Test
    void without_a_load_a_lock_raises_no_doubt() {
        RollerTestRecorded test =
                serviceTest(null, rearAxle(null, wheel("100", null, null, true), wheel("100", null, null, true)));

        assertThat(MeasureTest.of(TEST, test).doubts()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(TestCondition.class)
    void every_reported_condition_is_a_doubt_in_words(TestCondition condition) {
        TestFigures figures = MeasureTest.of(TEST, with(weakRight, condition, condition));

        assertThat(figures.doubts()).singleElement().satisfies(doubt -> {
            assertThat(doubt.code()).isEqualTo(DoubtCode.REPORTED_CONDITION);
            assertThat(doubt.place()).isEqualTo(Place.VEHICLE);
            assertThat(doubt.says()).isNotBlank();
        });
    }

    @Test
    void a_wet_surface_is_a_doubt_and_a_dry_one_is_not() {
        assertThat(MeasureTest.of(TEST, on(Surface.WET)).doubts())
                .singleElement()
                .returns(DoubtCode.WET_SURFACE, TestDoubt::code);
        assertThat(MeasureTest.of(TEST, on(Surface.DRY)).doubts()).isEmpty();
    }

    private RollerTestRecorded on(Surface surface) {
        return new RollerTestRecorded(
                Stage.FINAL, BrakeSystem.PARKING, weakRight.axles(), null, surface, null, List.of());
    }

    @Test
    void figures_come_in_one_order_and_carry_stage_and_brake() {
        TestFigures figures = MeasureTest.of(TEST, on(Surface.DRY));

        assertThat(figures.figures())
                .isSortedAccordingTo(Comparator.comparing(Figure::place).thenComparing(Figure::kind))
                .allSatisfy(figure -> {
                    assertThat(figure.stage()).isEqualTo(Stage.FINAL);
                    assertThat(figure.brake()).isEqualTo(BrakeSystem.PARKING);
                    assertThat(figure.test()).isEqualTo(TEST);
                });
        assertThat(MeasureTest.of(TEST, on(Surface.DRY))).isEqualTo(figures);
    }
}
