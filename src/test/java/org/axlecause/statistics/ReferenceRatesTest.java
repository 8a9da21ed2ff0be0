package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.axlecause.statistics.ConfidenceLevel.OF_95_PERCENT;

import java.util.List;
import org.axlecause.statistics.ReferenceRates.Standardised;
import org.axlecause.statistics.ReferenceRates.Stratum;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReferenceRatesTest {

    private static final ReferenceRates RATES =
            ReferenceRates.of(List.of(stratum("young", 20, 1000), stratum("old", 100, 500), stratum("old", 100, 500)));

    /** By hand: a tenth of the young and a fifth of the old. */
    @Test
    void a_site_with_old_vehicles_is_expected_to_have_more() {
        Standardised standardised = RATES.standardise(List.of(stratum("young", 3, 100), stratum("old", 41, 200)));

        assertThat(standardised.observed()).isEqualTo(44);
        assertThat(standardised.expected()).isCloseTo(2 + 40, within(1e-12));
        assertThat(standardised.cases()).isEqualTo(300);
        assertThat(standardised.withoutReference()).isZero();
    }

    @Test
    void what_the_standard_population_lacks_counts_on_neither_side() {
        Standardised standardised = RATES.standardise(List.of(stratum("young", 3, 100), stratum("unknown", 9, 10)));

        assertThat(standardised).isEqualTo(new Standardised(3, 2.0, 100, 10));
    }

    @Test
    void the_standard_population_has_what_is_expected_of_it() {
        Standardised standardised = RATES.standardise(List.of(stratum("young", 20, 1000), stratum("old", 200, 1000)));

        assertThat(standardised.expected()).isCloseTo(220, within(1e-12));
    }

    /** Exact Poisson limits of a count, as tabled by Ulm 1990, Am. J. Epidemiol. 131:373, and in textbooks. */
    @ParameterizedTest(name = "{0} events")
    @CsvSource({
        "0, 0, 3.69",
        "1, 0.03, 5.57",
        "2, 0.24, 7.22",
        "10, 4.80, 18.39",
        "100, 81.36, 121.63",
    })
    void the_limits_of_a_count_are_those_tabled(long observed, double low, double high) {
        Interval one = new ObservedExpected(observed, 1).garwood(OF_95_PERCENT);
        Interval half = new ObservedExpected(observed, 2).garwood(OF_95_PERCENT);

        assertThat(one.low()).isCloseTo(low, within(0.005));
        assertThat(one.high()).isCloseTo(high, within(0.005));
        assertThat(half.high()).isCloseTo(one.high() / 2, within(1e-12));
    }

    @Test
    void nothing_expected_is_no_ratio() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new ObservedExpected(1, 0))
                .withMessageContaining("expected");
    }

    private static Stratum stratum(String name, long events, long cases) {
        return new Stratum(name, new Proportion(events, cases));
    }
}
