package org.axlecause.statistics;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A row of values in time with limits of three standard errors (Shewhart), as in the NIST/SEMATECH e-Handbook of
 * Statistical Methods, chapter 6.3. A steady process leaves them about once in 370 values.
 *
 * @param centre mean of all
 * @param points in order of time
 */
public record ControlChart(double centre, List<Point> points) {

    private static final double STANDARD_ERRORS = 3;

    /** Mean range of two normal values, in standard deviations (e-Handbook 6.3.2). */
    private static final double RANGE_OF_TWO = 1.128;

    public ControlChart {
        points = List.copyOf(points);
    }

    /**
     * A value.
     *
     * @param value null where there are no cases
     * @param limits at the size of this value
     * @param out whether it lies beyond a limit; on it is within
     */
    public record Point(@Nullable Double value, Interval limits, boolean out) {}

    /** Shares by period (p-chart, e-Handbook 6.3.3.2); a period without cases has no value, and limits of 0 and 1. */
    public static ControlChart ofShares(List<Proportion> periods) {
        Proportion all = periods.stream().reduce(new Proportion(0, 0), Proportion::plus);
        double centre = all.share();
        return new ControlChart(
                centre, periods.stream().map(period -> share(period, centre)).toList());
    }

    private static Point share(Proportion period, double centre) {
        if (period.of() == 0) {
            return new Point(null, new Interval(0, 1), false);
        }
        double half = STANDARD_ERRORS * Math.sqrt(centre * (1 - centre) / period.of());
        return point(period.share(), new Interval(Math.max(0, centre - half), Math.min(1, centre + half)));
    }

    /** Counts per period of one and the same size (c-chart, e-Handbook 6.3.3.1). */
    public static ControlChart ofCounts(List<Long> counts) {
        double centre = mean(counts.stream().map(Long::doubleValue).toList());
        double half = STANDARD_ERRORS * Math.sqrt(centre);
        Interval limits = new Interval(Math.max(0, centre - half), centre + half);
        return new ControlChart(
                centre, counts.stream().map(count -> point(count, limits)).toList());
    }

    /** Single values, their spread taken from the mean of the moving ranges of two (e-Handbook 6.3.2.2). */
    public static ControlChart ofIndividuals(List<Double> values) {
        double centre = mean(values);
        double half = STANDARD_ERRORS * mean(movingRanges(values)) / RANGE_OF_TWO;
        Interval limits = new Interval(centre - half, centre + half);
        return new ControlChart(
                centre, values.stream().map(value -> point(value, limits)).toList());
    }

    /** How far each value lies from the one before, one fewer than values. */
    static List<Double> movingRanges(List<Double> values) {
        return IntStream.range(1, values.size())
                .mapToObj(index -> Math.abs(values.get(index) - values.get(index - 1)))
                .toList();
    }

    /** Which points are out, by their place from 0. */
    public List<Integer> out() {
        List<Integer> out = new ArrayList<>();
        for (int index = 0; index < points.size(); index++) {
            if (points.get(index).out()) {
                out.add(index);
            }
        }
        return out;
    }

    private static double mean(List<Double> values) {
        return values.stream()
                .mapToDouble(Double::doubleValue)
                .average()
                .orElseThrow(() -> new IllegalArgumentException("No values: a chart needs two or more"));
    }

    private static Point point(double value, Interval limits) {
        return new Point(value, limits, !limits.contains(value));
    }
}
