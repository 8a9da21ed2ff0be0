package org.axlecause.policy;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.axlecause.regimes.Regimes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Clauses held to the law of the regimes that the sites judge by. */
class LawCheckTest {

    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    private final LawCheck lawCheck = new LawCheck(Regimes.released());

    /** Czech decree 211/2018 Coll., item 1.2.1: no more than 10 % to either side of the mean, 18.18 % of the highest force. */
    @ParameterizedTest
    @CsvSource({
        "fluctuation-fault, 19, true",
        "fluctuation-fault, 18, false",
        "retest-fluctuation, 19, true",
        "retest-fluctuation, 18, false",
        "retest-fluctuation-disc, 19, true"
    })
    void a_swing_within_a_turn_is_no_fault_for_the_workshop_only_where_the_law_lets_it_pass(
            String clause, BigDecimal percent, boolean weaker) {
        assertThat(weakerThanLaw(percentage(clause, percent), "cz-periodic").isPresent())
                .isEqualTo(weaker);
    }

    @Test
    void the_refusal_names_the_regime_its_bound_and_its_source() {
        assertThat(weakerThanLaw(percentage("fluctuation-fault", new BigDecimal("30")), "gb-annual", "cz-periodic"))
                .hasValueSatisfying(words -> assertThat(words)
                        .contains("fluctuation-fault", "cz-periodic", "at most 18.18 %", "211/2018", "as strict"));
    }

    @Test
    void where_the_law_leaves_the_swing_to_the_inspectors_eye_the_workshop_is_free() {
        assertThat(weakerThanLaw(percentage("fluctuation-fault", new BigDecimal("60")), "gb-annual"))
                .isEmpty();
    }

    private Optional<String> weakerThanLaw(ClauseWanted clause, String... regimes) {
        return lawCheck.weakerThanLaw(clause, List.of(regimes), DAY);
    }

    private static ClauseWanted percentage(String clause, BigDecimal percent) {
        return new ClauseWanted(clause, percent, "%", null, null, null, null, null, null, null, null, null, null, null);
    }
}
