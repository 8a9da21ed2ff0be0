package org.axlecause.measurement;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Turns computed doubles into decimals without digits that mean nothing. */
final class Rounded {

    private static final MathContext SIX_DIGITS = new MathContext(6, RoundingMode.HALF_EVEN);

    private Rounded() {}

    static BigDecimal ratio(double value) {
        return toScale(value, 5);
    }

    static BigDecimal force(double value) {
        return toScale(value, 1);
    }

    static BigDecimal time(double value) {
        return toScale(value, 3);
    }

    static BigDecimal uncertainty(double value) {
        return plain(new BigDecimal(value).round(SIX_DIGITS));
    }

    private static BigDecimal toScale(double value, int scale) {
        return plain(new BigDecimal(value).setScale(scale, RoundingMode.HALF_EVEN));
    }

    private static BigDecimal plain(BigDecimal value) {
        BigDecimal stripped = value.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }
}
