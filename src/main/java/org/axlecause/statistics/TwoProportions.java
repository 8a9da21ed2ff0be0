package org.axlecause.statistics;

import java.util.List;
import org.hipparchus.distribution.discrete.HypergeometricDistribution;
import org.hipparchus.special.Gamma;

/**
 * Two groups of cases beside each other.
 *
 * @param first of at least one case
 * @param second of at least one case, none of them in the first
 */
public record TwoProportions(Proportion first, Proportion second) {

    /** Expected count below which chi-squared isn't trusted (Cochran 1954, Biometrics 10:417; common practice). */
    private static final double LEAST_EXPECTED = 5;

    /** Tables whose probabilities differ by less than this share are alike but for rounding, as in R's fisher.test. */
    private static final double ROUNDING = 1e-7;

    public TwoProportions {
        if (first.of() == 0 || second.of() == 0) {
            throw new IllegalArgumentException(
                    "Groups of %d and %d cases: each needs one at least".formatted(first.of(), second.of()));
        }
    }

    /** First share less second, from -1 to 1. */
    public double difference() {
        return first.share() - second.share();
    }

    /** Interval of the difference by hybrid score (Newcombe 1998, Stat. Med. 17:873, method 10). */
    public Interval newcombe(ConfidenceLevel level) {
        Interval one = first.wilson(level);
        Interval two = second.wilson(level);
        double difference = difference();
        return new Interval(
                difference - Math.hypot(first.share() - one.low(), two.high() - second.share()),
                difference + Math.hypot(one.high() - first.share(), second.share() - two.low()));
    }

    /** By Fisher's exact test where a count of less than five is expected in a cell, else by chi-squared. */
    public Significance significance() {
        return leastExpected() < LEAST_EXPECTED ? fisherExact() : chiSquared();
    }

    /** Pearson's chi-squared with one degree of freedom, without correction for continuity; 1 where all cells are even. */
    Significance chiSquared() {
        double statistic = 0;
        for (double[] cell : cells()) {
            double expected = cell[1];
            statistic += expected == 0 ? 0 : (cell[0] - expected) * (cell[0] - expected) / expected;
        }
        return new Significance(Significance.Method.CHI_SQUARED, statistic, upperTail(statistic, 1));
    }

    /**
     * Fisher's exact test, two-sided: all tables with the same margins that are no likelier than this one. The time grows
     * with the smallest margin.
     */
    Significance fisherExact() {
        long counted = first.count() + second.count();
        HypergeometricDistribution tables = new HypergeometricDistribution(
                Math.toIntExact(first.of() + second.of()), Math.toIntExact(counted), Math.toIntExact(first.of()));
        double here = tables.probability(Math.toIntExact(first.count()));
        double sum = 0;
        for (int count = tables.getSupportLowerBound(); count <= tables.getSupportUpperBound(); count++) {
            double probability = tables.probability(count);
            sum += probability <= here * (1 + ROUNDING) ? probability : 0;
        }
        return new Significance(Significance.Method.FISHER_EXACT, null, Math.min(1, sum));
    }

    private double leastExpected() {
        return cells().stream().mapToDouble(cell -> cell[1]).min().orElseThrow();
    }

    /** The four cells, each as observed and expected count. */
    private List<double[]> cells() {
        double all = (double) first.of() + second.of();
        double counted = (double) first.count() + second.count();
        double others = all - counted;
        return List.of(
                new double[] {first.count(), first.of() * counted / all},
                new double[] {first.of() - first.count(), first.of() * others / all},
                new double[] {second.count(), second.of() * counted / all},
                new double[] {second.of() - second.count(), second.of() * others / all});
    }

    /** Probability that chi-squared is at least that large. */
    static double upperTail(double chiSquared, int degreesOfFreedom) {
        return chiSquared <= 0 ? 1 : Gamma.regularizedGammaQ(degreesOfFreedom / 2.0, chiSquared / 2);
    }
}
