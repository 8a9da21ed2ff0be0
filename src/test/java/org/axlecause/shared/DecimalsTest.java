package org.axlecause.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecimalsTest {

    private static final long SEED = 20260302L;

    @ParameterizedTest
    @CsvSource({
        "0.00005, 4, 0.0000",
        "0.00015, 4, 0.0002",
        "0.00025, 4, 0.0002",
        "-0.00015, 4, -0.0002",
        "-0.00001, 4, 0.0000",
        "0, 1, 0.0",
        "1, 4, 1.0000",
        "-17.25, 1, -17.2",
        "1e300, 0, 1e300",
        "0.12345678, 7, 0.1234568"
    })
    void a_double_is_rounded_half_to_even_by_its_shortest_decimal(double value, int scale, String rounded) {
        assertThat(Decimals.rounded(value, scale))
                .isEqualTo(new BigDecimal(rounded).setScale(scale, RoundingMode.UNNECESSARY));
    }

    @Test
    void any_double_is_rounded_as_its_shortest_decimal_is() {
        Random random = new Random(SEED);
        for (int i = 0; i < 100_000; i++) {
            int scale = random.nextInt(8);
            double value = i % 2 == 0
                    ? random.nextGaussian() * Math.pow(10, random.nextInt(12) - 6)
                    : (random.nextInt(2001) - 1000 + 0.5) / Math.pow(10, scale);
            assertThat(Decimals.rounded(value, scale))
                    .as("%s to %d digits, seed %d", value, scale, SEED)
                    .isEqualTo(BigDecimal.valueOf(value).setScale(scale, RoundingMode.HALF_EVEN));
        }
    }
}
