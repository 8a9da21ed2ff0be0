package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class FalseDiscoveryTest {

    /** Benjamini and Hochberg 1995, J. R. Stat. Soc. B 57:289, section 4: fifteen hypotheses of a trial. */
    private static final FalseDiscovery FIFTEEN = FalseDiscovery.of(
            0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.3240, 0.4262, 0.5719, 0.6528,
            0.7590, 1.000);

    @Test
    void the_published_fifteen_give_four_discoveries() {
        assertThat(FIFTEEN.discoveries(0.05).stream().filter(counts -> counts)).hasSize(4);
        assertThat(FIFTEEN.discoveries(0.05).subList(0, 4)).containsOnly(true);
        assertThat(FIFTEEN.pValues().stream().filter(pValue -> pValue <= 0.05 / 15))
                .as("one by one with Bonferroni's bound")
                .hasSize(3);
    }

    @Test
    void the_published_fifteen_are_adjusted() {
        assertClose(
                FIFTEEN.adjusted(),
                1e-6,
                0.0015,
                0.003,
                0.0095,
                0.035625,
                0.0603,
                0.063857,
                0.063857,
                0.0645,
                0.0765,
                0.486,
                0.581182,
                0.714875,
                0.753231,
                0.813214,
                1);
    }

    /** A second row of an independent library, to seven digits. */
    @Test
    void a_second_row_is_adjusted() {
        assertClose(
                FalseDiscovery.of(0.001, 0.002, 0.003, 0.004, 0.005, 0.05, 0.06, 0.07, 0.08, 0.09)
                        .adjusted(),
                0.5e-7,
                0.01,
                0.01,
                0.01,
                0.01,
                0.01,
                0.0833333,
                0.0857143,
                0.0875,
                0.0888889,
                0.09);
    }

    @Test
    void the_order_of_the_comparisons_is_kept() {
        FalseDiscovery mixed = FalseDiscovery.of(0.04, 0.001, 0.9, 0.02);

        assertClose(mixed.adjusted(), 1e-12, 0.16 / 3, 0.004, 0.9, 0.04);
        assertThat(mixed.discoveries(0.05)).containsExactly(false, true, false, true);
    }

    @Test
    void no_comparison_is_no_discovery() {
        assertThat(new FalseDiscovery(List.of()).discoveries(0.05)).isEmpty();
    }

    @Test
    void what_is_no_probability_is_refused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> FalseDiscovery.of(0.5, 1.5))
                .withMessageContaining("1.5");
        assertThatIllegalArgumentException().isThrownBy(() -> FalseDiscovery.of(Double.NaN));
    }

    private static void assertClose(List<Double> adjusted, double tolerance, double... expected) {
        assertThat(adjusted).hasSize(expected.length);
        for (int index = 0; index < expected.length; index++) {
            assertThat(adjusted.get(index)).as("adjusted %d", index + 1).isCloseTo(expected[index], within(tolerance));
        }
    }
}
