package org.axlecause.measurement;

import java.util.List;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * The law of propagation of uncertainty for independent inputs (JCGM 100:2008, 5.1, G.4 and 6.2).
 *
 * @param components contributions of the inputs
 */
public record UncertaintyBudget(List<Component> components) {

    public UncertaintyBudget {
        components = List.copyOf(components);
    }

    /**
     * Contribution of one input.
     *
     * @param sensitivity derivative of the result by the input
     * @param uncertainty standard uncertainty of the input
     * @param degrees degrees of freedom of that uncertainty; without end where it is known for sure
     */
    public record Component(double sensitivity, double uncertainty, double degrees) {

        /** A contribution whose uncertainty is known for sure. */
        public static Component of(double sensitivity, double uncertainty) {
            return new Component(sensitivity, uncertainty, Double.POSITIVE_INFINITY);
        }

        /** A contribution known to lie within that half-width, anywhere alike. */
        public static Component within(double sensitivity, double halfWidth) {
            return of(sensitivity, halfWidth / Math.sqrt(3));
        }

        private double size() {
            return Math.abs(sensitivity * uncertainty);
        }
    }

    /** The budget of those contributions. */
    public static UncertaintyBudget of(Component... components) {
        return new UncertaintyBudget(List.of(components));
    }

    /** Combined standard uncertainty. */
    public double combined() {
        double squares = 0;
        for (Component component : components) {
            squares += component.size() * component.size();
        }
        return Math.sqrt(squares);
    }

    /** Effective degrees of freedom by the formula of Welch and Satterthwaite. */
    public double effectiveDegrees() {
        double sum = 0;
        for (Component component : components) {
            sum += Math.pow(component.size(), 4) / component.degrees();
        }
        return sum == 0 ? Double.POSITIVE_INFINITY : Math.pow(combined(), 4) / sum;
    }

    /** Expanded uncertainty that covers that share, by the quantile of Student with whole effective degrees of freedom. */
    public double expanded(double share) {
        double degrees = Math.min(1e6, Math.floor(effectiveDegrees()));
        return combined() * new TDistribution(degrees).inverseCumulativeProbability((1 + share) / 2);
    }
}
