package org.axlecause.measurement;

import java.math.BigDecimal;
import java.util.List;
import org.axlecause.facts.ImbalanceFormula;
import org.axlecause.facts.Side;
import org.jspecify.annotations.Nullable;

/**
 * Standard uncertainty of the figures that a regime makes of forces, by linear propagation (JCGM 100:2008, 5.1 and 5.2).
 * Where it is not known whether the two halves of a tester err alike, each figure takes what is worse for it: an
 * imbalance takes their errors as independent, a sum takes a scale error as common.
 */
public final class UncertaintyOfRatio {

    private UncertaintyOfRatio() {}

    static @Nullable BigDecimal ofImbalance(
            ImbalanceFormula formula, WheelForces forces, BigDecimal base, TestedAxle axle) {
        ForceUncertainty left = axle.uncertainty(Side.LEFT);
        ForceUncertainty right = axle.uncertainty(Side.RIGHT);
        if (left == null || right == null || base.signum() <= 0) {
            return null;
        }
        return switch (formula) {
            case DIFFERENCE_PER_AXLE_MASS, LARGEST_DIFFERENCE_OVER_AXLE_LOAD ->
                Rounded.uncertainty(Math.hypot(left.combined(), right.combined()) / base.doubleValue());
            default ->
                Rounded.uncertainty(ImbalanceUncertainty.of(
                        forces.higher().doubleValue(),
                        forces.lower().doubleValue(),
                        forces.leftIsHigher() ? left : right,
                        forces.leftIsHigher() ? right : left));
        };
    }

    static @Nullable BigDecimal ofEffort(List<TestedAxle> axles, BigDecimal sum, BigDecimal weight) {
        double common = 0;
        double independent = 0;
        for (TestedAxle axle : axles) {
            for (Side side : Side.values()) {
                ForceUncertainty uncertainty = axle.uncertainty(side);
                if (uncertainty == null) {
                    return null;
                }
                common += uncertainty.accuracy();
                independent = Math.hypot(independent, uncertainty.independent());
            }
        }
        return Rounded.uncertainty(
                ofRatio(sum.doubleValue(), Math.hypot(common, independent), weight.doubleValue(), 0));
    }

    /**
     * Standard uncertainty of a sum of forces over a weight.
     *
     * @param sum the sum, newtons
     * @param ofSum its standard uncertainty
     * @param weight the weight, newtons
     * @param ofWeight its standard uncertainty
     */
    public static double ofRatio(double sum, double ofSum, double weight, double ofWeight) {
        return Math.hypot(ofSum / weight, sum * ofWeight / (weight * weight));
    }
}
