package org.axlecause.statistics;

import org.hipparchus.distribution.continuous.BetaDistribution;

/**
 * What is believed of a share, as a beta distribution: as if so many cases had counted and so many had not.
 *
 * @param counted above 0
 * @param others above 0
 */
public record BetaShare(double counted, double others) {

    private static final double ERROR = 1e-15;

    public BetaShare {
        if (!(counted > 0 && others > 0)) {
            throw new IllegalArgumentException(
                    "A belief of %s that count and %s that don't: both must be above 0".formatted(counted, others));
        }
    }

    /**
     * A belief around a share.
     *
     * @param share above 0 and below 1
     * @param strength cases that it is worth
     */
    static BetaShare around(double share, double strength) {
        return new BetaShare(share * strength, (1 - share) * strength);
    }

    /** The belief after cases were seen. */
    BetaShare after(Proportion seen) {
        return new BetaShare(counted + seen.count(), others + seen.of() - seen.count());
    }

    public double mean() {
        return counted / (counted + others);
    }

    /** Where the share lies with that probability, equal tails left out on both sides. */
    public Interval credible(ConfidenceLevel level) {
        BetaDistribution belief = new BetaDistribution(counted, others, ERROR);
        return new Interval(
                belief.inverseCumulativeProbability(level.tail()),
                belief.inverseCumulativeProbability(1 - level.tail()));
    }
}
