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
     * @param oldDrums whether drum brakes count as old
     * @param oldDiscs whether disc brakes count as old
     * @param candidates the candidates in the order of their numbers
     */
    Priors(CauseModel model, Layout layout, boolean oldDrums, boolean oldDiscs, List<Candidate> candidates) {
        Settings settings = model.settings();
        double sum = 0;
        priors = new double[candidates.size()];
        for (int number = 0; number < priors.length; number++) {
            Candidate candidate = candidates.get(number);
            priors[number] = weight(model.cause(candidate.code()), candidate.place(), layout, oldDrums, oldDiscs);
            sum += priors[number];
        }
        for (int number = 0; number < priors.length; number++) {
            Double bothSides = model.cause(candidates.get(number).code()).bothSides();
            double alone = bothSides == null ? 1 : 1 - bothSides;
            double prior = priors[number] / sum * settings.expectedFaults() * alone;
            priors[number] = Math.min(prior, settings.mostPrior());
        }
    }

    /** Those that hold for the age of the vehicle; where it is unknown, brakes count as old. */
    static Priors of(Possibilities possibilities, Settings settings, @Nullable Long age) {
        return possibilities.priors(
                age == null || age >= settings.drumOldFrom(), age == null || age >= settings.discOldFrom());
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

    private static double weight(Cause cause, Place place, Layout layout, boolean oldDrums, boolean oldDiscs) {
        double weight = 0;
        for (Axle axle : layout.vehicle().axles()) {
            boolean here = place.axle() == null || place.axle() == axle.number();
            if (here && cause.fits(layout.vehicle(), axle)) {
                weight += weight(cause, axle, oldDrums, oldDiscs);
            }
        }
        return switch (cause.level()) {
            case WHEEL -> weight / WHEELS_OF_AN_AXLE;
            case CIRCUIT -> weight / layout.places(Level.CIRCUIT).size();
            case AXLE, VEHICLE -> weight;
        };
    }

    private static double weight(Cause cause, Axle axle, boolean oldDrums, boolean oldDiscs) {
        WheelBrake brake = WheelBrake.of(axle);
        if (brake == null) {
            return 0;
        }
        Double weight = cause.weights().of(brake, brake == WheelBrake.DRUM ? oldDrums : oldDiscs);
        return weight == null ? 0 : weight;
    }
}
