package org.axlecause.statistics;

import org.hipparchus.distribution.continuous.GammaDistribution;

/**
 * Events beside the number that was expected of like cases.
 *
 * @param observed not negative
 * @param expected above 0
 */
public record ObservedExpected(long observed, double expected) {

    /** Absolute error of a quantile, in events. */
    private static final double ERROR = 1e-12;

    public ObservedExpected {
        if (observed < 0 || !(expected > 0) || Double.isInfinite(expected)) {
            throw new IllegalArgumentException(
                    "%d observed of %s expected: events can't be negative, and some must be expected"
                            .formatted(observed, expected));
        }
    }

    /** 1 where as many came as were expected. */
    public double ratio() {
        return observed / expected;
    }

    /** Exact Poisson interval of the ratio, the expected number taken as known (Garwood 1936, Biometrika 28:437). */
    public Interval garwood(ConfidenceLevel level) {
        double low = observed == 0 ? 0 : quantile(observed, level.tail());
        return new Interval(low, quantile(observed + 1, 1 - level.tail())).dividedBy(expected);
    }

    private static double quantile(long shape, double probability) {
        return new GammaDistribution(shape, 1, ERROR).inverseCumulativeProbability(probability);
    }
}
