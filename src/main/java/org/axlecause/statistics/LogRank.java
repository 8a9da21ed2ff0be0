package org.axlecause.statistics;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealVector;

/**
 * Whether events come alike in two or more groups over time (Mantel 1966, Cancer Chemother. Rep. 50:163; Peto and Peto
 * 1972, J. R. Stat. Soc. A 135:185).
 *
 * @param groups in the order they were given
 * @param chiSquared statistic of the test
 * @param degreesOfFreedom groups in which an event was possible, less one
 * @param pValue probability of a statistic at least as large where events come alike, from 0 to 1
 */
public record LogRank(List<Group> groups, double chiSquared, int degreesOfFreedom, double pValue) {

    public LogRank {
        groups = List.copyOf(groups);
    }

    /**
     * What a group had, and what it would have had if all were alike.
     *
     * @param number those that were followed
     * @param observed events
     * @param expected events expected
     * @param variance of the observed less the expected
     */
    public record Group(long number, long observed, double expected, double variance) {}

    /** The test over two or more curves. */
    public static LogRank of(List<KaplanMeier> curves) {
        if (curves.size() < 2) {
            throw new IllegalArgumentException("%d group: give two or more to compare".formatted(curves.size()));
        }
        int size = curves.size();
        double[] expected = new double[size];
        double[][] covariance = new double[size][size];
        events(curves).forEach((time, events) -> {
            double[] atRisk =
                    curves.stream().mapToDouble(curve -> curve.atRiskAt(time)).toArray();
            add(events, atRisk, expected, covariance);
        });
        List<Group> groups = IntStream.range(0, size)
                .mapToObj(index -> new Group(
                        curves.get(index).number(),
                        curves.get(index).events(),
                        expected[index],
                        covariance[index][index]))
                .toList();
        return tested(groups, covariance);
    }

    private static TreeMap<Long, Long> events(List<KaplanMeier> curves) {
        TreeMap<Long, Long> events = new TreeMap<>();
        curves.stream()
                .flatMap(curve -> curve.steps().stream())
                .filter(step -> step.events() > 0)
                .forEach(step -> events.merge(step.time(), step.events(), Math::addExact));
        return events;
    }

    private static void add(double events, double[] atRisk, double[] expected, double[][] covariance) {
        double all = 0;
        for (double group : atRisk) {
            all += group;
        }
        double spread = all > 1 ? events * (all - events) / (all - 1) : 0;
        for (int row = 0; row < atRisk.length; row++) {
            double share = atRisk[row] / all;
            expected[row] += events * share;
            for (int column = 0; column < atRisk.length; column++) {
                covariance[row][column] += spread * share * ((row == column ? 1 : 0) - atRisk[column] / all);
            }
        }
    }

    private static LogRank tested(List<Group> groups, double[][] covariance) {
        List<Integer> possible = new ArrayList<>(IntStream.range(0, groups.size())
                .filter(index -> groups.get(index).variance() > 0)
                .boxed()
                .toList());
        if (possible.size() < 2) {
            return new LogRank(groups, 0, 0, 1);
        }
        int degrees = possible.size() - 1;
        int[] kept =
                possible.stream().mapToInt(Integer::intValue).limit(degrees).toArray();
        RealVector surplus = new ArrayRealVector(IntStream.of(kept)
                .mapToDouble(index ->
                        groups.get(index).observed() - groups.get(index).expected())
                .toArray());
        RealVector weighed = new LUDecomposition(new Array2DRowRealMatrix(covariance, false).getSubMatrix(kept, kept))
                .getSolver()
                .solve(surplus);
        double chiSquared = surplus.dotProduct(weighed);
        return new LogRank(groups, chiSquared, degrees, TwoProportions.upperTail(chiSquared, degrees));
    }
}
