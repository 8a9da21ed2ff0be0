package org.axlecause.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.axlecause.facts.Accuracy;
import org.axlecause.facts.Bound;
import org.axlecause.facts.Tester;
import org.axlecause.measurement.MonteCarlo.Input;
import org.axlecause.measurement.MonteCarlo.Spread;
import org.axlecause.measurement.UncertaintyBudget.Component;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Uncertainty against the worked examples of the guides; each check names its source and standing. */
class UncertaintyTest {

    /**
     * JCGM 100:2008, H.1, end gauge (inputs from memory; results 32 nm and 16 degrees read in public test files): length
     * of the standard 25 nm with 18 degrees of freedom, difference 9.7 nm of 5.8, 3.9 and 6.7 nm, expansion and
     * temperature differences.
     */
    @Test
    void the_end_gauge_of_the_guide_is_known_to_32_nanometres() {
        double length = 50_000_623;
        UncertaintyBudget difference =
                UncertaintyBudget.of(new Component(1, 5.8, 24), new Component(1, 3.9, 5), new Component(1, 6.7, 8));
        UncertaintyBudget gauge = UncertaintyBudget.of(
                new Component(1, 25, 18),
                new Component(1, difference.combined(), difference.effectiveDegrees()),
                new Component(length * 0.1, 1e-6 / Math.sqrt(3), 50),
                new Component(length * 11.5e-6, 0.05 / Math.sqrt(3), 2));

        assertThat(difference.combined()).isCloseTo(9.7, within(0.05));
        assertThat(difference.effectiveDegrees()).isCloseTo(25.6, within(0.2));
        assertThat(gauge.combined()).isCloseTo(31.7, within(0.05));
        assertThat(Math.floor(gauge.effectiveDegrees())).isEqualTo(16);
        assertThat(gauge.expanded(0.99)).isCloseTo(93, within(0.6));
    }

    /** The same with the terms of second order (JCGM 100:2008, H.1.7; from memory): 34 nm. */
    @Test
    void the_end_gauge_is_known_to_34_nanometres_with_its_terms_of_second_order() {
        double length = 50_000_623;
        UncertaintyBudget gauge = UncertaintyBudget.of(
                Component.of(1, 25),
                Component.of(1, 9.7),
                Component.within(length * 0.1, 1e-6),
                Component.within(length * 11.5e-6, 0.05),
                Component.of(length, 1e-6 / Math.sqrt(3) * 0.41),
                Component.of(length, 2e-6 / Math.sqrt(3) * 0.05 / Math.sqrt(3)));

        assertThat(gauge.combined()).isCloseTo(34, within(0.2));
    }

    /** Welch and Satterthwaite (read in public test files): 0.57 with 9 degrees and 0.25 for sure give 12.8. */
    @Test
    void degrees_of_freedom_combine_as_in_the_example() {
        UncertaintyBudget budget = UncertaintyBudget.of(new Component(1, 0.57, 9), Component.of(1, 0.25));

        assertThat(budget.effectiveDegrees()).isCloseTo(12.8, within(0.05));
    }

    /** JCGM 101:2008, 9.2, sum of four (first two rows read in public test files, the last from memory). */
    @ParameterizedTest(name = "{0}, last {1}: u {2}, 95 % within {3}")
    @CsvSource({"NORMAL, 1, 2.00, 3.92", "RECTANGULAR, 1, 2.00, 3.88", "RECTANGULAR, 10, 10.14, 17.0"})
    void a_sum_of_four_is_spread_as_in_the_guide(Spread spread, double last, double uncertainty, double end) {
        double scale = spread == Spread.NORMAL ? 1 : Math.sqrt(3);
        Input one = new Input(0, spread, scale);
        MonteCarlo.Result sum = MonteCarlo.propagate(
                List.of(one, one, one, new Input(0, spread, last * scale)),
                drawn -> drawn[0] + drawn[1] + drawn[2] + drawn[3],
                1_000_000);

        assertThat(sum.uncertainty()).isCloseTo(uncertainty, withinPercentage(0.5));
        assertThat(sum.low(0.95)).isCloseTo(-end, withinPercentage(1));
        assertThat(sum.high(0.95)).isCloseTo(end, withinPercentage(1));
    }

    @Test
    void the_same_inputs_are_simulated_alike() {
        List<Input> inputs = Collections.nCopies(2, new Input(3, Spread.NORMAL, 1));

        MonteCarlo.Result once = MonteCarlo.propagate(inputs, drawn -> drawn[0] * drawn[1], 1000);
        MonteCarlo.Result again = MonteCarlo.propagate(inputs, drawn -> drawn[0] * drawn[1], 1000);

        assertThat(again.mean()).isEqualTo(once.mean());
        assertThat(again.uncertainty()).isEqualTo(once.uncertainty());
        assertThat(again.low(0.95)).isEqualTo(once.low(0.95));
    }

    /** Computed for the two brake quantities (derived): 2000 and 1400 N. */
    @ParameterizedTest(name = "1 % each, correlation {0}: {1} points")
    @CsvSource({"0, 0.98995", "1, 0"})
    void an_imbalance_is_known_to_about_a_point(double correlation, double points) {
        assertThat(100 * ImbalanceUncertainty.linear(2000, 1400, 20, 14, correlation))
                .isCloseTo(points, within(0.00001));
    }

    /** Computed (derived): plus or minus 2 % of the reading at either wheel. */
    @Test
    void a_tester_of_two_percent_knows_an_imbalance_to_1_14_points() {
        Tester tester = new Tester(new BigDecimal("0.02"), Accuracy.READING, null, null, null);

        BigDecimal uncertainty = ImbalanceUncertainty.of(new BigDecimal("2000"), new BigDecimal("1400"), tester);

        assertThat(uncertainty.doubleValue() * 100).isCloseTo(1.1431, within(0.0001));
    }

    /** Computed (derived): 2600, 2500, 1500 and 1450 N on 1200 kg known to 5 kg, 1 % each. */
    @Test
    void an_efficiency_is_known_worse_when_the_scale_error_is_common() {
        double weight = 1200 * 9.81;
        double sum = 2600 + 2500 + 1500 + 1450;
        double apart = UncertaintyBudget.of(
                        Component.of(1, 26), Component.of(1, 25), Component.of(1, 15), Component.of(1, 14.5))
                .combined();

        assertThat(100 * sum / weight).isCloseTo(68.3826, within(0.0001));
        assertThat(100 * UncertaintyOfRatio.ofRatio(sum, apart, weight, 5 * 9.81))
                .isCloseTo(0.4544, within(0.0001));
        assertThat(100 * UncertaintyOfRatio.ofRatio(sum, 0.01 * sum, weight, 5 * 9.81))
                .isCloseTo(0.7408, within(0.0001));
    }

    /** Forces in newtons, permissible error in percent of the reading or newtons, step and scatter in newtons. */
    @ParameterizedTest(name = "{0} and {1} N, accuracy {2} N and {3} N, step {4} N, scatter {5} N")
    @CsvSource({
        "2000, 1400, 40, 28, 0, 0",
        "2000, 1400, 40, 28, 10, 20",
        "2000, 1990, 40, 39.8, 0, 0",
        "2000, 2000, 40, 40, 10, 0",
        "2000, 1900, 40, 38, 0, 30",
        "300, 250, 40, 40, 10, 10",
        "150, 40, 40, 40, 10, 0",
        "60, 60, 40, 40, 0, 20",
        "1610, 590, 32.2, 11.8, 0, 0"
    })
    void the_uncertainty_of_an_imbalance_agrees_with_two_million_draws(
            double high, double low, double ofHigh, double ofLow, double step, double scatter) {
        ForceUncertainty higher = new ForceUncertainty(ofHigh, step, scatter);
        ForceUncertainty lower = new ForceUncertainty(ofLow, step, scatter);

        double stated = ImbalanceUncertainty.of(high, low, higher, lower);

        assertThat(stated).isCloseTo(simulated(high, low, higher, lower), withinPercentage(1));
    }

    /** Written out plainly and seeded otherwise than the code under test. */
    private static double simulated(double high, double low, ForceUncertainty ofHigh, ForceUncertainty ofLow) {
        Random random = new Random(20_260_302);
        int draws = 2_000_000;
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < draws; i++) {
            double first = Math.max(0, high + error(random, ofHigh));
            double second = Math.max(0, low + error(random, ofLow));
            double top = Math.max(first, second);
            double imbalance = top == 0 ? 0 : 1 - Math.min(first, second) / top;
            sum += imbalance;
            squares += imbalance * imbalance;
        }
        double mean = sum / draws;
        return Math.sqrt(squares / draws - mean * mean);
    }

    private static double error(Random random, ForceUncertainty of) {
        return of.permissible() * (2 * random.nextDouble() - 1)
                + of.step() * (random.nextDouble() - 0.5)
                + of.repeatability() * random.nextGaussian();
    }

    @Test
    void linear_propagation_is_left_where_the_forces_are_close_or_small() {
        assertThat(ImbalanceUncertainty.isLinear(2000, 1400, 23, 16)).isTrue();
        assertThat(ImbalanceUncertainty.isLinear(2000, 1950, 23, 22)).isFalse();
        assertThat(ImbalanceUncertainty.isLinear(200, 20, 23, 23)).isFalse();
    }

    /** Computed (derived): 2000 and 1400 N, 1 % each, mean 29.995, 95 % within 28.04 and 31.92, half above 30 %. */
    @Test
    void a_simulated_imbalance_has_the_computed_interval() {
        MonteCarlo.Result result = MonteCarlo.propagate(
                List.of(new Input(2000, Spread.NORMAL, 20), new Input(1400, Spread.NORMAL, 14)),
                drawn -> 100 * (1 - drawn[1] / drawn[0]),
                400_000);

        assertThat(result.mean()).isCloseTo(29.995, within(0.01));
        assertThat(result.uncertainty()).isCloseTo(0.990, within(0.005));
        assertThat(result.low(0.95)).isCloseTo(28.04, within(0.03));
        assertThat(result.high(0.95)).isCloseTo(31.92, within(0.03));
        assertThat(result.probabilityAbove(30)).isCloseTo(0.50, within(0.005));
    }

    /** JCGM 106:2012, conformance probability (first row from memory, the others computed). */
    @ParameterizedTest(name = "{0} of u {1}, {2} limit {3}: {4}")
    @CsvSource({
        "-5.47, 0.05, MAXIMUM, -5.40, 0.91924",
        "50, 1, MINIMUM, 50, 0.5",
        "51.645, 1, MINIMUM, 50, 0.95002",
        "52, 1, MINIMUM, 50, 0.97725",
        "49, 1, MINIMUM, 50, 0.15866",
        "58.5, 0.8, MINIMUM, 58, 0.73401",
        "28.6, 0.99, MAXIMUM, 30, 0.92134"
    })
    void the_probability_of_conforming_follows_the_guide(
            double value, double uncertainty, Bound bound, double limit, double conforming) {
        assertThat(1 - Conformity.probabilityNonConforming(value, uncertainty, bound, limit))
                .isCloseTo(conforming, within(0.00001));
    }
}
