package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * Readings of one axle on the rollers.
 *
 * @param number axle, counted from the front
 * @param load load on the axle during the test, kilograms
 * @param left reading of the left wheel
 * @param right reading of the right wheel
 * @param trace forces over time
 */
public record AxleReading(
        int number,
        @Nullable BigDecimal load,
        @Nullable WheelReading left,
        @Nullable WheelReading right,
        @Nullable Trace trace) {}
