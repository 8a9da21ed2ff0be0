package org.axlecause.facts;

import java.math.BigDecimal;

/**
 * A workshop threshold above or beside the legal limits, in SI units or as a ratio.
 *
 * @param code what it is for
 * @param value the value
 * @param verified standing of the value
 * @param source document and section, or whose habit it is
 */
public record Threshold(ThresholdCode code, BigDecimal value, Verified verified, String source) implements Shown {

    @Override
    public String shown() {
        return code + " = " + value.stripTrailingZeros().toPlainString();
    }
}
