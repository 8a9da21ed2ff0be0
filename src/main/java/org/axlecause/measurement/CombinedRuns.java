package org.axlecause.measurement;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Side;
import org.axlecause.facts.Stage;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.TestFigures;
import org.axlecause.facts.WorkOutcome;
import org.axlecause.facts.WorkReported;

/**
 * Combines the runs of one stage with one brake on one axle. The latest run speaks; earlier ones that agree with it, that
 * raise no doubt and after which nothing was done to the brakes join it: its figures become means, with the scatter of the
 * runs in their uncertainty. Runs that do not agree are doubted instead.
 */
public final class CombinedRuns {

    private CombinedRuns() {}

    /** The entries with the figures of repeated tests combined into the latest of them. */
    public static List<Recorded> of(List<Recorded> entries) {
        Map<Key, List<Recorded>> runs = new TreeMap<>();
        int works = 0;
        for (Recorded recorded : entries.stream().sorted().toList()) {
            if (recorded.entry() instanceof WorkReported work && work.outcome() == WorkOutcome.DONE) {
                works++;
            } else if (recorded.entry() instanceof RollerTestRecorded test && recorded.figures() != null) {
                for (AxleReading axle : test.axles()) {
                    runs.computeIfAbsent(
                                    new Key(works, test.stage(), test.brake(), axle.number()), key -> new ArrayList<>())
                            .add(recorded);
                }
            }
        }
        Map<EntryId, TestFigures> combined = new TreeMap<>();
        runs.forEach((key, group) -> {
            if (group.size() > 1) {
                combine(group, key.axle(), combined);
            }
        });
        return entries.stream()
                .map(recorded -> combined.containsKey(recorded.id())
                        ? new Recorded(recorded.id(), recorded.time(), recorded.entry(), combined.get(recorded.id()))
                        : recorded)
                .toList();
    }

    private static void combine(List<Recorded> group, int axle, Map<EntryId, TestFigures> combined) {
        Place place = Place.ofAxle(axle);
        List<TestFigures> runs = new ArrayList<>();
        for (Recorded recorded : group) {
            TestFigures own = recorded.figures();
            if (own != null) {
                runs.add(own);
            }
        }
        List<TestFigures> trusted =
                runs.stream().filter(run -> isUndoubted(run, place)).toList();
        for (TestDoubt doubt : Repeatability.doubts(trusted)) {
            if (doubt.place().axlePlace().equals(place)) {
                TestFigures doubted = latest(doubt.test(), runs, combined);
                combined.put(doubt.test(), withDoubt(doubted, doubt));
            }
        }
        TestFigures last = runs.get(runs.size() - 1);
        List<TestFigures> together = trusted.contains(last)
                ? trusted.stream().filter(run -> agree(run, last, axle)).toList()
                : List.of();
        if (together.size() > 1) {
            combined.put(last.test(), JoinedRuns.of(latest(last.test(), runs, combined), together, place));
        }
    }

    private static TestFigures latest(EntryId test, List<TestFigures> runs, Map<EntryId, TestFigures> combined) {
        TestFigures already = combined.get(test);
        return already != null
                ? already
                : runs.stream()
                        .filter(run -> run.test().equals(test))
                        .findFirst()
                        .orElseThrow();
    }

    private static TestFigures withDoubt(TestFigures figures, TestDoubt doubt) {
        Set<TestDoubt> doubts = new LinkedHashSet<>(figures.doubts());
        doubts.add(doubt);
        return new TestFigures(figures.test(), figures.figures(), figures.shapes(), List.copyOf(doubts));
    }

    private static boolean isUndoubted(TestFigures run, Place axle) {
        return run.doubts().stream()
                .noneMatch(doubt -> doubt.place().equals(Place.VEHICLE)
                        || doubt.place().axlePlace().equals(axle));
    }

    private static boolean agree(TestFigures run, TestFigures last, int axle) {
        for (Side side : Side.values()) {
            Figure one = JoinedRuns.shown(run, FigureKind.PEAK, Place.ofWheel(axle, side));
            Figure other = JoinedRuns.shown(last, FigureKind.PEAK, Place.ofWheel(axle, side));
            if (one == null || other == null || !Repeatability.agree(one, other, TradeValues.released())) {
                return false;
            }
        }
        return true;
    }

    private record Key(int works, Stage stage, BrakeSystem brake, int axle) implements Comparable<Key> {

        private static final Comparator<Key> ORDER = Comparator.comparing(Key::works)
                .thenComparing(Key::stage)
                .thenComparing(Key::brake)
                .thenComparing(Key::axle);

        @Override
        public int compareTo(Key other) {
            return ORDER.compare(this, other);
        }
    }
}
