package org.axlecause.statistics;

import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * How often an interval made this way holds the true value.
 *
 * @param level above 0 and below 1, such as 0.95
 */
public record ConfidenceLevel(double level) {

    public static final ConfidenceLevel OF_95_PERCENT = new ConfidenceLevel(0.95);

    /** The outer limits of a funnel, about three standard errors (Spiegelhalter 2005). */
    public static final ConfidenceLevel OF_99_8_PERCENT = new ConfidenceLevel(0.998);

    private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);

    public ConfidenceLevel {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("A confidence level of %s: give one between 0 and 1".formatted(level));
        }
    }

    /** What is left out on each side. */
    double tail() {
        return (1 - level) / 2;
    }

    /** Standard errors on each side of a normal estimate, 1.96 for 95 %. */
    double standardErrors() {
        return NORMAL.inverseCumulativeProbability(1 - tail());
    }
}
