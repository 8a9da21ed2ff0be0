package org.axlecause.facts;

import java.math.BigDecimal;

/**
 * How far a workshop gauge may be off; only the second call of the rule base sees it.
 *
 * @param quantity what is measured with it
 * @param value how far, in the SI unit of the quantity
 */
public record GaugeUncertainty(MeasuredQuantity quantity, BigDecimal value) implements Shown {

    /** Whether a measured value is so near to a bound that the gauge cannot tell on which side it lies. */
    public boolean blurs(BigDecimal measured, BigDecimal bound) {
        return measured.subtract(bound).abs().compareTo(value) <= 0;
    }

    @Override
    public String shown() {
        return "gauge of " + quantity;
    }
}
