package org.axlecause.facts;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * How a regime rounds a figure before it is held against a limit.
 *
 * @param decimals decimals kept
 * @param mode direction
 * @param verified how well it is verified
 */
public record Rounding(int decimals, RoundingMode mode, Verified verified) {

    /** The value as the regime reads it. */
    public BigDecimal of(BigDecimal value) {
        return value.setScale(decimals, mode);
    }
}
