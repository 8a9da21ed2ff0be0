package org.axlecause.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.distribution.continuous.GammaDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;

class ConformanceRiskTest {

    private static final GammaDistribution BALLS = new GammaDistribution(4, 0.25);
    private static final UnivariateFunction PRIOR = BALLS::density;

    /**
     * JCGM 106:2012, 9.5.4, ball bearings (example, prior and consumer's risk read; producer's risk computed): 4.24 % are
     * beyond 2 micrometres; read to 0.25 and accepted up to the limit, 0.80 % and 1.74 %.
     */
    @Test
    void accepting_ball_bearings_up_to_the_limit_risks_what_the_guide_says() {
        ConformanceRisk risk = ConformanceRisk.of(PRIOR, 0, 10, 0.25, 2, 2);

        assertThat(1 - BALLS.cumulativeProbability(2)).isCloseTo(0.04238, within(0.00001));
        assertThat(risk.consumer()).isCloseTo(0.00802, within(0.00001));
        assertThat(risk.producer()).isCloseTo(0.01744, within(0.00001));
    }

    /** The same with a consumer's risk of 0.1 % (computed): accept up to 1.672, a guard band of 0.328. */
    @Test
    void a_guard_band_lessens_the_consumers_risk_at_the_producers_cost() {
        double acceptance = ConformanceRisk.acceptanceFor(0.001, PRIOR, 0, 10, 0.25, 2);

        assertThat(acceptance).isCloseTo(1.6718, within(0.0001));
        assertThat(ConformanceRisk.of(PRIOR, 0, 10, 0.25, 2, acceptance).producer())
                .isCloseTo(0.0755, within(0.0001));
    }

    /** One side of a process with 2.5 % beyond its upper limit, read four times as well as it spreads (computed). */
    @Test
    void a_reading_four_times_as_good_as_the_spread_accepts_few_beyond_the_limit() {
        NormalDistribution process = new NormalDistribution(0, 1 / 1.959964);

        ConformanceRisk risk = ConformanceRisk.of(process::density, -5, 5, 0.25 / 1.959964, 1, 1);

        assertThat(2 * risk.consumer()).isCloseTo(0.00871, within(0.00002));
    }
}
