package org.axlecause.shared;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import javax.measure.IncommensurableException;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import javax.measure.format.UnitFormat;
import org.jspecify.annotations.Nullable;
import systems.uom.ucum.format.UCUMFormat;
import systems.uom.ucum.internal.format.TokenMgrError;

/**
 * Converts quantities with UCUM unit codes to base units, exactly where the factor is a finite decimal and to 34 digits
 * where it is not.
 */
public final class Units {

    /** What a unit code may look like before the library sees it; long exponents would only burn time. */
    private static final Pattern CODE = Pattern.compile("(?!.*[0-9]{3})[!-~]{1,32}");

    private static final Map<String, Known> USUAL = usual();

    private Units() {}

    /**
     * The value in the base unit of its dimension, without trailing zeros.
     *
     * @throws IllegalArgumentException with the words of {@link #whatIsWrong} where the unit doesn't fit
     */
    public static BigDecimal toBase(BigDecimal value, String unit, Dimension dimension) {
        Known known = find(unit);
        if (known == null || !known.measures(dimension)) {
            throw new IllegalArgumentException(whatIsWrong(unit, dimension).orElse(unit));
        }
        return plain(known.toBase(value));
    }

    /**
     * A value of the base unit in another unit of its dimension, without trailing zeros.
     *
     * @throws IllegalArgumentException where the unit is none
     */
    public static BigDecimal fromBase(BigDecimal value, String unit) {
        Known known = find(unit);
        if (known == null) {
            throw new IllegalArgumentException("`" + unit + "` is no unit code of UCUM (codes are case-sensitive)");
        }
        BigDecimal none = known.toBase(BigDecimal.ZERO);
        return plain(value.subtract(none).divide(known.toBase(BigDecimal.ONE).subtract(none), MathContext.DECIMAL64));
    }

    /** Why this unit can't be used for this dimension, in words for the sender; empty where it can. */
    public static Optional<String> whatIsWrong(String unit, Dimension dimension) {
        Known known = find(unit);
        if (known != null && known.measures(dimension)) {
            return Optional.empty();
        }
        String expected = "; " + dimension.words() + " is expected: " + dimension.examples();
        if (known == null) {
            return Optional.of("`" + unit + "` is no unit code of UCUM (codes are case-sensitive)" + expected);
        }
        return Optional.of("`" + unit + "` is "
                + (known.dimension == null ? "another kind of quantity" : known.dimension.words()) + expected);
    }

    private static BigDecimal plain(BigDecimal value) {
        BigDecimal stripped = value.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    private static @Nullable Known find(String unit) {
        Known known = USUAL.get(unit);
        return known != null ? known : parsed(unit);
    }

    private static @Nullable Known parsed(String code) {
        if (!CODE.matcher(code).matches()) {
            return null;
        }
        Unit<?> unit;
        try {
            unit = ucum().parse(code);
        } catch (RuntimeException | TokenMgrError notAUnit) {
            return null;
        }
        for (Dimension dimension : Dimension.values()) {
            Unit<?> base = ucum().parse(dimension.base());
            if (unit.getDimension().equals(base.getDimension())) {
                return new Known(dimension, value -> converted(value, unit, base));
            }
        }
        return new Known(null, value -> value);
    }

    private static BigDecimal converted(BigDecimal value, Unit<?> unit, Unit<?> base) {
        try {
            UnitConverter converter = unit.getConverterToAny(base);
            return new BigDecimal(converter.convert(value).toString());
        } catch (IncommensurableException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private static UnitFormat ucum() {
        return UCUMFormat.getInstance(UCUMFormat.Variant.CASE_SENSITIVE);
    }

    private static Map<String, Known> usual() {
        Map<String, Known> units = new TreeMap<>();
        put(units, Dimension.FORCE, "N", "1", "kN", "1000", "daN", "10", "kgf", "9.80665");
        put(units, Dimension.FORCE, "[lbf_av]", "4.4482216152605");
        put(units, Dimension.MASS, "kg", "1", "g", "0.001", "t", "1000", "[lb_av]", "0.45359237");
        put(units, Dimension.LENGTH, "m", "1", "mm", "0.001", "cm", "0.01", "km", "1000");
        put(units, Dimension.LENGTH, "[in_i]", "0.0254", "[ft_i]", "0.3048", "[mi_i]", "1609.344");
        put(units, Dimension.PRESSURE, "Pa", "1", "kPa", "1000", "MPa", "1000000", "bar", "100000");
        put(units, Dimension.TIME, "s", "1", "ms", "0.001", "min", "60", "h", "3600");
        put(units, Dimension.SPEED, "m/s", "1", "[mi_i]/h", "0.44704");
        put(units, Dimension.ACCELERATION, "m/s2", "1", "[g]", "9.80665");
        put(units, Dimension.VOLUME, "m3", "1", "L", "0.001", "l", "0.001", "mL", "0.000001", "ml", "0.000001");
        put(units, Dimension.TORQUE, "N.m", "1");
        put(units, Dimension.RATIO, "%", "0.01", "1", "1");
        units.put("km/h", new Known(Dimension.SPEED, value -> fraction(value, "1", "3.6")));
        units.put("[psi]", new Known(Dimension.PRESSURE, value -> fraction(value, "4.4482216152605", "0.00064516")));
        units.put("Cel", new Known(Dimension.TEMPERATURE, value -> value));
        units.put("K", new Known(Dimension.TEMPERATURE, value -> value.subtract(new BigDecimal("273.15"))));
        units.put(
                "[degF]",
                new Known(Dimension.TEMPERATURE, value -> fraction(value.subtract(new BigDecimal("32")), "5", "9")));
        return Map.copyOf(units);
    }

    private static void put(Map<String, Known> units, Dimension dimension, String... codesAndFactors) {
        for (int i = 0; i < codesAndFactors.length; i += 2) {
            BigDecimal factor = new BigDecimal(codesAndFactors[i + 1]);
            units.put(codesAndFactors[i], new Known(dimension, value -> value.multiply(factor)));
        }
    }

    private static BigDecimal fraction(BigDecimal value, String numerator, String denominator) {
        return value.multiply(new BigDecimal(numerator)).divide(new BigDecimal(denominator), MathContext.DECIMAL128);
    }

    /** A unit with what it measures; null where that is none of our dimensions. */
    private record Known(@Nullable Dimension dimension, Conversion conversion) {

        boolean measures(Dimension wanted) {
            return dimension == wanted || (dimension == Dimension.RATIO && wanted == Dimension.NUMBER);
        }

        BigDecimal toBase(BigDecimal value) {
            return conversion.toBase(value);
        }
    }

    private interface Conversion {
        BigDecimal toBase(BigDecimal value);
    }
}
