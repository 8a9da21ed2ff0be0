package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A rule of a regime by which a figure is not held against the vehicle.
 *
 * @param kind figure concerned
 * @param brake brake concerned
 * @param when circumstance in which it holds
 * @param value stated force in newtons, or stated lower figure; null where the circumstance needs none
 * @param verified how well the rule is verified
 * @param source document and section
 */
public record Lenience(
        FigureKind kind,
        BrakeSystem brake,
        Circumstance when,
        @Nullable BigDecimal value,
        Verified verified,
        String source) {}
