package org.axlecause.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.axlecause.fleet.SignatureTable.Pair;
import org.axlecause.fleet.SignatureTable.Row;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every row of the signature table comes out of the forward model, within 2 % or the last printed digit. */
class SignatureTableTest {

    static List<Row> rows() {
        return SignatureTable.rows();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void forces_come_out_as_tabulated(Row row) {
        Signature signature = signatureOf(row);

        near(signature.rolling(true), signature.rolling(false), row.rolling(), 0.5);
        near(signature.hold(true), signature.hold(false), row.hold(), 0.5);
        near(signature.residual(true), signature.residual(false), row.residual(), 0.6);
    }

    @ParameterizedTest
    @MethodSource("rows")
    void imbalances_come_out_as_tabulated(Row row) {
        Signature signature = signatureOf(row);

        assertThat(100 * signature.imbalanceAt(0.25)).isCloseTo(row.imbalance().quarter(), within(0.6));
        assertThat(100 * signature.imbalanceAt(0.5)).isCloseTo(row.imbalance().half(), within(0.6));
        assertThat(100 * signature.imbalanceOfHold()).isCloseTo(row.imbalance().full(), within(0.6));
        assertThat(100 * signature.imbalanceOfPeaks()).isCloseTo(row.ofPeaks(), within(0.6));
    }

    @ParameterizedTest
    @MethodSource("rows")
    void times_come_out_as_tabulated(Row row) {
        Signature signature = signatureOf(row);

        near(signature.timeTo(0.1, true), signature.timeTo(0.1, false), row.onset(), 0.011);
        near(signature.timeTo(0.9, true), signature.timeTo(0.9, false), row.rise(), 0.011);
        near(signature.releaseTime(true), signature.releaseTime(false), row.release(), 0.011);
    }

    @ParameterizedTest
    @MethodSource("rows")
    void swings_come_out_as_tabulated(Row row) {
        Signature signature = signatureOf(row);

        near(100 * signature.swing(true), 100 * signature.swing(false), row.swing(), 0.6);
    }

    private static Signature signatureOf(Row row) {
        return new Signature(ReferenceAxle.run(row.first(), row.second()));
    }

    private static void near(double first, double second, Pair expected, double digit) {
        near(first, expected.first(), digit);
        near(second, expected.second(), digit);
    }

    private static void near(double actual, double expected, double digit) {
        if (Double.isInfinite(expected)) {
            assertThat(actual).isGreaterThan(2.5);
        } else {
            assertThat(actual).isCloseTo(expected, within(Math.max(digit, 0.02 * Math.abs(expected))));
        }
    }
}
