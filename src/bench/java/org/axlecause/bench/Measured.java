package org.axlecause.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * One line of the table: a figure measured by a {@link ServiceRun}.
 *
 * @param score median of the rounds
 * @param spread half of the distance between the lowest and the highest round
 * @param goal what it has to reach and whether it did; empty where nothing was promised
 */
public record Measured(String name, String parameters, double score, double spread, String unit, String goal) {

    /** The median of some rounds, with nothing promised. */
    public static Measured of(String name, String parameters, List<Double> rounds, String unit) {
        return new Measured(name, parameters, median(rounds), spread(rounds), unit, "");
    }

    /** The median of some rounds, which must not be below the goal. */
    public static Measured atLeast(double goal, String name, String parameters, List<Double> rounds, String unit) {
        double score = median(rounds);
        return new Measured(name, parameters, score, spread(rounds), unit, verdict("at least", goal, score >= goal));
    }

    /** The median of some rounds, which must not be above the goal. */
    public static Measured atMost(double goal, String name, String parameters, List<Double> rounds, String unit) {
        double score = median(rounds);
        return new Measured(name, parameters, score, spread(rounds), unit, verdict("at most", goal, score <= goal));
    }

    private static String verdict(String word, double goal, boolean met) {
        return String.format(Locale.ROOT, "%s %.2f: %s", word, goal, met ? "met" : "MISSED");
    }

    static double median(List<Double> rounds) {
        double[] sorted = sorted(rounds);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    private static double spread(List<Double> rounds) {
        double[] sorted = sorted(rounds);
        return (sorted[sorted.length - 1] - sorted[0]) / 2;
    }

    private static double[] sorted(List<Double> rounds) {
        double[] sorted = rounds.stream().mapToDouble(Double::doubleValue).toArray();
        Arrays.sort(sorted);
        return sorted;
    }
}
