package org.axlecause.measurement;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.ShapeOfLoss;
import org.axlecause.facts.Side;
import org.axlecause.facts.TestFigures;
import org.jspecify.annotations.Nullable;

/** What several runs of one test on one axle show together. */
final class JoinedRuns {

    private JoinedRuns() {}

    /** The latest run with the figures of one axle as all these runs together show them. */
    static TestFigures of(TestFigures last, List<TestFigures> runs, Place axle) {
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
                        + values.stream().map(JoinedRuns::plain).collect(Collectors.joining(", "));
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

    static @Nullable Figure shown(TestFigures run, FigureKind kind, Place place) {
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
}
