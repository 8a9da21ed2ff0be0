package org.axlecause.diagnosis;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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

    private final Map<Candidate, Double> priors = new HashMap<>();

    Priors(CauseModel model, Layout layout, LocalDate day, List<Candidate> candidates) {
        Settings settings = model.settings();
        Long age = layout.age(day);
        double sum = 0;
        Map<Candidate, Double> weights = new HashMap<>();
        for (Candidate candidate : candidates) {
            double weight = weight(model.cause(candidate.code()), candidate.place(), layout, settings, age);
            weights.put(candidate, weight);
            sum += weight;
        }
        for (Candidate candidate : candidates) {
            Double bothSides = model.cause(candidate.code()).bothSides();
            double alone = bothSides == null ? 1 : 1 - bothSides;
            double prior = weights.getOrDefault(candidate, 0.0) / sum * settings.expectedFaults() * alone;
            priors.put(candidate, Math.min(prior, settings.mostPrior()));
        }
    }

    double of(Candidate candidate) {
        Double prior = priors.get(candidate);
        if (prior == null) {
            throw new IllegalStateException(candidate + " is no candidate on this vehicle");
        }
        return prior;
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

    private static double weight(Cause cause, Place place, Layout layout, Settings settings, @Nullable Long age) {
        double weight = 0;
        for (Axle axle : layout.vehicle().axles()) {
            boolean here = place.axle() == null || place.axle() == axle.number();
            if (here && cause.fits(layout.vehicle(), axle)) {
                weight += weight(cause, axle, settings, age);
            }
        }
        return switch (cause.level()) {
            case WHEEL -> weight / WHEELS_OF_AN_AXLE;
            case CIRCUIT -> weight / layout.places(Level.CIRCUIT).size();
            case AXLE, VEHICLE -> weight;
        };
    }

    private static double weight(Cause cause, Axle axle, Settings settings, @Nullable Long age) {
        WheelBrake brake = WheelBrake.of(axle);
        if (brake == null) {
            return 0;
        }
        int oldFrom = brake == WheelBrake.DRUM ? settings.drumOldFrom() : settings.discOldFrom();
        Double weight = cause.weights().of(brake, age == null || age >= oldFrom);
        return weight == null ? 0 : weight;
    }
}
