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
 */
public record WheelReading(
        @Nullable BigDecimal peak,
        @Nullable BigDecimal drag,
        @Nullable BigDecimal fluctuation,
        @Nullable Boolean locked) {}
