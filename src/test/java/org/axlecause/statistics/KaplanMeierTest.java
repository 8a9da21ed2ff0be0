package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.axlecause.statistics.ConfidenceLevel.OF_95_PERCENT;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class KaplanMeierTest {

    /** Exact fractions by hand from the data; errors and limits as published to that many decimals for these data. */
    @ParameterizedTest(name = "week {0}")
    @CsvSource({
        "6, 21, 3, 6, 7, 0.0763604, 0.6197, 0.9516",
        "7, 17, 1, 96, 119, 0.0869353, 0.5631, 0.9228",
        "10, 15, 1, 64, 85, 0.0963497, 0.5032, 0.8894",
        "13, 12, 1, 176, 255, 0.1068147, 0.4316, 0.8491",
        "16, 11, 1, 32, 51, 0.1140539, 0.3675, 0.8049",
        "22, 7, 1, 64, 119, 0.1282338, 0.2678, 0.7468",
        "23, 6, 1, 160, 357, 0.1345915, 0.1881, 0.6801",
    })
    void the_treated_stay_in_remission_as_published(
            long week, long atRisk, long events, double over, double under, double error, double low, double high) {
        SurvivalStep step = SurvivalCurves.treated().steps().stream()
                .filter(each -> each.time() == week)
                .findFirst()
                .orElseThrow();
        Interval interval = step.logLog(OF_95_PERCENT).orElseThrow();

        assertThat(step.atRisk()).isEqualTo(atRisk);
        assertThat(step.events()).isEqualTo(events);
        assertThat(step.survival()).isCloseTo(over / under, within(1e-15));
        assertThat(step.standardError()).isCloseTo(error, within(0.5e-7));
        assertThat(interval.low()).isCloseTo(low, within(0.5e-4));
        assertThat(interval.high()).isCloseTo(high, within(0.5e-4));
    }

    @ParameterizedTest(name = "week {0}")
    @CsvSource({
        "1, 19, 21",
        "2, 17, 21",
        "3, 16, 21",
        "4, 2, 3",
        "5, 4, 7",
        "7, 4, 7",
        "8, 8, 21",
        "11, 2, 7",
        "12, 4, 21",
        "15, 1, 7",
        "17, 2, 21",
        "22, 1, 21",
        "23, 0, 1",
    })
    void without_censoring_the_curve_is_the_share_that_is_left(long week, double over, double under) {
        assertThat(SurvivalCurves.placebo().survivalAt(week)).isCloseTo(over / under, within(1e-15));
    }

    @Test
    void medians_numbers_and_times_are_those_published() {
        KaplanMeier treated = SurvivalCurves.treated();
        KaplanMeier placebo = SurvivalCurves.placebo();

        assertThat(treated.median()).hasValue(23);
        assertThat(placebo.median()).hasValue(8);
        assertThat(List.of(treated.number(), treated.events(), treated.timeAtRisk()))
                .containsExactly(21L, 9L, 359L);
        assertThat(List.of(placebo.number(), placebo.events(), placebo.timeAtRisk()))
                .containsExactly(21L, 21L, 182L);
    }

    @Test
    void half_left_is_the_median_even_where_the_product_is_rounded() {
        KaplanMeier curve = KaplanMeier.of(List.of(
                new SurvivalTime(1, 1, 0),
                new SurvivalTime(2, 1, 0),
                new SurvivalTime(3, 1, 0),
                new SurvivalTime(4, 1, 0),
                new SurvivalTime(5, 1, 0),
                new SurvivalTime(6, 5, 0)));

        assertThat(curve.median()).hasValue(5);
    }

    @Test
    void a_curve_that_stays_above_one_half_has_no_median() {
        assertThat(KaplanMeier.of(List.of(new SurvivalTime(30, 1, 99))).median())
                .isEmpty();
    }

    @Test
    void those_censored_at_a_time_were_at_risk_at_that_time() {
        KaplanMeier curve = SurvivalCurves.treated();

        assertThat(curve.atRiskAt(6)).isEqualTo(21);
        assertThat(curve.atRiskAt(7)).isEqualTo(17);
        assertThat(curve.atRiskAt(8)).isEqualTo(16);
        assertThat(curve.atRiskAt(36)).isZero();
    }

    @Test
    void counts_may_come_in_any_order_and_in_parts() {
        KaplanMeier whole = KaplanMeier.of(List.of(new SurvivalTime(1, 2, 1), new SurvivalTime(3, 4, 5)));
        KaplanMeier parts = KaplanMeier.of(
                List.of(new SurvivalTime(3, 1, 5), new SurvivalTime(1, 2, 1), new SurvivalTime(3, 3, 0)));

        assertThat(parts).isEqualTo(whole);
    }

    @Test
    void before_the_first_event_nothing_is_lost_and_after_the_last_of_all_nothing_is_known() {
        KaplanMeier curve = KaplanMeier.of(List.of(new SurvivalTime(1, 0, 1), new SurvivalTime(5, 3, 0)));

        assertThat(curve.survivalAt(4)).isEqualTo(1);
        assertThat(curve.steps().get(0).logLog(OF_95_PERCENT)).hasValue(new Interval(1, 1));
        assertThat(curve.steps().get(1).survival()).isZero();
        assertThat(curve.steps().get(1).standardError()).isZero();
        assertThat(curve.steps().get(1).logLog(OF_95_PERCENT)).isEmpty();
    }

    @Test
    void a_curve_of_nobody_is_empty() {
        KaplanMeier nobody = KaplanMeier.of(List.of());

        assertThat(nobody.number()).isZero();
        assertThat(nobody.survivalAt(100)).isEqualTo(1);
        assertThat(nobody.median()).isEmpty();
    }

    @Test
    void negative_counts_and_times_are_refused() {
        assertThatIllegalArgumentException().isThrownBy(() -> new SurvivalTime(-1, 0, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new SurvivalTime(1, -1, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new SurvivalTime(1, 0, -1));
    }
}
