package org.axlecause.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.axlecause.diagnosis.Cases.MODEL;
import static org.axlecause.diagnosis.Cases.REAR_RIGHT;
import static org.axlecause.diagnosis.Cases.couldShow;
import static org.axlecause.diagnosis.Cases.on;
import static org.axlecause.diagnosis.Cases.ruledOut;
import static org.axlecause.diagnosis.Cases.shows;
import static org.axlecause.diagnosis.Cases.van;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.SymptomCode;
import org.junit.jupiter.api.Test;

/**
 * The decibans of the evidence against the odds they stand for: ten times the decimal logarithm of the odds, as Good
 * defined them (from memory). The expectations come from the reported figures alone, whatever the weights of the model.
 */
class EvidenceWeightTest {

    private static final Diagnose DIAGNOSE = new Diagnose(MODEL);
    private static final Candidate GLAZED = new Candidate(CauseCode.LINING_GLAZED, REAR_RIGHT);
    private static final Candidate SOAKED = new Candidate(CauseCode.LINING_SOAKED_EARLIER, REAR_RIGHT);

    /** Half a unit of the last digit of each weight, and of the probability. */
    private static final double ROUNDING = 0.05;

    private static final double PROBABILITY_ROUNDING = 0.00005;

    @Test
    void prior_and_evidence_add_up_to_the_odds_where_no_rival_shows_the_same() {
        RankedCause alone = ranked(
                GLAZED,
                remaining(
                        Set.of(GLAZED),
                        shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT),
                        couldShow(SymptomCode.DRAG_ONE_WHEEL, REAR_RIGHT)));

        double sum = alone.evidence().stream()
                .mapToDouble(weight -> weight.decibans().doubleValue())
                .sum();

        assertThat(alone.evidence()).hasSizeGreaterThanOrEqualTo(2);
        assertThat(sum).isCloseTo(decibans(alone), within(tolerance(alone)));
    }

    @Test
    void evidence_that_a_rival_shows_too_speaks_less_than_the_odds_it_leaves() {
        RankedCause alone = ranked(GLAZED, remaining(Set.of(GLAZED), shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT)));
        RankedCause rivalled =
                ranked(GLAZED, remaining(Set.of(GLAZED, SOAKED), shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT)));

        assertThat(weight(rivalled)).isPositive().isLessThan(weight(alone));
        assertThat(rivalled.probability()).isLessThan(alone.probability());
    }

    /** With the rival as likely as it is reported: how much likelier the sign is with the cause than without it. */
    @Test
    void the_weight_of_shared_evidence_takes_the_rival_as_likely_as_it_is() {
        Diagnosis diagnosis =
                DIAGNOSE.of(remaining(Set.of(GLAZED, SOAKED), shows(SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT)));
        double rival = ranked(SOAKED, diagnosis).probability().doubleValue();
        double leak = MODEL.symptom(SymptomCode.ONE_WHEEL_LOW).leak();

        double missing = (1 - leak) * (1 - rival * strength(SOAKED));
        double expected = 10 * Math.log10((1 - missing * (1 - strength(GLAZED))) / (1 - missing));

        assertThat(weight(ranked(GLAZED, diagnosis))).isCloseTo(expected, within(ROUNDING + 0.01));
    }

    private static double strength(Candidate candidate) {
        return MODEL.cause(candidate.code()).links().stream()
                .filter(link -> link.evidence().equals(SymptomCode.ONE_WHEEL_LOW.toString()))
                .mapToDouble(Link::strength)
                .findFirst()
                .orElseThrow();
    }

    private static double weight(RankedCause cause) {
        return cause.evidence().stream()
                .filter(weight -> weight.code().equals(SymptomCode.ONE_WHEEL_LOW.toString()))
                .mapToDouble(weight -> weight.decibans().doubleValue())
                .findFirst()
                .orElseThrow();
    }

    private static double decibans(RankedCause cause) {
        double probability = cause.probability().doubleValue();
        return 10 * Math.log10(probability / (1 - probability));
    }

    private static double tolerance(RankedCause cause) {
        double probability = cause.probability().doubleValue();
        double slope = 10 / Math.log(10) / (probability * (1 - probability));
        return ROUNDING * cause.evidence().size() + PROBABILITY_ROUNDING * slope;
    }

    private static RankedCause ranked(Candidate candidate, DiagnosisInput input) {
        return ranked(candidate, DIAGNOSE.of(input));
    }

    private static RankedCause ranked(Candidate candidate, Diagnosis diagnosis) {
        return diagnosis.causes().stream()
                .filter(cause ->
                        cause.code() == candidate.code() && cause.place().equals(candidate.place()))
                .findFirst()
                .orElseThrow();
    }

    /** Everything ruled out but these causes. */
    private static DiagnosisInput remaining(Set<Candidate> causes, Object... evidence) {
        List<Object> all = new ArrayList<>(List.of(evidence));
        MODEL.candidates(van()).stream()
                .filter(candidate -> !causes.contains(candidate))
                .forEach(candidate -> all.add(ruledOut(candidate.code(), candidate.place())));
        return on(van(), all.toArray());
    }
}
