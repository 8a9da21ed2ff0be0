package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class LogRankTest {

    /** The remission data: chi-squared of 16.79 is published; more digits by the formula in sixty decimals. */
    @Test
    void the_treated_and_the_others_differ_as_published() {
        LogRank logRank = LogRank.of(List.of(SurvivalCurves.treated(), SurvivalCurves.placebo()));

        assertThat(logRank.groups().get(0).number()).isEqualTo(21);
        assertThat(logRank.groups().get(0).observed()).isEqualTo(9);
        assertThat(logRank.groups().get(0).expected()).isCloseTo(19.2505, within(0.5e-4));
        assertThat(logRank.groups().get(0).variance()).isCloseTo(6.25696, within(0.5e-5));
        assertThat(logRank.groups().get(1).observed()).isEqualTo(21);
        assertThat(logRank.groups().get(1).expected()).isCloseTo(30 - 19.2505, within(0.5e-4));
        assertThat(logRank.chiSquared()).isCloseTo(16.79294, within(0.5e-5));
        assertThat(logRank.degreesOfFreedom()).isEqualTo(1);
        assertThat(logRank.pValue()).isCloseTo(4.17e-5, within(0.5e-7));
    }

    /** By hand: at day 1 one of 2, 2 and 2; expected a third each, variance 2/9, covariance -1/9. */
    @Test
    void three_groups_have_two_degrees_of_freedom() {
        LogRank logRank = LogRank.of(List.of(one(1, 1), one(0, 2), one(0, 2)));

        assertThat(logRank.groups()).extracting(LogRank.Group::expected).containsOnly(1.0 / 3);
        assertThat(logRank.groups())
                .allSatisfy(group -> assertThat(group.variance()).isCloseTo(2.0 / 9, within(1e-15)));
        assertThat(logRank.chiSquared()).isCloseTo(2, within(1e-14));
        assertThat(logRank.degreesOfFreedom()).isEqualTo(2);
        assertThat(logRank.pValue()).isCloseTo(Math.exp(-1), within(1e-14));
    }

    @Test
    void a_group_that_was_never_at_risk_takes_no_part() {
        LogRank two = LogRank.of(List.of(SurvivalCurves.treated(), SurvivalCurves.placebo()));
        LogRank three =
                LogRank.of(List.of(KaplanMeier.of(List.of()), SurvivalCurves.treated(), SurvivalCurves.placebo()));

        assertThat(three.degreesOfFreedom()).isEqualTo(1);
        assertThat(three.chiSquared()).isCloseTo(two.chiSquared(), within(1e-12));
    }

    @Test
    void the_order_of_groups_does_not_matter() {
        LogRank one = LogRank.of(List.of(one(1, 5), one(3, 2), one(0, 9), SurvivalCurves.treated()));
        LogRank other = LogRank.of(List.of(SurvivalCurves.treated(), one(0, 9), one(3, 2), one(1, 5)));

        assertThat(other.chiSquared()).isCloseTo(one.chiSquared(), within(1e-12));
    }

    @Test
    void without_events_nothing_differs() {
        LogRank logRank = LogRank.of(List.of(one(0, 5), one(0, 7)));

        assertThat(logRank.degreesOfFreedom()).isZero();
        assertThat(logRank.pValue()).isEqualTo(1);
    }

    @Test
    void one_group_alone_is_refused() {
        assertThatIllegalArgumentException().isThrownBy(() -> LogRank.of(List.of(one(1, 1))));
    }

    private static KaplanMeier one(long events, long censored) {
        return KaplanMeier.of(List.of(new SurvivalTime(1, events, censored)));
    }
}
