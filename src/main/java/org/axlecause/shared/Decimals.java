package org.axlecause.shared;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Turns doubles into decimals of a few digits. */
public final class Decimals {

    private static final double[] POWERS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6};
    private static final double SMALL = 1e9;
    private static final double CLEAR_OF_THE_MIDDLE = 1e-5;

    private Decimals() {}

    /**
     * The shortest decimal that names the double, rounded half to even. Between two middles there is no need to write
     * that decimal out, which takes most of the time.
     */
    public static BigDecimal rounded(double value, int scale) {
        double scaled = scale < POWERS.length ? value * POWERS[scale] : SMALL;
        boolean clear = Math.abs(scaled) < SMALL && Math.abs(scaled - Math.floor(scaled) - 0.5) > CLEAR_OF_THE_MIDDLE;
        return clear
                ? BigDecimal.valueOf((long) Math.rint(scaled), scale)
                : BigDecimal.valueOf(value).setScale(scale, RoundingMode.HALF_EVEN);
    }
}
