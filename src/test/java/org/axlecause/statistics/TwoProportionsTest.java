package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.axlecause.statistics.ConfidenceLevel.OF_95_PERCENT;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TwoProportionsTest {

    /** Newcombe 1998, Stat. Med. 17:873, table II, method 10; four decimals there. */
    @ParameterizedTest(name = "{0}/{1} less {2}/{3}")
    @CsvSource({
        "56, 70, 48, 80, 0.0524, 0.3339",
        "9, 10, 3, 10, 0.1705, 0.8090",
        "6, 7, 2, 7, 0.0582, 0.8062",
        "5, 56, 0, 29, -0.0381, 0.1926",
        "0, 10, 0, 20, -0.1611, 0.2775",
        "0, 10, 0, 10, -0.2775, 0.2775",
        "10, 10, 0, 20, 0.6791, 1.0000",
        "10, 10, 0, 10, 0.6075, 1.0000",
    })
    void the_limits_of_a_difference_are_those_published(
            long count, long of, long otherCount, long other, double low, double high) {
        Interval interval = between(count, of, otherCount, other).newcombe(OF_95_PERCENT);

        assertThat(interval.low()).isCloseTo(low, within(0.5e-4));
        assertThat(interval.high()).isCloseTo(high, within(0.5e-4));
    }

    /** Fisher 1935, The Design of Experiments: the lady tasting tea, 17 of 70 on each side. */
    @Test
    void three_cups_of_four_prove_no_taste() {
        Significance significance = between(3, 4, 1, 4).significance();

        assertThat(significance.method()).isEqualTo(Significance.Method.FISHER_EXACT);
        assertThat(significance.statistic()).isNull();
        assertThat(significance.pValue()).isCloseTo(34.0 / 70, within(1e-14));
    }

    /** Fisher 1962, J. R. Stat. Soc. A 125:604: convictions of twins of criminals, worked by hand from the binomials. */
    @Test
    void ten_of_thirteen_and_two_of_seventeen_differ() {
        double tables = 86_493_225;

        double pValue = between(10, 13, 2, 17).fisherExact().pValue();

        // Ways to choose 12 of 30: counts 10, 11 and 12 among the 13, and 0 at the other end, are no likelier.
        assertThat(pValue)
                .isCloseTo((286 * 136 + 78 * 17 + 13 + 6188) / tables, within(1e-15))
                .isCloseTo(0.0005367, within(0.5e-7));
    }

    /** By hand: 20 and 10 of 50 each; expected 15 and 35, so 25/15 + 25/35, twice. */
    @Test
    void counts_of_five_and_more_are_told_by_chi_squared() {
        Significance significance = between(20, 50, 10, 50).significance();

        assertThat(significance.method()).isEqualTo(Significance.Method.CHI_SQUARED);
        assertThat(significance.statistic()).isCloseTo(100.0 / 21, within(1e-13));
        assertThat(significance.pValue()).isCloseTo(0.02909633, within(0.5e-8));
    }

    @ParameterizedTest(name = "{0}/{1} and {2}/{3}: {4}")
    @CsvSource({
        "10, 50, 0, 50, CHI_SQUARED",
        "9, 50, 0, 50, FISHER_EXACT",
        "50, 50, 40, 50, CHI_SQUARED",
        "50, 50, 41, 50, FISHER_EXACT",
    })
    void fewer_than_five_expected_are_told_by_fisher(
            long count, long of, long otherCount, long other, Significance.Method method) {
        assertThat(between(count, of, otherCount, other).significance().method())
                .isEqualTo(method);
    }

    @Test
    void groups_without_a_single_count_do_not_differ() {
        assertThat(between(0, 5_000_000, 0, 5_000_000).significance().pValue()).isEqualTo(1);
        assertThat(between(50, 50, 60, 60).chiSquared().pValue()).isEqualTo(1);
    }

    /** Halving the tail of a normal distribution: chi-squared of 400 is z = 20, 5.507e-89 two-sided (Mills' ratio). */
    @Test
    void a_tiny_probability_is_not_told_as_zero() {
        double mills = 2 * Math.exp(-200) / Math.sqrt(2 * Math.PI) / 20 * (1 - 1.0 / 400 + 3.0 / 160_000);

        assertThat(TwoProportions.upperTail(400, 1)).isCloseTo(mills, within(mills * 1e-6));
    }

    @Test
    void a_group_without_cases_is_refused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> between(1, 2, 0, 0))
                .withMessageContaining("2 and 0");
    }

    private static TwoProportions between(long count, long of, long otherCount, long other) {
        return new TwoProportions(new Proportion(count, of), new Proportion(otherCount, other));
    }
}
