package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A decelerometer or road test.
 *
 * @param stage when it was driven
 * @param brake brake applied
 * @param initialSpeed speed at the start of braking, metres per second
 * @param meanFullyDevelopedDeceleration metres per second squared
 * @param beginSpeed speed where the averaging begins (0.8 of the initial), metres per second
 * @param endSpeed speed where it ends (0.1 of the initial), metres per second
 * @param beginDistance distance covered to the begin speed, metres
 * @param endDistance distance covered to the end speed, metres
 * @param stoppingDistance distance to standstill, metres
 * @param deviation how far the vehicle left the straight line
 */
public record RoadTestRecorded(
        Stage stage,
        BrakeSystem brake,
        @Nullable BigDecimal initialSpeed,
        @Nullable BigDecimal meanFullyDevelopedDeceleration,
        @Nullable BigDecimal beginSpeed,
        @Nullable BigDecimal endSpeed,
        @Nullable BigDecimal beginDistance,
        @Nullable BigDecimal endDistance,
        @Nullable BigDecimal stoppingDistance,
        @Nullable Deviation deviation)
        implements Entry {}
