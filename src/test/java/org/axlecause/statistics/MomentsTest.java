package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The certified values of the univariate data sets of NIST's Statistical Reference Datasets, itl.nist.gov/div898/strd. The
 * set PiDigits is left out: its values hold for a file in which one digit is not that of pi.
 */
class MomentsTest {

    private static final Path DATA = Path.of("src/test/resources/statistics");

    /** Name, values, mean, standard deviation, autocorrelation, and the relative error that doubles allow for. */
    static Stream<Arguments> certified() {
        return Stream.of(
                Arguments.of("Lottery", read("lottery"), 518.958715596330, 291.699727470969, -0.120948622967393, 2e-14),
                Arguments.of("Lew", read("lew"), -177.435000000000, 277.332168044316, -0.307304800605679, 1e-14),
                Arguments.of("Mavro", read("mavro"), 2.00185600000000, 0.000429123454003053, 0.937989183438248, 1e-12),
                Arguments.of(
                        "Michelso", read("michelso"), 299.852400000000, 0.0790105478190518, 0.535199668621283, 1e-12),
                Arguments.of("NumAcc1", new double[] {10000001, 10000003, 10000002}, 10000002, 1, -0.5, 1e-15),
                Arguments.of("NumAcc2", alternating(1), 1.2, 0.1, -0.999, 1e-13),
                Arguments.of("NumAcc3", alternating(1000000), 1000000.2, 0.1, -0.999, 1e-9),
                Arguments.of("NumAcc4", alternating(10000000), 10000000.2, 0.1, -0.999, 1e-8));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("certified")
    void the_moments_are_those_certified(
            String name, double[] values, double mean, double deviation, double autocorrelation, double error) {
        Moments moments = Moments.of(values);

        assertThat(moments.mean()).isCloseTo(mean, within(Math.abs(mean) * 1e-14));
        assertThat(moments.standardDeviation()).isCloseTo(deviation, within(deviation * error));
        assertThat(Moments.lagOneAutocorrelation(values))
                .isCloseTo(autocorrelation, within(Math.max(5e-15, Math.abs(autocorrelation) * error)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("certified")
    void moments_of_parts_add_up_to_those_certified(
            String name, double[] values, double mean, double deviation, double autocorrelation, double error) {
        Moments sum = Moments.NONE;
        for (int from = 0; from < values.length; from += 7) {
            sum = sum.plus(Moments.of(Arrays.copyOfRange(values, from, Math.min(values.length, from + 7))));
        }

        assertThat(sum.number()).isEqualTo(values.length);
        assertThat(sum.mean()).isCloseTo(mean, within(Math.abs(mean) * 1e-14));
        assertThat(sum.standardDeviation()).isCloseTo(deviation, within(deviation * Math.max(error, 1e-12)));
    }

    @Test
    void fewer_than_two_values_have_no_spread_and_equal_ones_no_autocorrelation() {
        assertThatIllegalStateException().isThrownBy(Moments.of(3)::standardDeviation);
        assertThatIllegalStateException().isThrownBy(Moments.NONE::standardDeviation);
        assertThatIllegalArgumentException().isThrownBy(() -> Moments.lagOneAutocorrelation(2, 2, 2));
        assertThatIllegalArgumentException().isThrownBy(() -> new Moments(1, 0, -1));
    }

    private static double[] read(String name) {
        try (Stream<String> lines = Files.lines(DATA.resolve(name + ".txt"))) {
            return lines.filter(line -> !line.startsWith("#"))
                    .flatMap(line -> Stream.of(line.split(" ")))
                    .mapToDouble(Double::parseDouble)
                    .toArray();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static double[] alternating(int base) {
        return IntStream.rangeClosed(0, 1000)
                .mapToDouble(index -> Double.parseDouble(base + (index == 0 ? ".2" : index % 2 == 1 ? ".1" : ".3")))
                .toArray();
    }
}
