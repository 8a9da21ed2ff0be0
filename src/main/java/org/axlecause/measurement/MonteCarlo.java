package org.axlecause.measurement;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.hipparchus.random.MersenneTwister;
import org.hipparchus.random.RandomGenerator;
import org.hipparchus.util.KthSelector;

/**
 * Propagation of distributions by the Monte Carlo method (JCGM 101:2008, 7), for results that are not linear in their
 * inputs. The draws are seeded by the inputs themselves, so that the same inputs give the same result.
 */
public final class MonteCarlo {

    private MonteCarlo() {}

    /** Shape of what is known of an input. */
    public enum Spread {
        /** Normal, with its standard deviation. */
        NORMAL,
        /** Rectangular, with its half-width. */
        RECTANGULAR
    }

    /**
     * One input.
     *
     * @param value best estimate
     * @param spread shape of its distribution
     * @param width standard deviation or half-width
     */
    public record Input(double value, Spread spread, double width) {

        private double draw(RandomGenerator random) {
            if (width == 0) {
                return value;
            }
            return value
                    + switch (spread) {
                        case NORMAL -> width * random.nextGaussian();
                        case RECTANGULAR -> width * (2 * random.nextDouble() - 1);
                    };
        }
    }

    /** Distribution of a result. */
    public static final class Result {

        private final double mean;
        private final double uncertainty;
        private final double[] drawn;

        private Result(double mean, double uncertainty, double[] drawn) {
            this.mean = mean;
            this.uncertainty = uncertainty;
            this.drawn = drawn;
        }

        /** Mean of the draws. */
        public double mean() {
            return mean;
        }

        /** Standard deviation of the draws. */
        public double uncertainty() {
            return uncertainty;
        }

        /** Lower end of the interval that covers that share, as much being left out on either side. */
        public double low(double share) {
            return quantile((1 - share) / 2);
        }

        /** Upper end of that interval. */
        public double high(double share) {
            return quantile((1 + share) / 2);
        }

        /** Share of the draws above a limit. */
        public double probabilityAbove(double limit) {
            int above = 0;
            for (double result : drawn) {
                above += result > limit ? 1 : 0;
            }
            return (double) above / drawn.length;
        }

        private double quantile(double share) {
            int rank = (int) Math.min(drawn.length - 1L, Math.round(share * (drawn.length - 1)));
            return new KthSelector().select(drawn.clone(), null, rank);
        }
    }

    /** Distribution of the result of a model over that many draws. */
    public static Result propagate(List<Input> inputs, ToDoubleFunction<double[]> model, int draws) {
        RandomGenerator random = new MersenneTwister(seedOf(inputs));
        double[] results = new double[draws];
        double[] drawn = new double[inputs.size()];
        double sum = 0;
        for (int i = 0; i < draws; i++) {
            for (int k = 0; k < drawn.length; k++) {
                drawn[k] = inputs.get(k).draw(random);
            }
            results[i] = model.applyAsDouble(drawn);
            sum += results[i];
        }
        double mean = sum / draws;
        double squares = 0;
        for (double result : results) {
            squares += (result - mean) * (result - mean);
        }
        return new Result(mean, Math.sqrt(squares / (draws - 1)), results);
    }

    private static long seedOf(List<Input> inputs) {
        long seed = 17;
        for (Input input : inputs) {
            seed = 31 * seed + Double.doubleToLongBits(input.value());
            seed = 31 * seed + (input.spread() == Spread.NORMAL ? 1 : 2);
            seed = 31 * seed + Double.doubleToLongBits(input.width());
        }
        return seed;
    }
}
