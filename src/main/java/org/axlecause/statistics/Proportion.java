package org.axlecause.statistics;

import org.hipparchus.distribution.continuous.BetaDistribution;

/**
 * So many of so many, such as the cases with a cause among all cases.
 *
 * @param count from 0 to the number of all
 * @param of all; 0 where there are none, whose share is unknown
 */
public record Proportion(long count, long of) {

    /** Absolute error of a quantile of the beta distribution, far below what a share is told with. */
    private static final double ERROR = 1e-15;

    public Proportion {
        if (count < 0 || count > of) {
            throw new IllegalArgumentException(
                    "%d of %d: the count must lie between 0 and the number of all".formatted(count, of));
        }
    }

    Proportion plus(Proportion other) {
        return new Proportion(Math.addExact(count, other.count), Math.addExact(of, other.of));
    }

    /** From 0 to 1; there is none where there are no cases. */
    public double share() {
        if (of == 0) {
            throw new IllegalStateException("No cases, so no share: ask for the number of cases first");
        }
        return (double) count / of;
    }

    /** Score interval of the share (Wilson 1927, J. Am. Stat. Assoc. 22:209); all of 0 to 1 where there are no cases. */
    public Interval wilson(ConfidenceLevel level) {
        if (of == 0) {
            return new Interval(0, 1);
        }
        double z = level.standardErrors();
        double share = share();
        double centre = share + z * z / (2 * of);
        double half = z * Math.sqrt(share * (1 - share) / of + z * z / (4.0 * of * of));
        double scale = 1 + z * z / of;
        return new Interval(
                count == 0 ? 0 : Math.max(0, (centre - half) / scale),
                count == of ? 1 : Math.min(1, (centre + half) / scale));
    }

    /**
     * Exact interval of the share, which holds it at least as often as the level says (Clopper and Pearson 1934,
     * Biometrika 26:404); all of 0 to 1 where there are no cases.
     */
    public Interval clopperPearson(ConfidenceLevel level) {
        return new Interval(
                count == 0 ? 0 : quantile(count, of - count + 1, level.tail()),
                count == of ? 1 : quantile(count + 1, of - count, 1 - level.tail()));
    }

    private static double quantile(long alpha, long beta, double probability) {
        return new BetaDistribution(alpha, beta, ERROR).inverseCumulativeProbability(probability);
    }
}
