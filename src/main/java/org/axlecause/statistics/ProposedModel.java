package org.axlecause.statistics;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;

/**
 * Prior weights learned from a tenant's own cases, as a proposal: nothing is judged by them until someone publishes them.
 *
 * @param asOf moment up to which cases were counted
 * @param terms how much they counted
 * @param weights by cause and group, in the order of the catalogue
 * @param before how the book's probabilities fit the cases held out
 * @param after how those of the learned weights fit the same cases
 */
public record ProposedModel(
        Instant asOf, LearningTerms terms, List<LearnedWeight> weights, Calibration before, Calibration after) {

    public ProposedModel {
        if (before.number() != after.number()) {
            throw new IllegalArgumentException(
                    "%d forecasts before and %d after: compare them on the same cases held out"
                            .formatted(before.number(), after.number()));
        }
        weights = weights.stream()
                .sorted(Comparator.comparing(LearnedWeight::cause).thenComparing(LearnedWeight::group))
                .toList();
    }

    /** The proposal that the terms make of what was seen. */
    static ProposedModel of(
            Instant asOf, LearningTerms terms, List<LearnedWeight.Seen> seen, Calibration before, Calibration after) {
        List<LearnedWeight> weights =
                seen.stream().map(each -> LearnedWeight.of(each, terms)).toList();
        return new ProposedModel(asOf, terms, weights, before, after);
    }

    /** Whether the learned weights forecast the cases held out better than the book. */
    public boolean forecastsBetter() {
        return after.brier() < before.brier();
    }
}
