package org.axlecause.judgement;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.axlecause.facts.FigureKind;
import org.jspecify.annotations.Nullable;

/**
 * A value with its unit, as it is shown.
 *
 * @param value value in the unit
 * @param unit UCUM code
 */
public record Quantity(BigDecimal value, String unit) {

    private static final int SHARE_DECIMALS = 4;
    private static final int FORCE_DECIMALS = 1;
    private static final int OTHER_DECIMALS = 3;

    /** A figure's value in the unit the figure is shown in; null for null. */
    static @Nullable Quantity of(FigureKind kind, @Nullable BigDecimal value) {
        if (value == null) {
            return null;
        }
        return switch (kind.unit()) {
            case "%" -> plain(value.movePointRight(2), SHARE_DECIMALS, "%");
            case "N" -> plain(value, FORCE_DECIMALS, "N");
            default -> plain(value, OTHER_DECIMALS, kind.unit());
        };
    }

    private static Quantity plain(BigDecimal value, int decimals, String unit) {
        BigDecimal rounded = value.setScale(decimals, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return new Quantity(rounded.scale() < 0 ? rounded.setScale(0) : rounded, unit);
    }
}
