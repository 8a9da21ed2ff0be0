package org.axlecause.measurement;

import org.axlecause.facts.Bound;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.integration.SimpsonIntegrator;
import org.hipparchus.analysis.solvers.BrentSolver;

/**
 * Risks of deciding by an upper limit when it is known beforehand how the true values are spread (JCGM 106:2012, 9.5).
 * Values are drawn from a prior, read with a standard uncertainty, and accepted up to an acceptance limit.
 *
 * @param consumer probability that a value is accepted though it is beyond the limit
 * @param producer probability that a value is refused though it conforms
 */
public record ConformanceRisk(double consumer, double producer) {

    private static final double ACCURACY = 1e-9;
    private static final int MOST_STEPS = 2_000_000;
    private static final double CERTAIN = 9;

    /**
     * The risks of an acceptance limit.
     *
     * @param prior density of the true values
     * @param lowest true value below which the prior has no weight
     * @param highest true value above which it has none worth counting
     * @param uncertainty standard uncertainty of a reading
     * @param limit upper limit of conforming values
     * @param acceptance reading up to which a value is accepted
     */
    public static ConformanceRisk of(
            UnivariateFunction prior,
            double lowest,
            double highest,
            double uncertainty,
            double limit,
            double acceptance) {
        UnivariateFunction accepted = value -> prior.value(value)
                * (1 - Conformity.probabilityNonConforming(value, uncertainty, Bound.MAXIMUM, acceptance));
        UnivariateFunction refused = value ->
                prior.value(value) * Conformity.probabilityNonConforming(value, uncertainty, Bound.MAXIMUM, acceptance);
        return new ConformanceRisk(
                integral(accepted, limit, Math.min(highest, acceptance + CERTAIN * uncertainty)),
                integral(refused, Math.max(lowest, acceptance - CERTAIN * uncertainty), limit));
    }

    /** The acceptance limit at which the consumer's risk is that small; the guard band is the limit less this. */
    public static double acceptanceFor(
            double consumer,
            UnivariateFunction prior,
            double lowest,
            double highest,
            double uncertainty,
            double limit) {
        UnivariateFunction beyond = acceptance ->
                of(prior, lowest, highest, uncertainty, limit, acceptance).consumer() - consumer;
        return new BrentSolver(ACCURACY)
                .solve(1000, beyond, limit - CERTAIN * uncertainty, limit + CERTAIN * uncertainty);
    }

    private static double integral(UnivariateFunction function, double from, double to) {
        return from >= to
                ? 0
                : new SimpsonIntegrator(ACCURACY, ACCURACY, 6, SimpsonIntegrator.SIMPSON_MAX_ITERATIONS_COUNT)
                        .integrate(MOST_STEPS, function, from, to);
    }
}
