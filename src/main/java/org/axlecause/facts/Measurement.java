package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A measured value, in the SI unit of its quantity (temperatures in degrees Celsius).
 *
 * @param quantity what was measured
 * @param value the value
 * @param limit the limit stamped on the part or stated by the maker
 * @param sent value and unit as the sender wrote them
 */
public record Measurement(
        MeasuredQuantity quantity,
        BigDecimal value,
        @Nullable BigDecimal limit,
        String sent) {

    boolean beyondOwnLimit(MeasuredQuantity asked, int side) {
        return quantity == asked && limit != null && value.compareTo(limit) == side;
    }

    boolean beyond(MeasuredQuantity asked, BigDecimal bound, int side) {
        return quantity == asked && limit == null && value.compareTo(bound) == side;
    }
}
