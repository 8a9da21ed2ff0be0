package org.axlecause.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static org.axlecause.measurement.RollerTests.TWO_PERCENT_OF_READING;
import static org.axlecause.measurement.RollerTests.rearAxle;
import static org.axlecause.measurement.RollerTests.serviceTest;
import static org.axlecause.measurement.RollerTests.wheel;

import java.util.List;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.Stage;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.TestFigures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RepeatabilityTest {

    private static final Place LEFT = Place.ofWheel(2, Side.LEFT);

    /** Readings of one wheel on three visits (read): 180, 250 and 230 daN; two out of three agree (judgement). */
    @Test
    void the_run_that_stands_apart_from_two_others_is_doubted() {
        List<TestDoubt> doubts = Repeatability.doubts(List.of(run("1", "1800"), run("2", "2500"), run("3", "2300")));

        assertThat(doubts)
                .extracting(
                        TestDoubt::code, TestDoubt::place, doubt -> doubt.test().id())
                .containsExactly(tuple(DoubtCode.NOT_REPEATABLE, LEFT, "1"));
        assertThat(doubts.get(0).says())
                .isEqualTo("arrival runs of the service brake read 1800, 2500, 2300 N: repeat until two runs agree");
    }

    @ParameterizedTest(name = "{0} and {1} N: {2} doubts")
    @CsvSource({"2000, 2200, 0", "2000, 2230, 2", "400, 500, 0", "400, 510, 2"})
    void of_two_runs_that_differ_by_more_than_noise_neither_is_trusted(String first, String second, int doubts) {
        assertThat(Repeatability.doubts(List.of(run("1", first), run("2", second))))
                .hasSize(doubts);
    }

    @Test
    void the_order_of_the_runs_does_not_matter() {
        List<TestDoubt> once = Repeatability.doubts(List.of(run("1", "1800"), run("2", "2500"), run("3", "2300")));

        assertThat(Repeatability.doubts(List.of(run("3", "2300"), run("1", "1800"), run("2", "2500"))))
                .isEqualTo(once);
    }

    @Test
    void a_single_run_is_not_doubted() {
        assertThat(Repeatability.doubts(List.of(run("1", "1800")))).isEmpty();
        assertThat(Repeatability.doubts(List.of())).isEmpty();
    }

    /** The tester's 2 % stays, the scatter of 200 / sqrt(2) lessens by sqrt(2). */
    @Test
    void runs_are_combined_to_their_mean() {
        Repeatability.Together together = Repeatability.together(
                List.of(run("1", "2000"), run("2", "2200")), Stage.ARRIVAL, BrakeSystem.SERVICE, FigureKind.PEAK, LEFT);

        assertThat(together.mean()).isEqualTo(2100);
        assertThat(together.runs()).isEqualTo(2);
        assertThat(together.spread()).isCloseTo(141.42, within(0.01));
        assertThat(together.uncertainty()).isCloseTo(Math.hypot(2200 * 0.02 / Math.sqrt(3), 100), within(0.01));
    }

    @Test
    void what_no_run_shows_is_not_combined() {
        assertThat(Repeatability.together(
                        List.of(run("1", "2000")), Stage.ARRIVAL, BrakeSystem.SERVICE, FigureKind.HOLD, LEFT))
                .isNull();
        assertThat(Repeatability.together(
                        List.of(run("1", "2000")), Stage.FINAL, BrakeSystem.SERVICE, FigureKind.PEAK, LEFT))
                .isNull();
    }

    private static TestFigures run(String id, String peak) {
        return MeasureTest.of(
                new EntryId("/sites/quay-street/lane-1", id),
                serviceTest(
                        TWO_PERCENT_OF_READING,
                        rearAxle(null, wheel(peak, null, null, null), wheel("2000", null, null, null))));
    }
}
