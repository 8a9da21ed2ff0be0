package org.axlecause.facts;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/** Writes the value of a figure with its unit, rounded for reading. */
final class FigureWords {

    private FigureWords() {}

    static String of(FigureKind kind, @Nullable BigDecimal value) {
        if (value == null) {
            return "not observable";
        }
        return switch (kind.unit()) {
            case "%" ->
                value.movePointRight(2).setScale(2, RoundingMode.HALF_EVEN).toPlainString() + " %";
            case "N" -> value.setScale(0, RoundingMode.HALF_EVEN).toPlainString() + " N";
            case "N/kg" -> value.setScale(3, RoundingMode.HALF_EVEN).toPlainString() + " N/kg";
            default -> value.setScale(2, RoundingMode.HALF_EVEN).toPlainString() + " " + kind.unit();
        };
    }
}
