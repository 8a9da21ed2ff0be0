package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * Forces of one axle over time.
 *
 * @param samplePeriod seconds between samples
 * @param left forces at the left wheel, newtons
 * @param right forces at the right wheel, newtons
 * @param pedal force at the pedal, newtons
 */
public record Trace(
        BigDecimal samplePeriod,
        Samples left,
        Samples right,
        @Nullable Samples pedal) {}
