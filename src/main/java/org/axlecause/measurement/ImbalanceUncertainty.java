package org.axlecause.measurement;

import java.math.BigDecimal;
import org.axlecause.facts.Tester;
import org.jspecify.annotations.Nullable;

/** Standard uncertainty of an imbalance of the form (high - low) / high. */
public final class ImbalanceUncertainty {

    private ImbalanceUncertainty() {}

    /**
     * The standard uncertainty of an imbalance read on that tester, with the errors of its two sides taken as
     * independent; null where the tester's accuracy is not known.
     */
    public static @Nullable BigDecimal of(BigDecimal high, BigDecimal low, @Nullable Tester tester) {
        ForceUncertainty ofHigh = ForceUncertainty.of(high, tester);
        ForceUncertainty ofLow = ForceUncertainty.of(low, tester);
        if (ofHigh == null || ofLow == null || high.signum() <= 0) {
            return null;
        }
        return Rounded.uncertainty(
                linear(high.doubleValue(), low.doubleValue(), ofHigh.combined(), ofLow.combined(), 0));
    }

    /**
     * By linear propagation (JCGM 100:2008, 5.2): a scale error common to both sides (correlation 1) cancels.
     *
     * @param high higher force
     * @param low lower force
     * @param ofHigh standard uncertainty of the higher force
     * @param ofLow standard uncertainty of the lower force
     * @param correlation correlation of the two errors
     */
    public static double linear(double high, double low, double ofHigh, double ofLow, double correlation) {
        double byLow = ofLow / high;
        double byHigh = low * ofHigh / (high * high);
        return Math.sqrt(Math.max(0, byLow * byLow + byHigh * byHigh - 2 * correlation * byLow * byHigh));
    }
}
