package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * Reading of one wheel.
 *
 * @param peak highest force, newtons
 * @param drag force with no brake applied, newtons
 * @param fluctuation swing within one wheel turn, ratio of the highest force
 * @param locked whether the wheel locked
 * @param expected force that the model's data or the vehicle's last test lead to expect, newtons
 */
public record WheelReading(
        @Nullable BigDecimal peak,
        @Nullable BigDecimal drag,
        @Nullable BigDecimal fluctuation,
        @Nullable Boolean locked,
        @Nullable BigDecimal expected) {

    /** A reading of a wheel of which nobody knows what to expect. */
    public WheelReading(
            @Nullable BigDecimal peak,
            @Nullable BigDecimal drag,
            @Nullable BigDecimal fluctuation,
            @Nullable Boolean locked) {
        this(peak, drag, fluctuation, locked, null);
    }
}
