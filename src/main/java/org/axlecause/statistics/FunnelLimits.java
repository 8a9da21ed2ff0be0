package org.axlecause.statistics;

import org.hipparchus.distribution.IntegerDistribution;
import org.hipparchus.distribution.discrete.BinomialDistribution;
import org.hipparchus.distribution.discrete.PoissonDistribution;

/**
 * Between which values a unit of one size may lie by chance alone (Spiegelhalter 2005, Stat. Med. 24:1185).
 *
 * @param inner 95 % limits
 * @param outer 99.8 % limits
 */
public record FunnelLimits(Interval inner, Interval outer) {

    private interface Limits {
        Interval at(ConfidenceLevel level);
    }

    private static FunnelLimits of(Limits limits) {
        return new FunnelLimits(limits.at(ConfidenceLevel.OF_95_PERCENT), limits.at(ConfidenceLevel.OF_99_8_PERCENT));
    }

    /** Limits of a share by normal approximation, cut at 0 and 1. */
    static FunnelLimits normalShare(double target, long cases, double overdispersion) {
        double standardError = Math.sqrt(target * (1 - target) / cases * overdispersion);
        return of(level -> normal(target, level.standardErrors() * standardError, 1));
    }

    /** Limits of observed by expected events by normal approximation, cut at 0. */
    static FunnelLimits normalRatio(double expected, double overdispersion) {
        double standardError = Math.sqrt(overdispersion / expected);
        return of(level -> normal(1, level.standardErrors() * standardError, Double.POSITIVE_INFINITY));
    }

    /** Limits of a share from the binomial distribution, interpolated between its steps. */
    static FunnelLimits exactShare(double target, long cases) {
        BinomialDistribution counts = new BinomialDistribution(Math.toIntExact(cases), target);
        return of(level -> exact(counts, level).dividedBy((double) cases));
    }

    /** Limits of observed by expected events from the Poisson distribution, interpolated between its steps. */
    static FunnelLimits exactRatio(double expected) {
        PoissonDistribution counts = new PoissonDistribution(expected);
        return of(level -> exact(counts, level).dividedBy(expected));
    }

    /** Limits that neither of two sets of limits leaves. */
    FunnelLimits widest(FunnelLimits other) {
        return new FunnelLimits(hull(inner, other.inner), hull(outer, other.outer));
    }

    private static Interval hull(Interval one, Interval other) {
        return new Interval(Math.min(one.low(), other.low()), Math.max(one.high(), other.high()));
    }

    private static Interval normal(double target, double half, double highest) {
        return new Interval(Math.max(0, target - half), Math.min(highest, target + half));
    }

    private static Interval exact(IntegerDistribution counts, ConfidenceLevel level) {
        return new Interval(interpolated(counts, level.tail()), interpolated(counts, 1 - level.tail()));
    }

    private static double interpolated(IntegerDistribution counts, double probability) {
        int count = counts.inverseCumulativeProbability(probability);
        double reached = counts.cumulativeProbability(count);
        double before = count == 0 ? 0 : counts.cumulativeProbability(count - 1);
        return reached == before ? count : Math.max(0, count - (reached - probability) / (reached - before));
    }
}
