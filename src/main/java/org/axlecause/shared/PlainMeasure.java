package org.axlecause.shared;

import java.math.BigDecimal;
import java.text.NumberFormat;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Writes measures as people write them. */
public final class PlainMeasure {

    private static final BigDecimal FIRST_WITH_SEPARATOR = BigDecimal.valueOf(10_000);

    private PlainMeasure() {}

    /** A number with its unit; a ratio has no unit. */
    public static String of(BigDecimal value, @Nullable String unit) {
        return unit == null || unit.equals("1") ? number(value) : number(value) + " " + unit(unit);
    }

    private static String number(BigDecimal value) {
        BigDecimal stripped = value.stripTrailingZeros();
        if (stripped.abs().compareTo(FIRST_WITH_SEPARATOR) < 0) {
            return stripped.toPlainString();
        }
        NumberFormat format = NumberFormat.getNumberInstance(Locale.ENGLISH);
        format.setMaximumFractionDigits(Math.max(0, stripped.scale()));
        return format.format(stripped);
    }

    /** A unit as people write it. */
    public static String unit(String unit) {
        return switch (unit) {
            case "Cel" -> "°C";
            case "a" -> "years";
            case "m/s2" -> "m/s²";
            default -> unit;
        };
    }
}
