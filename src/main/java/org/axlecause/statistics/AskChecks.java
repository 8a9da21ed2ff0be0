package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.casefile.Countable;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.statistics.MoreViews.BinView;
import org.axlecause.statistics.MoreViews.CalibrationView;
import org.axlecause.statistics.MoreViews.CheckAnswer;
import org.axlecause.statistics.MoreViews.CheckView;
import org.axlecause.statistics.StatisticsViews.DefinitionView;
import org.axlecause.statistics.StatisticsViews.ShareView;
import org.jspecify.annotations.Nullable;

/** Answers how often checks were made, how much they told, and how far the probabilities of causes came true. */
@ApplicationScoped
class AskChecks {

    private static final double PERCENT = 100;
    static final List<String> MOMENTS = List.of("arrival", "before-opening");

    private final Snapshots snapshots;
    private final CountStore counts;
    private final Clock clock;

    AskChecks(Snapshots snapshots, CountStore counts, Clock clock) {
        this.snapshots = snapshots;
        this.counts = counts;
        this.clock = clock;
    }

    Told answer(Asked asked, Actor actor) {
        return snapshots.of(asked, actor, this::answer);
    }

    private Told answer(ReadQuestion question) {
        question.takes("check", "cause", "moment", "by");
        Cohort cohort = question.cohort();
        List<String> checks = question.words(
                "check", Stream.of(CheckCode.values()).map(CheckCode::toString).toList());
        List<String> causes = question.words(
                "cause", Stream.of(CauseCode.values()).map(CauseCode::toString).toList());
        String moment = question.word("moment", MOMENTS);
        Grouping grouping = question.grouping(question.by(1, GroupBy.ofCases()));
        question.check();

        int least = snapshots.leastCell();
        Map<List<String>, List<CountStore.Count>> made = new HashMap<>();
        Map<List<String>, CountStore.Count> minutes = new HashMap<>();
        for (CountStore.Count count : counted(
                cohort,
                grouping,
                List.of(Countable.CHECK, Countable.MINUTES),
                List.of("question", "code", "action", "standing"))) {
            if (checks.isEmpty() || checks.contains(count.members().get(1))) {
                List<String> key = new ArrayList<>(grouping.group(count, List.of()));
                key.add(count.members().get(1));
                if (count.members().get(0).equals(Countable.MINUTES)) {
                    minutes.merge(key, count, AskChecks::together);
                } else {
                    made.computeIfAbsent(key, each -> new ArrayList<>()).add(count);
                }
            }
        }
        List<CountStore.Count> probabilities = counts.count(new CountStore.Wanted(
                cohort,
                List.of(Countable.TOLD, Countable.CALIBRATION),
                moment == null ? "" : "k.action = '" + moment + "'",
                List.of(),
                false,
                List.of("question", "code", "standing", "bin", "action")));
        List<Scored> scored = (moment == null ? MOMENTS : List.of(moment))
                .stream()
                        .map(each -> calibration(
                                each,
                                probabilities.stream()
                                        .filter(count -> count.members().get(4).equals(each))
                                        .toList(),
                                causes,
                                least))
                        .toList();
        OffsetDateTime now = OffsetDateTime.now(clock);
        return Told.of(
                now,
                new CheckAnswer(
                        now,
                        cohort.from(),
                        cohort.to(),
                        snapshots.open(cohort),
                        cases(cohort),
                        made.entrySet().stream()
                                .map(entry -> view(
                                        entry.getKey(), entry.getValue(), minutes.get(entry.getKey()), grouping, least))
                                .sorted(grouping.byGroup(CheckView::group)
                                        .thenComparing(view -> -view.made())
                                        .thenComparing(CheckView::check))
                                .toList(),
                        scored.stream().map(Scored::view).toList(),
                        definitions(least)),
                scored.stream().map(Scored::chart).toList(),
                null);
    }

    private static CountStore.Count together(CountStore.Count one, CountStore.Count other) {
        return new CountStore.Count(
                one.group(),
                one.month(),
                one.members(),
                one.n() + other.n(),
                one.amount().add(other.amount()));
    }

    private List<CountStore.Count> counted(Cohort cohort, Grouping grouping, List<String> about, List<String> members) {
        return counts.count(
                new CountStore.Wanted(cohort, about, "", grouping.dimensions(), grouping.isByMonth(), members));
    }

    private long cases(Cohort cohort) {
        return counts
                .count(new CountStore.Wanted(cohort, List.of(Countable.CASE), "", List.of(), false, List.of()))
                .stream()
                .mapToLong(CountStore.Count::n)
                .sum();
    }

    private static CheckView view(
            List<String> key,
            List<CountStore.Count> counts,
            CountStore.@Nullable Count minutes,
            Grouping grouping,
            int least) {
        int grouped = grouping.by().size();
        long notMade = sum(counts, count -> count.members().get(3).equals("not-made"));
        long made = sum(counts, count -> true) - notMade;
        long asked = sum(counts, count -> count.members().get(2).equals("asked"));
        long answered = sum(counts, count -> count.members().get(3).equals("answered"));
        BigDecimal told = counts.stream()
                .filter(count -> count.members().get(3).equals("answered"))
                .map(CountStore.Count::amount)
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        double bits = told.doubleValue() / answered;
        double mean = minutes == null ? 0 : minutes.amount().doubleValue() / minutes.n();
        boolean shown = answered >= least;
        return new CheckView(
                grouping.named(key.subList(0, grouped)),
                key.get(grouped),
                asked,
                made,
                ShareView.of(made - (asked - notMade), made, least),
                ShareView.of(answered, made, least),
                ShareView.of(notMade, asked, least),
                shown ? StatisticsViews.told(bits) : null,
                shown ? StatisticsViews.told(mean) : null,
                shown && mean > 0 ? StatisticsViews.told(bits / mean) : null);
    }

    private static long sum(List<CountStore.Count> counts, Predicate<CountStore.Count> which) {
        return counts.stream().filter(which).mapToLong(CountStore.Count::n).sum();
    }

    /** Probabilities of a moment as they are told, and as they are drawn. */
    private record Scored(CalibrationView view, Chart.Probabilities chart) {}

    private Scored calibration(String moment, List<CountStore.Count> counted, List<String> causes, int least) {
        Map<String, Long> told = new TreeMap<>();
        Map<String, long[]> byPercent = new TreeMap<>();
        long notNamed = 0;
        for (CountStore.Count count : counted) {
            String standing = count.members().get(2);
            if (count.members().get(0).equals(Countable.TOLD)) {
                told.merge(standing, count.n(), Long::sum);
            } else if (causes.isEmpty() || causes.contains(count.members().get(1))) {
                if (standing.equals("not-named")) {
                    notNamed += count.n();
                } else {
                    long[] both = byPercent.computeIfAbsent(count.members().get(3), percent -> new long[2]);
                    both[0] += standing.equals("confirmed") ? count.n() : 0;
                    both[1] += count.n();
                }
            }
        }
        long undetermined = told.getOrDefault(Countable.UNDETERMINED, 0L);
        long all = told.values().stream().mapToLong(Long::longValue).sum();
        List<Calibration.Forecasts> forecasts = byPercent.entrySet().stream()
                .map(entry -> new Calibration.Forecasts(
                        Integer.parseInt(entry.getKey()) / PERCENT,
                        new Proportion(entry.getValue()[0], entry.getValue()[1])))
                .toList();
        ShareView never = ShareView.of(undetermined, all, least);
        if (forecasts.isEmpty() || all - undetermined < least) {
            return new Scored(
                    new CalibrationView(moment, never, notNamed, 0, null, null, null, null, null, List.of()),
                    new Chart.Probabilities(moment, null));
        }
        Calibration calibration = Calibration.of(forecasts, snapshots.terms().calibrationBins());
        return new Scored(
                new CalibrationView(
                        moment,
                        never,
                        notNamed,
                        calibration.number(),
                        StatisticsViews.told(calibration.brier()),
                        StatisticsViews.told(calibration.reliability()),
                        StatisticsViews.told(calibration.resolution()),
                        StatisticsViews.told(calibration.uncertainty()),
                        StatisticsViews.told(calibration.expectedCalibrationError()),
                        BinView.of(calibration, least)),
                new Chart.Probabilities(moment, calibration.withBinsOf(least)));
    }

    private List<DefinitionView> definitions(int least) {
        List<Definitions.Definition> definitions = new ArrayList<>(List.of(
                Definitions.of(
                        "made", "Findings of one check about one axle that follow each other are one making of it."),
                Definitions.of("unasked", "Made though it was not worth making just before, of those made."),
                Definitions.of("answered", "Made where the place could be got at, of those made."),
                Definitions.of("notMade", "Worth making at some time and never made in the case, of those asked."),
                Definitions.of(
                        "bits",
                        "By how much the doubt about the causes fell with the answer: the binary entropies of the"
                                + " probabilities before less those after; below 0 where the answer raised doubt."),
                Definitions.of(
                        "minutes",
                        "Minutes that the check is expected to take, access included where it was asked for."),
                Definitions.of(
                        "calibration",
                        "Probabilities of the causes named after the arrival test, and before the first look"
                                + " with a wheel off, in whole percent, against what was confirmed in the end. Cases in"
                                + " which nothing was confirmed are left out, and their share is stated."),
                Definitions.of(
                        "brier",
                        "Mean square of the probability told less what came true, 1 or 0; 0 is perfect. It is"
                                + " reliability less resolution plus uncertainty."),
                Definitions.of(
                        "reliability",
                        "How far the shares that came true lie from the probabilities told; 0 is perfect."),
                Definitions.of(
                        "resolution",
                        "How far the shares that came true lie apart from one probability to another; the more, the"
                                + " better."),
                Definitions.of("uncertainty", "The Brier score of always telling the share that came true over all."),
                Definitions.of(
                        "expectedCalibrationError",
                        "Distance of the mean probability and the share that came true, on average over the bins,"
                                + " each by its number of probabilities.")));
        definitions.addAll(Definitions.common(snapshots.terms(), least));
        return DefinitionView.of(definitions);
    }
}
