package org.axlecause.repair;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * How much of an item a line takes or a figure shows.
 *
 * @param value the number
 * @param unit UCUM code; {@code 1} for a count
 * @param of what is counted or measured, in words; null where the place of the value says it
 */
public record Measure(
        BigDecimal value, String unit, @Nullable String of) {}
