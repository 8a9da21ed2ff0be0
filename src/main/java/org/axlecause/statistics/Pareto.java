package org.axlecause.statistics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/**
 * What comes most, first.
 *
 * @param all sum of the counts
 * @param lines from the largest count to the smallest, equal ones by name
 */
public record Pareto(long all, List<Line> lines) {

    public Pareto {
        lines = List.copyOf(lines);
    }

    /**
     * A line.
     *
     * @param name what is counted
     * @param count how often
     * @param share of all counts, from 0 to 1
     * @param cumulative share of this line and those before it
     */
    public record Line(String name, long count, double share, double cumulative) {}

    /** The counts in order; those of nothing are left out. */
    public static Pareto of(Map<String, Long> counts) {
        long all = counts.values().stream().reduce(0L, Math::addExact);
        List<Line> lines = new ArrayList<>();
        long sum = 0;
        for (Map.Entry<String, Long> count : counts.entrySet().stream()
                .filter(entry -> entry.getValue() > 0)
                .sorted(Map.Entry.<String, Long>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .toList()) {
            sum += count.getValue();
            lines.add(new Line(count.getKey(), count.getValue(), (double) count.getValue() / all, (double) sum / all));
        }
        return new Pareto(all, lines);
    }
}
