package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.axlecause.statistics.Funnel.Verdict;
import org.junit.jupiter.api.Test;

/** Against limits worked from the formulas of Spiegelhalter 2005, Stat. Med. 24:1185, to six decimals. */
class FunnelTest {

    private static final Offset<Double> LAST_DIGIT = within(0.6e-6);

    @Test
    void the_normal_limits_of_a_share_are_those_of_the_formula() {
        assertLimits(FunnelLimits.normalShare(0.10, 100, 1), 0.007293, 0.041201, 0.158799, 0.192707);
        assertLimits(FunnelLimits.normalShare(0.10, 400, 1), 0.053647, 0.070601, 0.129399, 0.146353);
    }

    @Test
    void the_exact_limits_of_a_share_lie_between_the_steps_of_the_binomial() {
        assertLimits(FunnelLimits.exactShare(0.10, 100), 0.014179, 0.040381, 0.157719, 0.198357);
    }

    /** By hand for one expected event: F(0) = exp(-1), F(3) = 0.981012, F(4) = 0.996340, F(5) = 0.999406. */
    @Test
    void the_exact_limits_of_a_ratio_lie_between_the_steps_of_the_poisson() {
        double e = Math.exp(-1);
        double three = e * (1 + 1 + 1 / 2.0 + 1 / 6.0);
        double two = e * 2.5;
        double four = three + e / 24;
        double five = four + e / 120;

        FunnelLimits limits = FunnelLimits.exactRatio(1);

        assertThat(limits.inner().low()).isZero();
        assertThat(limits.outer().low()).isZero();
        assertThat(limits.inner().high()).isCloseTo(3 - (three - 0.975) / (three - two), within(1e-10));
        assertThat(limits.outer().high()).isCloseTo(5 - (five - 0.999) / (five - four), within(1e-10));
    }

    @Test
    void exact_and_normal_limits_meet_where_units_are_large() {
        FunnelLimits exact = FunnelLimits.exactRatio(40_000);
        FunnelLimits normal = FunnelLimits.normalRatio(40_000, 1);

        assertThat(normal.inner().high()).isCloseTo(1 + 1.959963984540054 / 200, within(1e-12));
        assertThat(exact.inner().high()).isCloseTo(normal.inner().high(), within(1e-4));
        assertThat(exact.outer().low()).isCloseTo(normal.outer().low(), within(1e-4));
    }

    /** Exact tails of the binomial with 20 cases at one half: 1 of 1048576 for none, 21 for at most one, 211 for two. */
    @Test
    void a_unit_is_judged_by_the_exact_tail() {
        Funnel funnel = Funnel.ofShares(0.5, List.of(share("five", 5, 20), share("mean", 10, 20), share("six", 6, 20)));

        assertThat(funnel.overdispersion()).isGreaterThan(1);
        assertThat(Funnel.ofShares(0.5, List.of(share("two", 2, 20))).points())
                .singleElement()
                .satisfies(point -> {
                    assertThat(point.pValue()).isCloseTo(2 * 211 / 1048576.0, within(1e-14));
                    assertThat(point.verdict()).isEqualTo(Verdict.BELOW_99_8_PERCENT);
                    assertThat(point.deviation()).isCloseTo(-8 / Math.sqrt(5), within(1e-13));
                });
    }

    @Test
    void on_each_side_the_verdict_names_the_limit_that_is_passed() {
        assertThat(Stream.of(50, 75, 100, 125, 160)
                        .map(observed -> Funnel.ofRatios(List.of(new Funnel.Count("site", observed, 100)))
                                .points()
                                .get(0)
                                .verdict()))
                .containsExactly(
                        Verdict.BELOW_99_8_PERCENT,
                        Verdict.BELOW_95_PERCENT,
                        Verdict.WITHIN,
                        Verdict.ABOVE_95_PERCENT,
                        Verdict.ABOVE_99_8_PERCENT);
    }

    @Test
    void a_small_site_with_twice_the_expected_is_within() {
        assertThat(Funnel.ofRatios(List.of(new Funnel.Count("small", 2, 1)))
                        .points()
                        .get(0)
                        .verdict())
                .isEqualTo(Verdict.WITHIN);
    }

    /** By hand: deviations 1 to 11 lose 1 and 11 to 2 and 10 (tenths by R's seventh rule): (506 - 122 + 104) / 11. */
    @Test
    void overdispersion_is_the_mean_square_with_the_outer_tenths_drawn_in() {
        double[] deviations = IntStream.rangeClosed(1, 11).asDoubleStream().toArray();

        assertThat(Funnel.overdispersion(deviations)).isCloseTo(488.0 / 11, within(1e-12));
    }

    @Test
    void units_that_differ_less_than_by_chance_do_not_narrow_the_limits() {
        assertThat(Funnel.overdispersion(0.1, -0.1, 0.2, -0.2)).isEqualTo(1);
        assertThat(Funnel.overdispersion(9)).as("of one unit").isEqualTo(1);
    }

    @Test
    void where_all_units_scatter_none_of_them_stands_out() {
        List<Funnel.Count> scattered = IntStream.range(0, 20)
                .mapToObj(index -> new Funnel.Count("site " + index, index % 2 == 0 ? 60 : 140, 100))
                .toList();

        Funnel funnel = Funnel.ofRatios(scattered);

        assertThat(funnel.overdispersion()).isCloseTo(16, within(1e-12));
        assertThat(funnel.points()).extracting(Funnel.Point::verdict).containsOnly(Verdict.WITHIN);
        assertThat(funnel.points().get(0).limits().inner().high())
                .isCloseTo(1 + 1.959963984540054 * 0.4, within(1e-12));
    }

    @Test
    void sizes_of_nothing_and_targets_that_are_no_share_are_refused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Funnel.Count("empty", 0, 0))
                .withMessageContaining("empty");
        assertThatIllegalArgumentException().isThrownBy(() -> Funnel.ofShares(1, List.of()));
    }

    private static Funnel.Count share(String name, long count, double of) {
        return new Funnel.Count(name, count, of);
    }

    private static void assertLimits(
            FunnelLimits limits, double outerLow, double innerLow, double innerHigh, double outerHigh) {
        assertThat(limits.outer().low()).isCloseTo(outerLow, LAST_DIGIT);
        assertThat(limits.inner().low()).isCloseTo(innerLow, LAST_DIGIT);
        assertThat(limits.inner().high()).isCloseTo(innerHigh, LAST_DIGIT);
        assertThat(limits.outer().high()).isCloseTo(outerHigh, LAST_DIGIT);
    }
}
