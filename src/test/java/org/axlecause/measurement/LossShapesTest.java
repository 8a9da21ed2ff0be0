package org.axlecause.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static org.axlecause.measurement.RollerTests.TEST;
import static org.axlecause.measurement.RollerTests.TWO_PERCENT_OF_READING;
import static org.axlecause.measurement.RollerTests.figure;
import static org.axlecause.measurement.RollerTests.serviceTest;
import static org.axlecause.measurement.RollerTests.traced;
import static org.axlecause.measurement.RollerTests.withoutPedal;

import java.util.List;
import java.util.stream.Stream;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.LossShape;
import org.axlecause.facts.Place;
import org.axlecause.facts.ShapeOfLoss;
import org.axlecause.facts.Side;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.TestFigures;
import org.axlecause.facts.Trace;
import org.axlecause.fleet.Application;
import org.axlecause.fleet.ReferenceAxle;
import org.axlecause.fleet.SignatureTable;
import org.axlecause.fleet.SignatureTable.Row;
import org.axlecause.fleet.Swing;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Shapes of loss on the rows of the trade's signature table (derived). */
class LossShapesTest {

    static Stream<Arguments> shapes() {
        return Stream.of(
                Arguments.of("soaked lining, friction 0.12", LossShape.PROPORTIONAL, Side.LEFT),
                Arguments.of("glazed lining, friction 0.25", LossShape.PROPORTIONAL, Side.LEFT),
                Arguments.of("leading piston stuck", LossShape.PROPORTIONAL, Side.LEFT),
                Arguments.of("trailing piston stuck", LossShape.PROPORTIONAL, Side.LEFT),
                Arguments.of("tight piston, 6 bar", LossShape.OFFSET, Side.LEFT),
                Arguments.of("tight piston, 12 bar", LossShape.OFFSET, Side.LEFT),
                Arguments.of("hose choked both ways", LossShape.LATE, Side.LEFT),
                Arguments.of("hose with a one-way flap", LossShape.LATE, Side.LEFT),
                Arguments.of("adjuster not taken up", LossShape.LATE, Side.LEFT),
                Arguments.of("travel runs out at 22 bar", LossShape.CAPPED, Side.LEFT),
                Arguments.of("oval drum on the second wheel", LossShape.CYCLIC, Side.RIGHT),
                Arguments.of("eccentric drum on the first wheel", LossShape.CYCLIC, Side.LEFT),
                Arguments.of("second wheel rubbing, 150 N", LossShape.EXTRA, Side.RIGHT),
                Arguments.of("second wheel grabbing, friction 0.50", LossShape.PROPORTIONAL, Side.LEFT),
                Arguments.of("first wheel slips, grip 0.35", LossShape.CAPPED, Side.LEFT));
    }

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource("shapes")
    void each_fault_has_its_shape(String name, LossShape shape, Side side) {
        Row row = SignatureTable.named(name);

        List<ShapeOfLoss> found = shapesOf(ReferenceAxle.run(row.first(), row.second()));

        assertThat(found)
                .extracting(ShapeOfLoss::shape, ShapeOfLoss::place)
                .containsExactly(tuple(shape, Place.ofWheel(2, side)));
    }

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource("shapes")
    void each_fault_has_its_shape_without_a_pedal_too(String name, LossShape shape, Side side) {
        Row row = SignatureTable.named(name);

        List<ShapeOfLoss> found = shapesOf(withoutPedal(ReferenceAxle.run(row.first(), row.second())));

        assertThat(found)
                .extracting(ShapeOfLoss::shape, ShapeOfLoss::place)
                .containsExactly(tuple(shape, Place.ofWheel(2, side)));
    }

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource("shapes")
    void each_fault_has_its_shape_on_the_other_side_too(String name, LossShape shape, Side side) {
        Row row = SignatureTable.named(name);

        List<ShapeOfLoss> found = shapesOf(ReferenceAxle.run(row.second(), row.first()));

        assertThat(found)
                .extracting(ShapeOfLoss::shape, ShapeOfLoss::place)
                .containsExactly(tuple(shape, Place.ofWheel(2, LossShapes.opposite(side))));
    }

    @Test
    void an_even_axle_and_a_broken_spring_lose_nothing_worth_a_shape() {
        Row spring = SignatureTable.named("return spring broken");
        Trace even =
                ReferenceAxle.run(ReferenceAxle.HEALTHY, ReferenceAxle.HEALTHY.with(new Swing(0.01, 1.0, 0.01, 2.0)));

        assertThat(shapesOf(even)).isEmpty();
        assertThat(shapesOf(ReferenceAxle.run(spring.first(), spring.second()))).isEmpty();
    }

    @Test
    void a_slipping_tyre_is_told_from_travel_that_runs_out_by_its_lost_swing() {
        Row slip = SignatureTable.named("first wheel slips, grip 0.35");
        Row travel = SignatureTable.named("travel runs out at 22 bar");

        assertThat(shapesOf(ReferenceAxle.run(slip.first(), slip.second())))
                .singleElement()
                .satisfies(shape -> assertThat(shape.says())
                        .isEqualTo("equal to the other wheel up to 815 N, then no further; its swing is gone: the tyre"
                                + " slips on the rollers"));
        assertThat(shapesOf(ReferenceAxle.run(travel.first(), travel.second())))
                .singleElement()
                .satisfies(shape ->
                        assertThat(shape.says()).isEqualTo("equal to the other wheel up to 401 N, then no further"));
    }

    /** Grip 0.35 of 2500 N: the tyre lets go at 875 N; travel that runs out keeps its swing and is no slip. */
    @Test
    void a_tyre_that_slips_in_the_trace_alone_counts_as_locked() {
        Row slip = SignatureTable.named("first wheel slips, grip 0.35");
        Row travel = SignatureTable.named("travel runs out at 22 bar");

        assertThat(figuresOf(ReferenceAxle.run(slip.first(), slip.second())).figures())
                .filteredOn(figure -> figure.kind() == FigureKind.SLIP_FORCE)
                .singleElement()
                .returns(Place.ofWheel(2, Side.LEFT), Figure::place)
                .satisfies(figure -> assertThat(figure.value()).isEqualByComparingTo("875"));
        assertThat(figuresOf(ReferenceAxle.run(travel.first(), travel.second())).figures())
                .noneMatch(figure -> figure.kind() == FigureKind.SLIP_FORCE);
    }

    /** Reference axle: 956 N net at 100 N of pedal, so about 9.9 N for each newton; friction 0.50 rises 1.53 times as steeply. */
    @Test
    void the_steepness_of_a_wheel_follows_its_friction() {
        Row row = SignatureTable.named("second wheel grabbing, friction 0.50");
        TestFigures figures = figuresOf(ReferenceAxle.run(row.first(), row.second()));

        double left = figure(figures, FigureKind.STEEPNESS, Place.ofWheel(2, Side.LEFT))
                .value()
                .doubleValue();
        double right = figure(figures, FigureKind.STEEPNESS, Place.ofWheel(2, Side.RIGHT))
                .value()
                .doubleValue();

        assertThat(left).isCloseTo(9.9, within(0.1));
        assertThat(right / left).isCloseTo(1460.0 / 956, within(0.01));
    }

    /** An oval drum (a2 = 0.25) makes 19 % of the peaks and nothing of the mean forces; the regime compares the peaks. */
    @Test
    void a_swing_that_the_displayed_peaks_hide_is_pointed_out_beside_a_trace_too() {
        Row oval = SignatureTable.named("oval drum on the second wheel");
        Row glazed = SignatureTable.named("glazed lining, friction 0.25");

        assertThat(figuresOf(ReferenceAxle.run(oval.first(), oval.second())).doubts())
                .singleElement()
                .returns(DoubtCode.SWING_HIDDEN_BY_PEAK, TestDoubt::code)
                .satisfies(doubt -> assertThat(doubt.says())
                        .startsWith(
                                "the wheels swing by 3 % and 39 % of their highest force within a turn; the peaks differ"
                                        + " by 18 %, the mean forces by about 0 %"));
        assertThat(figuresOf(ReferenceAxle.run(glazed.first(), glazed.second())).doubts())
                .isEmpty();
    }

    @Test
    void a_weak_and_a_swinging_wheel_keep_both_shapes() {
        Trace trace = ReferenceAxle.run(
                ReferenceAxle.HEALTHY.withFriction(0.25), ReferenceAxle.HEALTHY.with(new Swing(0.01, 0, 0.25, 0)));

        assertThat(shapesOf(trace))
                .extracting(ShapeOfLoss::shape, ShapeOfLoss::place)
                .containsExactly(
                        tuple(LossShape.PROPORTIONAL, Place.ofWheel(2, Side.LEFT)),
                        tuple(LossShape.CYCLIC, Place.ofWheel(2, Side.RIGHT)));
    }

    /** 12 bar of friction at 22 bar of reach: at a pedal this light a constant loss and a cap look much alike. */
    @Test
    void what_fits_no_shape_is_undecided() {
        Row tight = SignatureTable.named("tight piston, 12 bar");
        Trace trace = ReferenceAxle.run(
                tight.first().withFriction(0.55),
                tight.second().with(ReferenceAxle.HYDRAULICS.withTravelLimit(40 * ReferenceAxle.BAR)),
                new Application(1.5, 2.0, 4.0, 0.3, 10.5, 160),
                ReferenceAxle.RECORDING);

        assertThat(shapesOf(trace)).extracting(ShapeOfLoss::shape).containsExactly(LossShape.UNDECIDED);
    }

    private static List<ShapeOfLoss> shapesOf(Trace trace) {
        return figuresOf(trace).shapes();
    }

    private static TestFigures figuresOf(Trace trace) {
        return MeasureTest.of(TEST, serviceTest(TWO_PERCENT_OF_READING, traced(null, null, trace)));
    }
}
