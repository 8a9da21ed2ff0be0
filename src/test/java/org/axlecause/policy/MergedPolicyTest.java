package org.axlecause.policy;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.BrakeBuild;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Party;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;
import org.junit.jupiter.api.Test;

class MergedPolicyTest {

    private static final Policy BASELINE = PolicyFile.baseline();

    @Test
    void the_lowest_layer_that_sets_a_clause_speaks_and_says_so() {
        PolicyDocument document = PolicyDocument.of("""
                {"means": "how we repair",
                 "chain": [{"clause": "retest-imbalance", "value": 14, "unit": "%"},
                           {"clause": "twin-hydraulic-part", "necessity": "required"}],
                 "regions": {"north": [{"clause": "retest-imbalance", "value": 13, "unit": "%"}]},
                 "sites": {"quay-street": [{"clause": "retest-imbalance", "value": 12, "unit": "%"}]}}""");

        assertThat(target(document, null, null)).isEqualByComparingTo("0.14");
        assertThat(target(document, "north", null)).isEqualByComparingTo("0.13");
        assertThat(target(document, "north", "mill-bridge")).isEqualByComparingTo("0.13");
        assertThat(target(document, "north", "quay-street")).isEqualByComparingTo("0.12");
        assertThat(target(document, "south", "hill-top")).isEqualByComparingTo("0.14");
        Map<String, EffectiveClause> all =
                MergedPolicy.of(document, "north", "quay-street").all();
        assertThat(all.get("retest-imbalance").from()).isEqualTo(Layer.SITE);
        assertThat(all.get("twin-hydraulic-part").from()).isEqualTo(Layer.CHAIN);
        assertThat(all.get("hub-play").from()).isEqualTo(Layer.BASELINE);
    }

    @Test
    void what_a_layer_has_locked_no_layer_below_sets() {
        PolicyDocument document = PolicyDocument.of("""
                {"means": "how we repair",
                 "chain": [{"clause": "retest-imbalance", "value": 12, "unit": "%", "locked": true}],
                 "regions": {"north": [{"clause": "retest-imbalance", "value": 15, "unit": "%"},
                                       {"clause": "twin-adjuster", "necessity": "required", "locked": true}]},
                 "sites": {"quay-street": [{"clause": "twin-adjuster", "necessity": "none"}]}}""");

        MergedPolicy merged = MergedPolicy.of(document, "north", "quay-street");

        assertThat(merged.set().get("retest-imbalance"))
                .returns(Layer.CHAIN, EffectiveClause::from)
                .returns(Layer.CHAIN, EffectiveClause::lockedBy);
        assertThat(merged.set().get("twin-adjuster"))
                .returns(Layer.REGION, EffectiveClause::from)
                .returns(Layer.REGION, EffectiveClause::lockedBy);
        assertThat(merged.toPolicy("repairs", 3, BASELINE).locked()).containsExactly(ClauseCode.TWIN_ADJUSTER);
    }

    @Test
    void a_document_becomes_the_facts_that_judging_reads() {
        Policy policy = MergedPolicy.of(PolicyDocument.of("""
                        {"means": "how we repair", "chain": [
                         {"clause": "drag-force", "value": 0.12, "unit": "kN"},
                         {"clause": "pad-renewal-thickness", "value": 3.5, "unit": "mm", "necessity": "required"},
                         {"clause": "twin-brake-pipe", "necessity": "none"},
                         {"clause": "pipe-extent", "extent": "axle"},
                         {"clause": "workshop-limit", "figure": "imbalance", "brake": "service", "build": "disc",
                          "value": 20, "unit": "%"},
                         {"clause": "needed-measurement", "action": "renew", "item": "drum",
                          "quantity": "drum-diameter"},
                         {"clause": "needed-photo", "action": "renew", "item": "disc"},
                         {"clause": "consent", "action": "renew", "item": "hardware-kit", "by": "workshop"},
                         {"clause": "labour-cap", "action": "renew", "item": "shoe-set", "value": 1.5, "unit": "h"},
                         {"clause": "fluid-age", "value": 3, "unit": "a"}]}"""), null, null).toPolicy("repairs", 7, BASELINE);

        assertThat(policy.name()).isEqualTo("repairs");
        assertThat(policy.version()).isEqualTo(7);
        assertThat(policy.thresholds()).extracting(Threshold::code).containsExactly(ThresholdCode.values());
        assertThat(policy.clauses()).extracting(PolicyClause::code).containsExactly(ClauseCode.values());
        assertThat(threshold(policy, ThresholdCode.DRAG_FORCE)).isEqualByComparingTo("120");
        assertThat(clause(policy, ClauseCode.PAD_RENEWAL_THICKNESS))
                .returns(Necessity.REQUIRED, PolicyClause::necessity)
                .satisfies(pad -> assertThat(pad.value()).isEqualByComparingTo("0.0035"));
        assertThat(clause(policy, ClauseCode.TWIN_BRAKE_PIPE)).returns(null, PolicyClause::necessity);
        assertThat(clause(policy, ClauseCode.PIPE_EXTENT)).returns(ScopeExtent.AXLE, PolicyClause::extent);
        assertThat(clause(policy, ClauseCode.FLUID_AGE)).returns(new BigDecimal("3"), PolicyClause::value);
        assertThat(policy.limits()).singleElement().satisfies(limit -> {
            assertThat(limit.kind()).isEqualTo(FigureKind.IMBALANCE);
            assertThat(limit.build()).isEqualTo(BrakeBuild.DISC);
            assertThat(limit.value()).isEqualByComparingTo("0.2");
        });
        assertThat(policy.needed())
                .hasSize(2)
                .anySatisfy(needed -> assertThat(needed.quantity()).isEqualTo(MeasuredQuantity.DRUM_DIAMETER));
        assertThat(policy.consents()).containsExactly(Map.entry("renew hardware-kit", Party.WORKSHOP));
        assertThat(policy.hoursAtMost()).containsExactly(Map.entry("renew shoe-set", new BigDecimal("1.5")));
    }

    @Test
    void a_comparison_says_in_words_and_in_a_table_what_is_set_otherwise() {
        PolicyDocument before = PolicyDocument.of("""
                {"means": "how we repair", "chain": [
                 {"clause": "retest-imbalance", "value": 14, "unit": "%"}, {"clause": "twin-adjuster", "necessity": "none"}]}""");
        PolicyDocument after = PolicyDocument.of("""
                {"means": "how we repair", "twoPersons": true, "covers": ["quay-street"], "chain": [
                 {"clause": "retest-imbalance", "value": 12, "unit": "%", "locked": true}],
                 "sites": {"quay-street": [{"clause": "twin-calliper", "necessity": "required"}]}}""");

        ComparePolicies comparison = ComparePolicies.of(before, after);

        assertThat(comparison.table())
                .extracting(
                        PolicyViews.DifferenceView::layer,
                        PolicyViews.DifferenceView::clause,
                        PolicyViews.DifferenceView::change,
                        PolicyViews.DifferenceView::before,
                        PolicyViews.DifferenceView::after)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(
                                "chain", "retest-imbalance", "changed", "14 %", "12 %, locked"),
                        org.assertj.core.groups.Tuple.tuple(
                                "chain", "twin-adjuster", "removed", "not called for", null),
                        org.assertj.core.groups.Tuple.tuple(
                                "site quay-street", "twin-calliper", "added", null, "required"));
        assertThat(comparison.words())
                .contains(
                        "Judges the sites quay-street instead of all sites.",
                        "Must be published by somebody other than its authors.",
                        "For the chain, largest imbalance of the service brake on a repaired axle: 12 %, locked; it"
                                + " was 14 %.");
        assertThat(ComparePolicies.of(before, before).words()).isEqualTo(List.of("The two set the same."));
    }

    private static BigDecimal target(PolicyDocument document, String region, String site) {
        return threshold(
                MergedPolicy.of(document, region, site).toPolicy("repairs", 1, BASELINE),
                ThresholdCode.RETEST_IMBALANCE);
    }

    private static BigDecimal threshold(Policy policy, ThresholdCode code) {
        return policy.thresholds().stream()
                .filter(threshold -> threshold.code() == code)
                .findFirst()
                .orElseThrow()
                .value();
    }

    private static PolicyClause clause(Policy policy, ClauseCode code) {
        return policy.clauses().stream()
                .filter(clause -> clause.code() == code)
                .findFirst()
                .orElseThrow();
    }
}
