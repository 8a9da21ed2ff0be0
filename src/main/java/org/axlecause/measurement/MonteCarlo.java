package org.axlecause.measurement;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToDoubleFunction;
import org.axlecause.shared.Recent;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.random.SobolSequenceGenerator;
import org.hipparchus.util.KthSelector;

/**
 * Propagation of distributions by the Monte Carlo method (JCGM 101:2008, 7), for results that are not linear in their
 * inputs. The draws are points of a Sobol sequence, which fill the space of the inputs more evenly than chance would:
 * few of them do, they are the same for all inputs of the same shapes, and the same inputs give the same result.
 */
public final class MonteCarlo {

    private static final NormalDistribution STANDARD_NORMAL = new NormalDistribution(0, 1);
    private static final double GOLDEN_SECTION = (Math.sqrt(5) - 1) / 2;
    private static final int MOST_KEPT = 16;
    private static final Recent<Errors, double[][]> ERRORS = new Recent<>(MOST_KEPT);

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

        private boolean isUncertain() {
            return width != 0;
        }
    }

    /** Distribution of a result. */
    public static final class Result {

        private final double mean;
        private final double uncertainty;
        private final double[] drawn;
        /** Shares that were asked for; limits are few, and a case is judged again with each entry. */
        private final Map<Double, Double> above = new ConcurrentHashMap<>();

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
            return above.computeIfAbsent(limit, this::countedAbove);
        }

        private double countedAbove(double limit) {
            int count = 0;
            for (double result : drawn) {
                count += result > limit ? 1 : 0;
            }
            return (double) count / drawn.length;
        }

        private double quantile(double share) {
            int rank = (int) Math.min(drawn.length - 1L, Math.round(share * (drawn.length - 1)));
            return new KthSelector().select(drawn.clone(), null, rank);
        }
    }

    /** Distribution of the result of a model over that many draws. */
    public static Result propagate(List<Input> inputs, ToDoubleFunction<double[]> model, int draws) {
        double[][] errors = errors(
                inputs.stream().filter(Input::isUncertain).map(Input::spread).toList(), draws);
        double[] results = new double[draws];
        double[] drawn = new double[inputs.size()];
        double sum = 0;
        for (int i = 0; i < draws; i++) {
            int error = 0;
            for (int k = 0; k < drawn.length; k++) {
                Input input = inputs.get(k);
                drawn[k] = input.isUncertain() ? input.value() + input.width() * errors[error++][i] : input.value();
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

    /** By input and draw an error of width one. */
    private static double[][] errors(List<Spread> spreads, int draws) {
        Errors key = new Errors(spreads, draws);
        double[][] known = ERRORS.find(key);
        return known == null ? ERRORS.keep(key, key.drawn()) : known;
    }

    /**
     * Errors of width one.
     *
     * @param spreads shape of each
     * @param draws how many of each
     */
    private record Errors(List<Spread> spreads, int draws) {

        private double[][] drawn() {
            double[][] errors = new double[spreads.size()][draws];
            if (spreads.isEmpty()) {
                return errors;
            }
            SobolSequenceGenerator points = new SobolSequenceGenerator(spreads.size());
            for (int i = 0; i < draws; i++) {
                double[] point = points.nextVector();
                for (int k = 0; k < errors.length; k++) {
                    double share = turned(point[k], k);
                    errors[k][i] = spreads.get(k) == Spread.NORMAL
                            ? STANDARD_NORMAL.inverseCumulativeProbability(share)
                            : 2 * share - 1;
                }
            }
            return errors;
        }

        /** A point turned by a part of the circle of its own, since the first one lies in the corner. */
        private static double turned(double coordinate, int input) {
            double turned = coordinate + (input + 1) * GOLDEN_SECTION;
            return turned - Math.floor(turned);
        }
    }
}
