package org.axlecause.measurement;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.axlecause.facts.Bound;
import org.axlecause.facts.Figure;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitRisk;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.jspecify.annotations.Nullable;

/**
 * How likely a measured figure lies beyond a limit, after JCGM 106:2012 with a normal distribution of what the measurand
 * may be. It stands beside the verdict and never decides it.
 */
public final class Conformity {

    private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);
    private static final int DECIMALS = 4;
    /** Probability below which nobody asks how a repeat would come out. */
    private static final double CLEAR = 0.001;

    private Conformity() {}

    /** How likely a figure lies beyond a limit; null where no uncertainty of the figure is known. */
    public static @Nullable LimitRisk risk(Figure figure, Limit limit) {
        return risk(figure, limit, null);
    }

    /**
     * The same where the distribution of the figure may be known.
     *
     * @param simulated distribution of the figure where the normal one does not hold; else null
     */
    static @Nullable LimitRisk risk(Figure figure, Limit limit, MonteCarlo.@Nullable Result simulated) {
        BigDecimal value = figure.value();
        BigDecimal uncertainty = figure.uncertainty();
        if (value == null || uncertainty == null || uncertainty.signum() <= 0) {
            return null;
        }
        double read = value.doubleValue();
        double spread = uncertainty.doubleValue();
        double bound = limit.value().doubleValue();
        double beyond = simulated == null
                ? probabilityNonConforming(read, spread, limit.bound(), bound)
                : limit.bound().isLower() ? 1 - simulated.probabilityAbove(bound) : simulated.probabilityAbove(bound);
        boolean clear = Math.min(beyond, 1 - beyond) < CLEAR;
        return new LimitRisk(
                figure, limit, probability(beyond), clear ? null : probability(misreading(read, spread, bound)));
    }

    /**
     * Probability that one more reading, with an error of its own of the same size, is on the other side of a limit than
     * the true value: consumer's and producer's risk together (JCGM 106:2012, 9.5), with what is known from the first
     * reading as the prior. Where the next reading is beyond with probability p, the integrals over that prior come to
     * p (1 - p).
     */
    static double misreading(double value, double uncertainty, double limit) {
        double beyond = NORMAL.cumulativeProbability((limit - value) / (uncertainty * Math.sqrt(2)));
        return beyond * (1 - beyond);
    }

    private static BigDecimal probability(double value) {
        return BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_EVEN);
    }

    /** Probability that a value known with a standard uncertainty lies beyond a limit. */
    public static double probabilityNonConforming(double value, double uncertainty, Bound bound, double limit) {
        double beyond = (limit - value) / uncertainty;
        return NORMAL.cumulativeProbability(bound.isLower() ? beyond : -beyond);
    }
}
