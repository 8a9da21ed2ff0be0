package org.axlecause.measurement;

import java.math.BigDecimal;
import java.util.List;
import org.axlecause.facts.ImbalanceFormula;
import org.axlecause.facts.Tester;
import org.jspecify.annotations.Nullable;

/**
 * Standard uncertainty of the figures that a regime makes of forces, by linear propagation (JCGM 100:2008, 5.1 and 5.2).
 * Where it is not known whether the two halves of a tester err alike, each figure takes what is worse for it: an
 * imbalance takes their errors as independent, a sum takes a scale error as common.
 */
public final class UncertaintyOfRatio {

    private UncertaintyOfRatio() {}

    static @Nullable BigDecimal ofImbalance(
            ImbalanceFormula formula, WheelForces forces, BigDecimal base, @Nullable Tester tester) {
        ForceUncertainty ofHigher = ForceUncertainty.of(forces.higher(), tester);
        ForceUncertainty ofLower = ForceUncertainty.of(forces.lower(), tester);
        if (ofHigher == null || ofLower == null || base.signum() <= 0) {
            return null;
        }
        return switch (formula) {
            case DIFFERENCE_PER_AXLE_MASS, LARGEST_DIFFERENCE_OVER_AXLE_LOAD ->
                Rounded.uncertainty(Math.hypot(ofHigher.combined(), ofLower.combined()) / base.doubleValue());
            default ->
                Rounded.uncertainty(ImbalanceUncertainty.linear(
                        forces.higher().doubleValue(),
                        forces.lower().doubleValue(),
                        ofHigher.combined(),
                        ofLower.combined(),
                        0));
        };
    }

    static @Nullable BigDecimal ofEffort(List<BigDecimal> forces, BigDecimal weight, @Nullable Tester tester) {
        double common = 0;
        double independent = 0;
        double sum = 0;
        for (BigDecimal force : forces) {
            ForceUncertainty uncertainty = ForceUncertainty.of(force, tester);
            if (uncertainty == null) {
                return null;
            }
            common += uncertainty.accuracy();
            independent = Math.hypot(independent, uncertainty.independent());
            sum += force.doubleValue();
        }
        return Rounded.uncertainty(ofRatio(sum, Math.hypot(common, independent), weight.doubleValue(), 0));
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
