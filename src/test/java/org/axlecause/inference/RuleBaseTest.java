package org.axlecause.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.axlecause.facts.Because;
import org.axlecause.facts.Complaint;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.Reason;
import org.axlecause.facts.Symptom;
import org.junit.jupiter.api.Test;

class RuleBaseTest {

    private static final RuleBase RULES = RuleBench.all();

    @Test
    void a_complaint_alone_becomes_a_symptom_with_a_ground_that_can_be_explained() {
        List<Symptom> symptoms = RULES.conclude(List.of(new Complaint(ComplaintCode.SPONGY_PEDAL)))
                .of(Symptom.class);

        assertThat(symptoms).singleElement().satisfies(symptom -> {
            Reason reason = RULES.explain(symptom.because());
            assertThat(reason.rule()).isEqualTo(symptom.because().rule());
            assertThat(reason.says()).endsWith(".");
            assertThat(reason.source()).isNotBlank();
            assertThat(reason.facts()).containsExactly("complaint: spongy-pedal");
        });
    }

    @Test
    void nothing_is_concluded_from_nothing() {
        assertThat(RULES.conclude(List.of()).of(Symptom.class)).isEmpty();
    }

    @Test
    void a_ground_that_names_no_rule_is_refused() {
        assertThatThrownBy(() -> RULES.explain(new Because("SYM-000", List.of())))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("SYM-000");
    }

    @Test
    void rules_that_go_on_for_ever_are_stopped_and_the_next_case_is_not_touched() {
        RuleBase endless = RuleBench.endless();

        assertThatThrownBy(() -> endless.conclude(List.of(1)))
                .isInstanceOf(RunawayRules.class)
                .hasMessageContaining("50 times");
        assertThat(endless.conclude(List.of("no number")).of(Symptom.class)).isEmpty();
    }
}
