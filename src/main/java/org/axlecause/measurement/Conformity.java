package org.axlecause.measurement;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.axlecause.facts.Bound;
import org.axlecause.facts.Deficiency;
import org.axlecause.facts.Figure;
import org.axlecause.facts.Limit;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.jspecify.annotations.Nullable;

/**
 * How likely a measured figure lies beyond a limit, after JCGM 106:2012 with a normal distribution of what the measurand
 * may be. It stands beside the verdict and never decides it.
 */
public final class Conformity {

    private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);
    private static final int DECIMALS = 4;

    private Conformity() {}

    /** Probability that the true value breaks the limit; null where no uncertainty of the figure is known. */
    public static @Nullable BigDecimal probabilityNonConforming(Figure figure, Limit limit) {
        BigDecimal value = figure.value();
        BigDecimal uncertainty = figure.uncertainty();
        if (value == null || uncertainty == null || uncertainty.signum() <= 0) {
            return null;
        }
        return BigDecimal.valueOf(probabilityNonConforming(
                        value.doubleValue(),
                        uncertainty.doubleValue(),
                        limit.bound(),
                        limit.value().doubleValue()))
                .setScale(DECIMALS, RoundingMode.HALF_EVEN);
    }

    /** The same for a deficiency, whose figure is looked up among those of its test. */
    public static @Nullable BigDecimal probabilityNonConforming(Deficiency deficiency, List<Figure> figures) {
        Limit limit = deficiency.limit();
        if (limit == null) {
            return null;
        }
        return figures.stream()
                .filter(figure -> figure.test().equals(deficiency.test()) && limit.isAbout(figure))
                .findFirst()
                .map(figure -> probabilityNonConforming(figure, limit))
                .orElse(null);
    }

    /** Probability that a value known with a standard uncertainty lies beyond a limit. */
    public static double probabilityNonConforming(double value, double uncertainty, Bound bound, double limit) {
        double beyond = (limit - value) / uncertainty;
        return NORMAL.cumulativeProbability(bound.isLower() ? beyond : -beyond);
    }
}
