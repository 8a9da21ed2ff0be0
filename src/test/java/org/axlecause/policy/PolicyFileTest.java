package org.axlecause.policy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.shared.YamlException;
import org.axlecause.shared.YamlFile;
import org.junit.jupiter.api.Test;

class PolicyFileTest {

    private static final Policy BASELINE = PolicyFile.baseline();

    @Test
    void every_threshold_is_set_once_in_base_units() {
        assertThat(BASELINE.thresholds()).extracting(Threshold::code).containsExactly(ThresholdCode.values());
        assertThat(BASELINE.thresholds())
                .filteredOn(threshold -> threshold.code() == ThresholdCode.DRAG_FORCE)
                .singleElement()
                .satisfies(threshold -> assertThat(threshold.value()).isEqualByComparingTo("150"));
        assertThat(BASELINE.thresholds())
                .filteredOn(threshold -> threshold.code() == ThresholdCode.ONE_WHEEL_LOW_IMBALANCE)
                .singleElement()
                .satisfies(threshold -> assertThat(threshold.value()).isEqualByComparingTo("0.20"));
    }

    @Test
    void the_twin_of_a_failed_hydraulic_part_is_recommended() {
        assertThat(BASELINE.clauses())
                .filteredOn(clause -> clause.code() == ClauseCode.TWIN_HYDRAULIC_PART)
                .singleElement()
                .returns(Necessity.RECOMMENDED, PolicyClause::necessity);
    }

    @Test
    void a_missing_threshold_is_named_with_file_and_line() {
        YamlFile file = YamlFile.ofText("rules/policies/mine.yaml", """
                policy: mine
                version: 1
                means: a test
                thresholds:
                  - {code: drag-force, means: dragging, value: 0.15, unit: kN, verified: judgement, source: mine}
                clauses: []
                """);

        assertThatThrownBy(() -> PolicyFile.of(file))
                .isInstanceOf(YamlException.class)
                .hasMessageStartingWith("rules/policies/mine.yaml:")
                .hasMessageContaining("is missing");
    }

    @Test
    void a_unit_that_is_none_is_named_with_file_and_line() {
        YamlFile file = YamlFile.ofText("rules/policies/mine.yaml", """
                policy: mine
                version: 1
                means: a test
                thresholds:
                  - {code: drag-force, means: dragging, value: 0.15, unit: knots, verified: judgement, source: mine}
                clauses: []
                """);

        assertThatThrownBy(() -> PolicyFile.of(file))
                .isInstanceOf(YamlException.class)
                .hasMessageContaining("mine.yaml:5")
                .hasMessageContaining("'knots' is no unit");
    }
}
