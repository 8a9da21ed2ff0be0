package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

class StepChangeTest {

    @Test
    void a_step_is_found_where_it_is() {
        StepChange change =
                StepChange.strongest(of(100, 10, 10, 10, 10, 30, 30, 30)).orElseThrow();

        assertThat(change.first()).isEqualTo(4);
        assertThat(change.before()).isEqualTo(new Proportion(40, 400));
        assertThat(change.after()).isEqualTo(new Proportion(90, 300));
        assertThat(change.pValue()).isLessThan(1e-8);
    }

    /** By hand: the only split of two periods is the comparison of the two. */
    @Test
    void two_periods_are_one_comparison() {
        StepChange change = StepChange.strongest(of(50, 20, 10)).orElseThrow();

        assertThat(change.pValue()).isCloseTo(0.02909633, within(0.5e-8));
    }

    @Test
    void the_more_splits_are_tried_the_less_the_best_one_proves() {
        StepChange two = StepChange.strongest(of(50, 20, 10)).orElseThrow();
        StepChange four = StepChange.strongest(of(25, 10, 10, 5, 5)).orElseThrow();

        assertThat(four.first()).isEqualTo(2);
        assertThat(four.pValue()).isCloseTo(3 * two.pValue(), within(1e-12));
    }

    @Test
    void even_shares_show_no_change() {
        assertThat(StepChange.strongest(of(100, 10, 10, 10)).orElseThrow().pValue())
                .isEqualTo(1);
    }

    @Test
    void empty_periods_neither_hide_a_step_nor_count_as_tries() {
        List<Proportion> withGaps =
                List.of(new Proportion(0, 0), new Proportion(20, 50), new Proportion(0, 0), new Proportion(10, 50));

        StepChange change = StepChange.strongest(withGaps).orElseThrow();

        assertThat(change.first()).isEqualTo(3);
        assertThat(change.pValue()).isCloseTo(0.02909633, within(0.5e-8));
    }

    @Test
    void one_period_with_cases_can_show_no_change() {
        assertThat(StepChange.strongest(List.of(new Proportion(1, 10), new Proportion(0, 0))))
                .isEmpty();
        assertThat(StepChange.strongest(List.of())).isEmpty();
    }

    private static List<Proportion> of(long size, long... counts) {
        return LongStream.of(counts)
                .mapToObj(count -> new Proportion(count, size))
                .toList();
    }
}
