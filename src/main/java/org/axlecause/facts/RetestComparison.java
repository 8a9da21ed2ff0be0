package org.axlecause.facts;

import java.math.BigDecimal;
import java.math.MathContext;
import org.jspecify.annotations.Nullable;

/**
 * A figure of the final test beside the same figure of the arrival test; only the second call of the rule base sees it.
 *
 * @param kind the figure
 * @param brake brake applied
 * @param place wheel, axle or vehicle
 * @param before value at arrival
 * @param after value at the final test
 * @param conspicuous whether the value at arrival was one that the workshop looks into
 * @param withinLimit whether the final value conforms to the regime
 * @param withinTarget whether it reaches the workshop's target; null where there is none
 * @param limit the regime's limit, or null
 * @param target the workshop's target, or null
 */
public record RetestComparison(
        FigureKind kind,
        BrakeSystem brake,
        Place place,
        @Nullable BigDecimal before,
        @Nullable BigDecimal after,
        boolean conspicuous,
        boolean withinLimit,
        @Nullable Boolean withinTarget,
        @Nullable BigDecimal limit,
        @Nullable BigDecimal target)
        implements Shown {

    /**
     * By how much the final value is better than the one at arrival, as a share of that value; below zero where it is
     * worse, zero where the two can't be compared.
     */
    public BigDecimal improvement() {
        if (before == null || after == null || before.signum() == 0) {
            return BigDecimal.ZERO;
        }
        BigDecimal change = kind.isBetterHigh() ? after.subtract(before) : before.subtract(after);
        return change.divide(before.abs(), MathContext.DECIMAL64);
    }

    /** Whether the final test shows the figure. */
    public boolean isTested() {
        return after != null;
    }

    /** Whether it is the imbalance of the service brake, as a share of the higher wheel. */
    public boolean isServiceImbalance() {
        return (kind == FigureKind.IMBALANCE || kind == FigureKind.PEAK_IMBALANCE) && brake == BrakeSystem.SERVICE;
    }

    /** Whether the figure keeps the regime's limit but misses the workshop's target. */
    public boolean isShortOfTarget() {
        return withinLimit && Boolean.FALSE.equals(withinTarget);
    }

    /** Whether the figure keeps the regime's limit and the workshop's target where there is one. */
    public boolean isGood() {
        return after != null && withinLimit && !Boolean.FALSE.equals(withinTarget);
    }

    @Override
    public String shown() {
        return kind
                + " of the "
                + brake
                + " brake at "
                + place
                + ": "
                + FigureWords.of(kind, before)
                + " before, "
                + FigureWords.of(kind, after)
                + " after";
    }
}
