package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** The worked examples of the NIST/SEMATECH e-Handbook of Statistical Methods, chapter 6.3. */
class ControlChartTest {

    /** 6.3.3.2: defective of thirty samples of fifty. */
    @Test
    void the_chart_of_shares_finds_samples_fifteen_and_twenty_three() {
        ControlChart chart = ControlChart.ofShares(LongStream.of(
                        12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9, 12,
                        7, 13, 9, 6)
                .mapToObj(count -> new Proportion(count, 50))
                .toList());

        assertThat(chart.centre()).isCloseTo(0.231333, within(0.5e-6));
        assertThat(chart.points().get(0).limits().high()).isCloseTo(0.410239, within(0.5e-6));
        assertThat(chart.points().get(0).limits().low()).isCloseTo(0.052428, within(0.5e-6));
        assertThat(chart.out()).containsExactly(14, 22);
    }

    /** 6.3.3.1: defects on 25 wafers; 28 lies on the limit. */
    @Test
    void the_chart_of_counts_finds_wafer_twenty_four() {
        ControlChart chart = ControlChart.ofCounts(List.of(
                16L, 14L, 28L, 16L, 12L, 20L, 10L, 12L, 10L, 17L, 19L, 17L, 14L, 16L, 15L, 13L, 14L, 16L, 11L, 20L, 11L,
                19L, 16L, 31L, 13L));

        assertThat(chart.centre()).isEqualTo(16);
        assertThat(chart.points()).extracting(ControlChart.Point::limits).containsOnly(new Interval(4, 28));
        assertThat(chart.out()).containsExactly(23);
    }

    /** 6.3.2.2: flow rates. */
    @Test
    void the_chart_of_single_values_takes_its_limits_from_moving_ranges() {
        List<Double> flows = List.of(49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1);

        ControlChart chart = ControlChart.ofIndividuals(flows);

        assertThat(chart.centre()).isCloseTo(50.81, within(1e-12));
        assertThat(chart.points().get(0).limits().high()).isCloseTo(55.8041, within(0.5e-4));
        assertThat(chart.points().get(0).limits().low()).isCloseTo(45.8159, within(0.5e-4));
        assertThat(chart.out()).isEmpty();
        assertThat(ControlChart.movingRanges(flows).stream()
                        .mapToDouble(Double::doubleValue)
                        .average()
                        .orElseThrow())
                .isCloseTo(1.87778, within(0.5e-5));
    }

    @Test
    void each_period_has_the_limits_of_its_own_size() {
        ControlChart chart = ControlChart.ofShares(List.of(new Proportion(10, 100), new Proportion(40, 400)));

        assertThat(chart.points().get(0).limits().high()).isCloseTo(0.1 + 3 * 0.03, within(1e-12));
        assertThat(chart.points().get(1).limits().high()).isCloseTo(0.1 + 3 * 0.015, within(1e-12));
    }

    @Test
    void a_period_without_cases_has_no_value_and_is_not_out() {
        ControlChart chart = ControlChart.ofShares(List.of(new Proportion(1, 10), new Proportion(0, 0)));

        assertThat(chart.points().get(1)).isEqualTo(new ControlChart.Point(null, new Interval(0, 1), false));
    }

    @Test
    void without_any_cases_there_is_no_chart() {
        assertThatIllegalStateException().isThrownBy(() -> ControlChart.ofShares(List.of(new Proportion(0, 0))));
    }
}
