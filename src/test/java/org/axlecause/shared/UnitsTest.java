package org.axlecause.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Random;
import javax.measure.IncommensurableException;
import javax.measure.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import systems.uom.ucum.format.UCUMFormat;

class UnitsTest {

    /**
     * Factors: the International System of Units brochure (9th edition) tables 5 to 8 and NIST SP 811 appendix B.8 (kgf
     * 9.80665 N, pound-force 4.4482216152605 N, pound 0.45359237 kg, inch 25.4 mm, mile 1609.344 m).
     */
    @ParameterizedTest(name = "{0} {1} is {3} in the base unit of {2}")
    @CsvSource({
        "1610, N, FORCE, 1610",
        "1.42, kN, FORCE, 1420",
        "161, daN, FORCE, 1610",
        "164.2, kgf, FORCE, 1610.25193",
        "50, [lbf_av], FORCE, 222.411080763025",
        "560, kg, MASS, 560",
        "1.43, t, MASS, 1430",
        "3000, [lb_av], MASS, 1360.77711",
        "3.20, mm, LENGTH, 0.0032",
        "0.125, [in_i], LENGTH, 0.003175",
        "148200, km, LENGTH, 148200000",
        "92000, [mi_i], LENGTH, 148059648",
        "2.5, bar, PRESSURE, 250000",
        "250, kPa, PRESSURE, 250000",
        "20, ms, TIME, 0.02",
        "1.5, min, TIME, 90",
        "2, h, TIME, 7200",
        "36, km/h, SPEED, 10",
        "5.9, m/s2, ACCELERATION, 5.9",
        "180, Cel, TEMPERATURE, 180",
        "356, [degF], TEMPERATURE, 180",
        "293.15, K, TEMPERATURE, 20",
        "8, %, RATIO, 0.08",
        "0.5, L, VOLUME, 0.0005",
        "500, mL, VOLUME, 0.0005",
        "110, N.m, TORQUE, 110",
        "7, 1, NUMBER, 7",
        "7, {click}, NUMBER, 7"
    })
    void a_value_is_converted_exactly(String value, String unit, Dimension dimension, String expected) {
        assertThat(Units.toBase(new BigDecimal(value), unit, dimension)).isEqualTo(new BigDecimal(expected));
    }

    @ParameterizedTest(name = "{0} in base units are {2} {1}")
    @CsvSource({
        "1420, kN, 1.42",
        "0.0032, mm, 3.2",
        "500000, km, 500",
        "0.3, s, 0.3",
        "0.1818, %, 18.18",
        "1.5, 1, 1.5",
        "180, Cel, 180",
        "20, K, 293.15"
    })
    void a_value_in_base_units_is_told_in_another(String base, String unit, String expected) {
        assertThat(Units.fromBase(new BigDecimal(base), unit)).isEqualTo(new BigDecimal(expected));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "[psi], PRESSURE, 6894.757293168361336722673445346891",
        "km/h, SPEED, 0.2777777777777777777777777777777778"
    })
    void a_factor_that_is_no_finite_decimal_is_kept_to_34_digits(String unit, Dimension dimension, String expected) {
        assertThat(Units.toBase(BigDecimal.ONE, unit, dimension)).isEqualTo(new BigDecimal(expected));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "cN, FORCE, 0.01",
        "MN, FORCE, 1000000",
        "kg.m/s2, FORCE, 1",
        "um, LENGTH, 0.000001",
        "[lbf_av]/[in_i]2, PRESSURE, 6894.757293168361336722673445346891",
        "us, TIME, 0.000001",
        "cm/s, SPEED, 0.01",
        "[ppth], RATIO, 0.001"
    })
    void any_other_unit_of_the_right_dimension_is_taken(String unit, Dimension dimension, String expected) {
        assertThat(Units.toBase(BigDecimal.ONE, unit, dimension)).isEqualTo(new BigDecimal(expected));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "N, FORCE",
        "kN, FORCE",
        "daN, FORCE",
        "kgf, FORCE",
        "[lbf_av], FORCE",
        "kg, MASS",
        "g, MASS",
        "t, MASS",
        "[lb_av], MASS",
        "m, LENGTH",
        "mm, LENGTH",
        "cm, LENGTH",
        "km, LENGTH",
        "[in_i], LENGTH",
        "[ft_i], LENGTH",
        "[mi_i], LENGTH",
        "Pa, PRESSURE",
        "kPa, PRESSURE",
        "MPa, PRESSURE",
        "bar, PRESSURE",
        "[psi], PRESSURE",
        "s, TIME",
        "ms, TIME",
        "min, TIME",
        "h, TIME",
        "m/s, SPEED",
        "km/h, SPEED",
        "[mi_i]/h, SPEED",
        "m/s2, ACCELERATION",
        "[g], ACCELERATION",
        "m3, VOLUME",
        "L, VOLUME",
        "l, VOLUME",
        "mL, VOLUME",
        "ml, VOLUME",
        "N.m, TORQUE",
        "%, RATIO",
        "1, RATIO",
        "Cel, TEMPERATURE",
        "K, TEMPERATURE",
        "[degF], TEMPERATURE"
    })
    void our_factors_agree_with_the_unit_library(String unit, Dimension dimension) throws IncommensurableException {
        BigDecimal value = new BigDecimal("12.345");
        Unit<?> from = ucum(unit);
        Unit<?> base = ucum(dimension.base());

        Number byLibrary = from.getConverterToAny(base).convert(value);

        assertThat(Units.toBase(value, unit, dimension).round(new MathContext(30)))
                .isEqualByComparingTo(new BigDecimal(byLibrary.toString()).round(new MathContext(30)));
    }

    private static Unit<?> ucum(String code) {
        return UCUMFormat.getInstance(UCUMFormat.Variant.CASE_SENSITIVE).parse(code);
    }

    @ParameterizedTest(name = "{0} for {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "kg | FORCE | `kg` is a mass; a force is expected: N, kN, daN, kgf, [lbf_av]",
                "N | MASS | `N` is a force; a mass is expected: kg, t, [lb_av]",
                "kn | FORCE | `kn` is no unit code of UCUM (codes are case-sensitive); a force is expected: N, kN, daN, kgf, [lbf_av]",
                "A | LENGTH | `A` is another kind of quantity; a length is expected: mm, m, km, [in_i], [mi_i]",
                "% | TEMPERATURE | `%` is a share; a temperature is expected: Cel, [degF]",
                "N m | TORQUE | `N m` is no unit code of UCUM (codes are case-sensitive); a torque is expected: N.m"
            })
    void a_unit_of_another_dimension_is_named(String unit, Dimension dimension, String words) {
        assertThat(Units.whatIsWrong(unit, dimension)).contains(words);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Units.toBase(BigDecimal.ONE, unit, dimension))
                .withMessage(words);
    }

    @Test
    void equal_values_come_out_equal_however_they_are_written() {
        assertThat(Units.toBase(new BigDecimal("1.50"), "kN", Dimension.FORCE))
                .isEqualTo(Units.toBase(new BigDecimal("1.5E+3"), "N", Dimension.FORCE))
                .isEqualTo(new BigDecimal("1500"));
    }

    @ParameterizedTest(name = "[{index}]")
    @CsvSource({"'', FORCE", "'N\u0000', FORCE", "(((((((N, FORCE", "N..N, FORCE", "m2, LENGTH", "kN.kN, FORCE"})
    void nonsense_is_refused_and_never_thrown_out_of_the_library(String unit, Dimension dimension) {
        assertThat(Units.whatIsWrong(unit, dimension)).isPresent();
    }

    @Test
    void no_text_makes_the_unit_library_fault() {
        long seed = 20260302L;
        Random random = new Random(seed);
        String alphabet = "NkgmsbarL%[]{}()./*^-+0123456789_' \u00b5\u0000";
        for (int round = 0; round < 5000; round++) {
            StringBuilder code = new StringBuilder();
            int length = random.nextInt(10);
            for (int i = 0; i < length; i++) {
                code.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }

            assertThatCode(() -> Units.whatIsWrong(code.toString(), Dimension.FORCE))
                    .as("seed %s, code %s", seed, code)
                    .doesNotThrowAnyException();
        }
    }
}
