package org.axlecause.measurement;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.ShapeOfLoss;
import org.axlecause.facts.Side;
import org.axlecause.facts.Stage;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.TestFigures;
import org.axlecause.facts.WorkOutcome;
import org.axlecause.facts.WorkReported;
import org.jspecify.annotations.Nullable;

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
            combined.put(last.test(), joined(latest(last.test(), runs, combined), together, place));
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
            Figure one = shown(run, FigureKind.PEAK, Place.ofWheel(axle, side));
            Figure other = shown(last, FigureKind.PEAK, Place.ofWheel(axle, side));
            if (one == null || other == null || !Repeatability.agree(one, other, TradeValues.released())) {
                return false;
            }
        }
        return true;
    }

    private static TestFigures joined(TestFigures last, List<TestFigures> runs, Place axle) {
        List<Figure> figures = new ArrayList<>();
        for (Figure figure : last.figures()) {
            figures.add(figure.place().axlePlace().equals(axle) ? joined(figure, runs) : figure);
        }
        figures.replaceAll(figure ->
                figure.kind() == FigureKind.PEAK_IMBALANCE && figure.place().equals(axle)
                        ? ofPeaks(figure, figures, axle, runs.size())
                        : figure);
        boolean shaped = last.shapes().stream()
                .anyMatch(shape -> shape.place().axlePlace().equals(axle));
        List<ShapeOfLoss> shapes = new ArrayList<>(last.shapes());
        if (!shaped && isTraceless(last, axle)) {
            runs.stream()
                    .flatMap(run -> run.shapes().stream())
                    .filter(shape -> shape.place().axlePlace().equals(axle))
                    .map(shape -> new ShapeOfLoss(shape.shape(), shape.place(), last.test(), shape.says()))
                    .distinct()
                    .forEach(shapes::add);
            shapes.sort(Comparator.comparing(ShapeOfLoss::place)
                    .thenComparing(ShapeOfLoss::shape)
                    .thenComparing(ShapeOfLoss::says));
        }
        return new TestFigures(last.test(), figures, shapes, last.doubts());
    }

    private static boolean isTraceless(TestFigures run, Place axle) {
        return run.figures().stream()
                .noneMatch(figure -> figure.kind() == FigureKind.HOLD
                        && figure.observable()
                        && figure.place().axlePlace().equals(axle));
    }

    /** The mean of the runs that show the figure. */
    private static Figure joined(Figure figure, List<TestFigures> runs) {
        List<BigDecimal> values = new ArrayList<>();
        for (TestFigures run : runs) {
            Figure shown = shown(run, figure.kind(), figure.place());
            if (shown != null && shown.value() != null) {
                values.add(shown.value());
            }
        }
        Repeatability.Together together =
                Repeatability.together(runs, figure.stage(), figure.brake(), figure.kind(), figure.place());
        if (values.isEmpty() || together == null) {
            return figure;
        }
        if (values.size() == 1 && figure.value() != null) {
            return figure;
        }
        BigDecimal mean = values.stream()
                .reduce(BigDecimal.ZERO, BigDecimal::add)
                .divide(BigDecimal.valueOf(values.size()), MathContext.DECIMAL128);
        Double uncertainty = together.uncertainty();
        String basis = values.size() == 1
                ? "of an earlier run of this stage"
                : "mean of " + values.size() + " runs: "
                        + values.stream().map(CombinedRuns::plain).collect(Collectors.joining(", "));
        return new Figure(
                figure.kind(),
                figure.test(),
                figure.stage(),
                figure.brake(),
                figure.place(),
                mean,
                uncertainty == null ? null : Rounded.uncertainty(uncertainty),
                true,
                figure.basis() == null ? basis : figure.basis() + "; " + basis);
    }

    /** The imbalance of the mean peaks: a mean of imbalances would forget which wheel was the weaker. */
    private static Figure ofPeaks(Figure figure, List<Figure> figures, Place axle, int runs) {
        int number = axle.axle() == null ? 0 : axle.axle();
        Figure left = shown(figures, FigureKind.PEAK, Place.ofWheel(number, Side.LEFT));
        Figure right = shown(figures, FigureKind.PEAK, Place.ofWheel(number, Side.RIGHT));
        BigDecimal ofLeft = left == null ? null : left.value();
        BigDecimal ofRight = right == null ? null : right.value();
        if (left == null
                || right == null
                || ofLeft == null
                || ofRight == null
                || ofLeft.max(ofRight).signum() <= 0) {
            return figure;
        }
        boolean leftIsHigher = ofLeft.compareTo(ofRight) >= 0;
        BigDecimal high = ofLeft.max(ofRight);
        BigDecimal low = ofLeft.min(ofRight);
        BigDecimal knownHigh = leftIsHigher ? left.uncertainty() : right.uncertainty();
        BigDecimal knownLow = leftIsHigher ? right.uncertainty() : left.uncertainty();
        return new Figure(
                figure.kind(),
                figure.test(),
                figure.stage(),
                figure.brake(),
                figure.place(),
                high.subtract(low).divide(high, MathContext.DECIMAL64),
                knownHigh == null || knownLow == null
                        ? null
                        : Rounded.uncertainty(ImbalanceUncertainty.of(
                                high.doubleValue(),
                                low.doubleValue(),
                                ForceUncertainty.ofParts(0, knownHigh.doubleValue()),
                                ForceUncertainty.ofParts(0, knownLow.doubleValue()))),
                true,
                "of the mean peaks of " + runs + " runs");
    }

    private static @Nullable Figure shown(TestFigures run, FigureKind kind, Place place) {
        return shown(run.figures(), kind, place);
    }

    private static @Nullable Figure shown(List<Figure> figures, FigureKind kind, Place place) {
        return figures.stream()
                .filter(figure -> figure.kind() == kind
                        && figure.observable()
                        && figure.value() != null
                        && figure.place().equals(place))
                .findFirst()
                .orElse(null);
    }

    private static String plain(BigDecimal value) {
        return value.round(new MathContext(5)).stripTrailingZeros().toPlainString();
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
