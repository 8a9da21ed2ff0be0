package org.axlecause.diagnosis;

import java.util.List;
import org.axlecause.facts.Axle;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.Place;
import org.jspecify.annotations.Nullable;

/**
 * How likely each cause is before anything is seen: its weight over the sum of all weights, times the faults expected
 * on a presented vehicle. The weight of a cause on both its wheels goes to the pair.
 */
final class Priors {

    private static final int WHEELS_OF_AN_AXLE = 2;

    private final double[] priors;

    /**
     * @param weights by what weights
     * @param age which brakes count as old
     * @param candidates the candidates in the order of their numbers
     */
    Priors(CauseModel model, Layout layout, CauseWeights weights, Age age, List<Candidate> candidates) {
        Settings settings = model.settings();
        double sum = 0;
        priors = new double[candidates.size()];
        for (int number = 0; number < priors.length; number++) {
            Candidate candidate = candidates.get(number);
            priors[number] = weight(model.cause(candidate.code()), candidate.place(), layout, weights, age);
            sum += priors[number];
        }
        for (int number = 0; number < priors.length; number++) {
            Double bothSides = model.cause(candidates.get(number).code()).bothSides();
            double alone = bothSides == null ? 1 : 1 - bothSides;
            double prior = priors[number] / sum * settings.expectedFaults() * alone;
            priors[number] = Math.min(prior, settings.mostPrior());
        }
    }

    /**
     * Which brakes of a vehicle count as old.
     *
     * @param oldDrums whether drum brakes do
     * @param oldDiscs whether disc brakes do
     */
    record Age(boolean oldDrums, boolean oldDiscs) {

        /** At an age of full years; where it is unknown, brakes count as old. */
        static Age of(@Nullable Long years, Settings settings) {
            return new Age(
                    years == null || years >= settings.drumOldFrom(), years == null || years >= settings.discOldFrom());
        }

        /** The group of an axle with that kind of brake. */
        PriorGroup group(WheelBrake brake) {
            return PriorGroup.of(brake, brake == WheelBrake.DRUM ? oldDrums : oldDiscs);
        }
    }

    /** Those that hold by these weights for the age of the vehicle. */
    static Priors of(Possibilities possibilities, Settings settings, CauseWeights weights, @Nullable Long years) {
        return possibilities.priors(weights, Age.of(years, settings));
    }

    double of(int candidate) {
        return priors[candidate];
    }

    /**
     * How many times likelier a cause is on both wheels than by chance, where a share of its cases has it on both. The
     * prior of one wheel is (1 − share) ÷ 2 of all cases.
     */
    static double together(double prior, double share) {
        double pair = Math.min(2 * prior * share / (1 - share), 0.5);
        double odds = prior / (1 - prior);
        return pair / (1 - pair) / (odds * odds);
    }

    private static double weight(Cause cause, Place place, Layout layout, CauseWeights weights, Age age) {
        double weight = 0;
        for (Axle axle : layout.vehicle().axles()) {
            boolean here = place.axle() == null || place.axle() == axle.number();
            if (here && cause.fits(layout.vehicle(), axle)) {
                weight += weight(cause, axle, weights, age);
            }
        }
        return switch (cause.level()) {
            case WHEEL -> weight / WHEELS_OF_AN_AXLE;
            case CIRCUIT -> weight / layout.places(Level.CIRCUIT).size();
            case AXLE, VEHICLE -> weight;
        };
    }

    private static double weight(Cause cause, Axle axle, CauseWeights weights, Age age) {
        WheelBrake brake = WheelBrake.of(axle);
        if (brake == null) {
            return 0;
        }
        Double weight = weights.of(cause, age.group(brake));
        return weight == null ? 0 : weight;
    }
}
