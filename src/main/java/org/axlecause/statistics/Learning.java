package org.axlecause.statistics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BinaryOperator;
import java.util.function.Function;
import java.util.stream.Stream;
import org.axlecause.diagnosis.AxleShare;
import org.axlecause.diagnosis.PriorGroup;
import org.axlecause.diagnosis.RankedCause;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.Place;

/**
 * What was counted of the cases learned from and what was forecast of those held out: numbers alone, which add up.
 *
 * @param learnedFrom cases with a confirmed cause that were counted
 * @param heldOut cases with a confirmed cause that were held out
 * @param scored cases held out that have been judged anew by both weights and had an arrival test
 * @param failed cases that could not be judged anew
 * @param axles what was counted by cause and group
 * @param before probabilities by the book and what came true
 * @param after probabilities by the learned weights and what came true, of the same causes of the same cases
 */
record Learning(
        long learnedFrom,
        long heldOut,
        long scored,
        long failed,
        List<AxleCount> axles,
        List<ForecastCount> before,
        List<ForecastCount> after) {

    static final Learning NONE = new Learning(0, 0, 0, 0, List.of(), List.of(), List.of());
    static final Learning HELD_OUT = new Learning(0, 1, 0, 0, List.of(), List.of(), List.of());
    static final Learning FAILED = new Learning(0, 0, 0, 1, List.of(), List.of(), List.of());

    private static final double PERCENT = 100;

    Learning {
        axles = List.copyOf(axles);
        before = List.copyOf(before);
        after = List.copyOf(after);
    }

    /**
     * Axles on which a cause could be.
     *
     * @param cause the cause
     * @param group their group
     * @param bookWeight weight that the book gives the cause there
     * @param bookShares sum of the probabilities that the book gave before anything was seen
     * @param confirmed on how many it was confirmed
     * @param axles how many there were
     */
    record AxleCount(
            CauseCode cause, PriorGroup group, double bookWeight, double bookShares, long confirmed, long axles) {

        AxleCount plus(AxleCount other) {
            return new AxleCount(
                    cause,
                    group,
                    bookWeight,
                    bookShares + other.bookShares,
                    confirmed + other.confirmed,
                    axles + other.axles);
        }

        LearnedWeight.Seen seen() {
            return new LearnedWeight.Seen(
                    cause, group, bookWeight, bookShares / axles, new Proportion(confirmed, axles));
        }
    }

    /**
     * Causes that were given the same probability.
     *
     * @param percent the probability in whole percent
     * @param confirmed how many came true
     * @param of how many there were
     */
    record ForecastCount(int percent, long confirmed, long of) {

        ForecastCount plus(ForecastCount other) {
            return new ForecastCount(percent, confirmed + other.confirmed, of + other.of);
        }

        Calibration.Forecasts forecasts() {
            return new Calibration.Forecasts(percent / PERCENT, new Proportion(confirmed, of));
        }
    }

    /** A case that is learned from. */
    static Learning counted(List<AxleShare> shares, ConfirmedCase found) {
        return new Learning(
                1,
                0,
                0,
                0,
                shares.stream()
                        .map(share -> new AxleCount(
                                share.cause(),
                                share.group(),
                                share.weight(),
                                share.share(),
                                found.isConfirmedOn(share.cause(), share.axle()) ? 1 : 0,
                                1))
                        .toList(),
                List.of(),
                List.of());
    }

    /**
     * A case held out. What one of the weights names and the other doesn't was given less than what is named at all, and
     * counts as none there.
     */
    static Learning scored(List<RankedCause> byBook, List<RankedCause> byLearned, ConfirmedCase found) {
        List<RankedCause> named = Stream.concat(byBook.stream(), byLearned.stream())
                .filter(cause -> cause.standing() != CauseStanding.RULED_OUT)
                .toList();
        List<ForecastCount> before = new ArrayList<>();
        List<ForecastCount> after = new ArrayList<>();
        named.stream()
                .map(cause -> new Named(cause.code(), cause.place()))
                .distinct()
                .forEach(cause -> {
                    long confirmed = found.isConfirmed(cause.code(), cause.place()) ? 1 : 0;
                    before.add(new ForecastCount(cause.percentIn(byBook), confirmed, 1));
                    after.add(new ForecastCount(cause.percentIn(byLearned), confirmed, 1));
                });
        return new Learning(0, 0, 1, 0, List.of(), added(before.stream()), added(after.stream()));
    }

    Learning plus(Learning other) {
        return new Learning(
                learnedFrom + other.learnedFrom,
                heldOut + other.heldOut,
                scored + other.scored,
                failed + other.failed,
                added(
                        Stream.concat(axles.stream(), other.axles.stream()),
                        count -> new CauseInGroup(count.cause(), count.group()),
                        AxleCount::plus,
                        Comparator.comparing(AxleCount::cause).thenComparing(AxleCount::group)),
                added(Stream.concat(before.stream(), other.before.stream())),
                added(Stream.concat(after.stream(), other.after.stream())));
    }

    /** What was seen of each cause in each group. */
    List<LearnedWeight.Seen> seen() {
        return axles.stream().map(AxleCount::seen).toList();
    }

    /** What would be published by these terms: the weights of the groups of which enough was seen. */
    List<WeightsVersion.Published> published(LearningTerms terms) {
        return seen().stream()
                .filter(seen -> seen.isEnough(terms))
                .map(seen -> LearnedWeight.of(seen, terms))
                .map(weight -> new WeightsVersion.Published(
                        weight.cause(), weight.group(), weight.bookWeight(), weight.learnedWeight()))
                .toList();
    }

    private static List<ForecastCount> added(Stream<ForecastCount> counts) {
        return added(
                counts, ForecastCount::percent, ForecastCount::plus, Comparator.comparingInt(ForecastCount::percent));
    }

    private static <K, C> List<C> added(
            Stream<C> counts, Function<C, K> about, BinaryOperator<C> plus, Comparator<C> order) {
        Map<K, C> sums = new HashMap<>();
        counts.forEach(count -> sums.merge(about.apply(count), count, plus));
        return sums.values().stream().sorted(order).toList();
    }

    private record CauseInGroup(CauseCode cause, PriorGroup group) {}

    private record Named(CauseCode code, Place place) {

        int percentIn(List<RankedCause> causes) {
            return causes.stream()
                    .filter(cause -> cause.code() == code && cause.place().equals(place))
                    .mapToInt(RankedCause::percent)
                    .findFirst()
                    .orElse(0);
        }
    }
}
