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

    /**
     * Standard uncertainty of an imbalance, with its distribution where it had to be simulated.
     *
     * @param standard standard uncertainty
     * @param simulated distribution; null where linear propagation holds
     */
    record Spread(BigDecimal standard, MonteCarlo.@Nullable Result simulated) {

        private static Spread linear(double standard) {
            return new Spread(Rounded.uncertainty(standard), null);
        }

        private static Spread simulated(MonteCarlo.Result result) {
            return new Spread(Rounded.uncertainty(result.uncertainty()), result);
        }
    }

    static @Nullable Spread ofImbalance(
            ImbalanceFormula formula, WheelForces forces, BigDecimal base, TestedAxle axle) {
        ForceUncertainty left = axle.uncertainty(Side.LEFT);
        ForceUncertainty right = axle.uncertainty(Side.RIGHT);
        if (left == null || right == null || base.signum() <= 0) {
            return null;
        }
        double high = forces.higher().doubleValue();
        double low = forces.lower().doubleValue();
        ForceUncertainty ofHigh = forces.leftIsHigher() ? left : right;
        ForceUncertainty ofLow = forces.leftIsHigher() ? right : left;
        return switch (formula) {
            case DIFFERENCE_PER_AXLE_MASS, LARGEST_DIFFERENCE_OVER_AXLE_LOAD -> {
                double difference = forces.difference().doubleValue();
                yield ImbalanceUncertainty.isApart(difference, ofHigh.combined(), ofLow.combined())
                        ? Spread.linear(Math.hypot(ofHigh.combined(), ofLow.combined()) / base.doubleValue())
                        : Spread.simulated(ImbalanceUncertainty.simulatedDifference(
                                difference, base.doubleValue(), ofHigh, ofLow));
            }
            default ->
                ImbalanceUncertainty.isLinear(high, low, ofHigh.combined(), ofLow.combined())
                        ? Spread.linear(ImbalanceUncertainty.linear(high, low, ofHigh.combined(), ofLow.combined(), 0))
                        : Spread.simulated(ImbalanceUncertainty.simulated(high, low, ofHigh, ofLow));
        };
    }

    /** Of the lower over the higher force: the same as of their imbalance, which is what it lacks to 1. */
    static @Nullable BigDecimal ofRatio(TestedAxle axle, BigDecimal left, BigDecimal right) {
        WheelForces forces = WheelForces.by(ImbalanceFormula.RELATIVE_TO_HIGHER, axle, left, right);
        Spread spread = ofImbalance(ImbalanceFormula.RELATIVE_TO_HIGHER, forces, forces.higher(), axle);
        return spread == null ? null : spread.standard();
    }

    /** Of a force over a weight that is known for sure. */
    static @Nullable BigDecimal overWeight(@Nullable BigDecimal ofForce, BigDecimal weight) {
        return ofForce == null ? null : Rounded.uncertainty(ofRatio(0, ofForce.doubleValue(), weight.doubleValue(), 0));
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
