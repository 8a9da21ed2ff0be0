package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;
import static org.axlecause.statistics.ConfidenceLevel.OF_95_PERCENT;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Against limits of an independent library (rows 18/20 to 0/30) and of the formulas of Wilson 1927 and of Clopper and Pearson
 * 1934 worked with more digits.
 */
class ProportionTest {

    /** The limits are given to nine decimals. */
    private static final Offset<Double> LAST_DIGIT = within(0.6e-9);

    @ParameterizedTest(name = "{0} of {1}")
    @CsvSource({
        "81, 263, 0.255288520, 0.366209577, 0.252736746, 0.367621923",
        "15, 148, 0.062386400, 0.160487242, 0.057844010, 0.161650490",
        "0, 20, 0, 0.161125158, 0, 0.168433471",
        "1, 29, 0.006113214, 0.171755219, 0.000872647, 0.177644295",
        "18, 20, 0.698966355, 0.972133519, 0.683017286, 0.987651473",
        "4, 20, 0.080657663, 0.416017432, 0.057333997, 0.436614003",
        "4, 200, 0.007804426, 0.050287087, 0.005475566, 0.050413609",
        "190, 200, 0.910421852, 0.972617354, 0.909972462, 0.975765835",
        "1, 30, 0.005908590, 0.166703910, 0.000843571, 0.172169456",
        "29, 30, 0.833296090, 0.994091410, 0.827830544, 0.999156429",
        "0, 30, 0, 0.113513393, 0, 0.115703308",
        "19, 38, 0.348499284, 0.651500716, 0.333789006, 0.666210994",
        "10, 10, 0.722467200, 1, 0.691502892, 1",
    })
    void the_limits_of_a_share_are_those_published(
            long count, long of, double wilsonLow, double wilsonHigh, double exactLow, double exactHigh) {
        Proportion proportion = new Proportion(count, of);

        Interval wilson = proportion.wilson(OF_95_PERCENT);
        Interval exact = proportion.clopperPearson(OF_95_PERCENT);

        assertThat(wilson.low()).isCloseTo(wilsonLow, LAST_DIGIT);
        assertThat(wilson.high()).isCloseTo(wilsonHigh, LAST_DIGIT);
        assertThat(exact.low()).isCloseTo(exactLow, LAST_DIGIT);
        assertThat(exact.high()).isCloseTo(exactHigh, LAST_DIGIT);
    }

    @Test
    void ten_million_cases_are_no_trouble() {
        Proportion proportion = new Proportion(2_500_000, 10_000_000);

        Interval wilson = proportion.wilson(OF_95_PERCENT);
        Interval exact = proportion.clopperPearson(OF_95_PERCENT);

        assertThat(wilson.high() - wilson.low()).isCloseTo(2 * 1.959963984540054 * 1.369306e-4, within(1e-9));
        assertThat(exact.low()).isCloseTo(wilson.low(), within(1e-7));
        assertThat(exact.high()).isCloseTo(wilson.high(), within(1e-7));
    }

    @Test
    void of_no_cases_nothing_is_known() {
        Proportion none = new Proportion(0, 0);

        assertThatIllegalStateException().isThrownBy(none::share).withMessageContaining("No cases");
        assertThat(none.wilson(OF_95_PERCENT)).isEqualTo(new Interval(0, 1));
        assertThat(none.clopperPearson(OF_95_PERCENT)).isEqualTo(new Interval(0, 1));
    }

    @Test
    void more_than_all_and_fewer_than_none_are_refused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Proportion(3, 2))
                .withMessageStartingWith("3 of 2");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Proportion(-1, 2))
                .withMessageStartingWith("-1 of 2");
        assertThatIllegalArgumentException().isThrownBy(() -> new ConfidenceLevel(1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Interval(1, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new Interval(Double.NaN, 0));
    }
}
