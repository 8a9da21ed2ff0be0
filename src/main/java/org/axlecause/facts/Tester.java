package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * What is known of the roller tester.
 *
 * @param accuracy largest permissible error as a ratio
 * @param accuracyOf what the accuracy is a share of
 * @param range upper end of the range, newtons
 * @param resolution smallest step, newtons
 * @param speed roller speed, metres per second
 */
public record Tester(
        @Nullable BigDecimal accuracy,
        @Nullable Accuracy accuracyOf,
        @Nullable BigDecimal range,
        @Nullable BigDecimal resolution,
        @Nullable BigDecimal speed) {}
