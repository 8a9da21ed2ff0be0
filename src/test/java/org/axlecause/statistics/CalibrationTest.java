package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.axlecause.statistics.Calibration.Bin;
import org.axlecause.statistics.Calibration.Forecasts;
import org.junit.jupiter.api.Test;

class CalibrationTest {

    /** Worked by hand: squares .01 .16 .04 .01 .49; log loss to six decimals. */
    @Test
    void five_forecasts_are_scored() {
        Calibration calibration = Calibration.of(
                List.of(told(0.1, 0, 1), told(0.4, 0, 1), told(0.8, 1, 1), told(0.9, 1, 1), told(0.3, 1, 1)), 10);

        assertThat(calibration.number()).isEqualTo(5);
        assertThat(calibration.brier()).isCloseTo(0.142, within(1e-15));
        assertThat(calibration.logLoss()).isCloseTo(0.429733, within(0.5e-6));
    }

    /** Murphy 1973: Brier 0.190 = reliability 0.005 - resolution 0.0625 + uncertainty 0.2475. */
    @Test
    void the_score_falls_into_its_three_parts() {
        Calibration calibration = Calibration.of(List.of(told(0.2, 2, 10), told(0.8, 7, 10)), 10);

        assertThat(calibration.brier()).isCloseTo(0.190, within(1e-15));
        assertThat(calibration.reliability()).isCloseTo(0.005, within(1e-15));
        assertThat(calibration.resolution()).isCloseTo(0.0625, within(1e-15));
        assertThat(calibration.uncertainty()).isCloseTo(0.2475, within(1e-15));
        assertThat(calibration.expectedCalibrationError()).isCloseTo(0.05, within(1e-15));
    }

    @Test
    void bins_hold_their_lower_edge_and_the_last_one_both() {
        Calibration calibration =
                Calibration.of(List.of(told(0, 0, 1), told(0.1, 0, 2), told(0.15, 1, 2), told(1, 3, 3)), 10);

        assertThat(calibration.bins())
                .containsExactly(
                        new Bin(0, 0.1, 0, new Proportion(0, 1)),
                        new Bin(0.1, 0.2, 0.125, new Proportion(1, 4)),
                        new Bin(0.9, 1, 1, new Proportion(3, 3)));
    }

    @Test
    void forecasts_of_one_probability_are_added_up() {
        Calibration parts = Calibration.of(List.of(told(0.3, 1, 2), told(0.3, 1, 5), told(0.3, 0, 0)), 10);

        assertThat(parts).isEqualTo(Calibration.of(List.of(told(0.3, 2, 7)), 10));
    }

    @Test
    void what_was_given_no_chance_and_came_all_the_same_has_no_log_loss() {
        assertThat(Calibration.of(List.of(told(0, 1, 2)), 10).logLoss()).isNull();
        assertThat(Calibration.of(List.of(told(1, 1, 2)), 10).logLoss()).isNull();
        assertThat(Calibration.of(List.of(told(0, 0, 2), told(1, 2, 2)), 10).logLoss())
                .isZero();
    }

    @Test
    void no_forecasts_and_no_probabilities_are_refused() {
        assertThatIllegalArgumentException().isThrownBy(() -> Calibration.of(List.of(), 10));
        assertThatIllegalArgumentException().isThrownBy(() -> told(1.1, 0, 1)).withMessageContaining("1.1");
    }

    private static Forecasts told(double probability, long cameTrue, long of) {
        return new Forecasts(probability, new Proportion(cameTrue, of));
    }
}
