package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;

class ParetoTest {

    @Test
    void what_comes_most_comes_first_and_equals_go_by_name() {
        Pareto pareto = Pareto.of(Map.of("b", 25L, "a", 25L, "c", 40L, "d", 10L, "never", 0L));

        assertThat(pareto.all()).isEqualTo(100);
        assertThat(pareto.lines())
                .containsExactly(
                        new Pareto.Line("c", 40, 0.4, 0.4),
                        new Pareto.Line("a", 25, 0.25, 0.65),
                        new Pareto.Line("b", 25, 0.25, 0.9),
                        new Pareto.Line("d", 10, 0.1, 1));
    }

    @Test
    void nothing_counted_gives_no_line() {
        assertThat(Pareto.of(Map.of()).lines()).isEmpty();
        assertThat(Pareto.of(Map.of("never", 0L)).lines()).isEmpty();
    }

    /** By hand: a tenth and a fifth of a thousand are expected to meet in twenty. */
    @Test
    void two_causes_that_meet_twice_as_often_as_by_chance() {
        CoOccurrence met = new CoOccurrence(40, 100, 200, 1000);

        assertThat(met.againstChance().orElseThrow().expected()).isCloseTo(20, within(1e-12));
        assertThat(met.againstChance().orElseThrow().ratio()).isCloseTo(2, within(1e-12));
        assertThat(met.significance().orElseThrow().pValue())
                .isEqualTo(new TwoProportions(new Proportion(40, 100), new Proportion(160, 900))
                        .significance()
                        .pValue());
    }

    @Test
    void a_cause_that_never_came_meets_nothing() {
        CoOccurrence never = new CoOccurrence(0, 0, 200, 1000);

        assertThat(never.againstChance()).isEmpty();
        assertThat(never.significance()).isEmpty();
    }

    @Test
    void counts_that_contradict_each_other_are_refused() {
        assertThatIllegalArgumentException().isThrownBy(() -> new CoOccurrence(5, 4, 9, 100));
        assertThatIllegalArgumentException().isThrownBy(() -> new CoOccurrence(0, 60, 60, 100));
    }
}
