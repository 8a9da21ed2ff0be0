package org.axlecause.statistics;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * How well probabilities that were told fit what came true.
 *
 * @param number forecasts
 * @param brier mean square of forecast less outcome, from 0 to 1, 0 being perfect (Brier 1950, Mon. Weather Rev. 78:1)
 * @param reliability part of it that comes of forecasts unlike the share that came true (Murphy 1973, J. Appl. Meteorol.
 *     12:595); 0 is perfect
 * @param resolution how far the shares that came true lie apart; it lowers the Brier score
 * @param uncertainty what always telling the overall share would cost
 * @param logLoss mean natural logarithm of one over the probability given to what happened; null where something happened
 *     that was given none
 * @param expectedCalibrationError mean distance of mean forecast and share that came true over the bins, each by its
 *     number of forecasts
 * @param bins those with forecasts, from low to high
 */
public record Calibration(
        long number,
        double brier,
        double reliability,
        double resolution,
        double uncertainty,
        @Nullable Double logLoss,
        double expectedCalibrationError,
        List<Bin> bins) {

    public Calibration {
        bins = List.copyOf(bins);
    }

    /** The same scores with those bins alone that so many forecasts stand behind. */
    Calibration withBinsOf(long least) {
        return new Calibration(
                number,
                brier,
                reliability,
                resolution,
                uncertainty,
                logLoss,
                expectedCalibrationError,
                bins.stream().filter(bin -> bin.outcomes().of() >= least).toList());
    }

    /**
     * Forecasts of one and the same probability.
     *
     * @param probability from 0 to 1
     * @param outcomes how many of them came true
     */
    public record Forecasts(double probability, Proportion outcomes) {

        public Forecasts {
            if (!(probability >= 0 && probability <= 1)) {
                throw new IllegalArgumentException(
                        "A forecast of %s: it must lie between 0 and 1".formatted(probability));
            }
        }
    }

    /**
     * Forecasts of nearly the same probability.
     *
     * @param low lowest probability of the bin
     * @param high the highest one, which belongs to the next bin except in the last
     * @param meanForecast of those in the bin
     * @param outcomes how many of them came true
     */
    public record Bin(double low, double high, double meanForecast, Proportion outcomes) {}

    /**
     * The scores of forecasts in any order; forecasts of the same probability are added up.
     *
     * @param bins how many bins of equal width
     */
    public static Calibration of(Collection<Forecasts> forecasts, int bins) {
        TreeMap<Double, Proportion> byProbability = new TreeMap<>();
        forecasts.stream()
                .filter(group -> group.outcomes().of() > 0)
                .forEach(group -> byProbability.merge(group.probability(), group.outcomes(), Proportion::plus));
        Proportion all = byProbability.values().stream().reduce(new Proportion(0, 0), Proportion::plus);
        if (all.of() == 0) {
            throw new IllegalArgumentException("No forecasts, so no scores: ask for the number of forecasts first");
        }
        double brier = 0;
        double reliability = 0;
        double resolution = 0;
        for (var group : byProbability.entrySet()) {
            double probability = group.getKey();
            Proportion outcomes = group.getValue();
            double missed = outcomes.of() - outcomes.count();
            brier += outcomes.count() * square(1 - probability) + missed * square(probability);
            reliability += outcomes.of() * square(probability - outcomes.share());
            resolution += outcomes.of() * square(outcomes.share() - all.share());
        }
        List<Bin> binned = binned(byProbability, bins);
        OptionalDouble logLoss = logLoss(byProbability);
        return new Calibration(
                all.of(),
                brier / all.of(),
                reliability / all.of(),
                resolution / all.of(),
                all.share() * (1 - all.share()),
                logLoss.isPresent() ? logLoss.getAsDouble() / all.of() : null,
                binned.stream()
                                .mapToDouble(bin -> bin.outcomes().of()
                                        * Math.abs(bin.meanForecast()
                                                - bin.outcomes().share()))
                                .sum()
                        / all.of(),
                binned);
    }

    private static OptionalDouble logLoss(TreeMap<Double, Proportion> byProbability) {
        double sum = 0;
        for (var group : byProbability.entrySet()) {
            sum += loss(group.getValue().count(), group.getKey());
            sum += loss(group.getValue().of() - group.getValue().count(), 1 - group.getKey());
        }
        return Double.isInfinite(sum) ? OptionalDouble.empty() : OptionalDouble.of(sum);
    }

    private static double loss(long number, double probability) {
        return number == 0 ? 0 : -number * Math.log(probability);
    }

    private static List<Bin> binned(TreeMap<Double, Proportion> byProbability, int bins) {
        List<Bin> binned = new ArrayList<>();
        for (int index = 0; index < bins; index++) {
            double low = (double) index / bins;
            double high = (double) (index + 1) / bins;
            Proportion outcomes = new Proportion(0, 0);
            double forecasts = 0;
            for (var group :
                    byProbability.subMap(low, true, high, index + 1 == bins).entrySet()) {
                outcomes = outcomes.plus(group.getValue());
                forecasts += group.getKey() * group.getValue().of();
            }
            if (outcomes.of() > 0) {
                binned.add(new Bin(low, high, forecasts / outcomes.of(), outcomes));
            }
        }
        return binned;
    }

    private static double square(double value) {
        return value * value;
    }
}
