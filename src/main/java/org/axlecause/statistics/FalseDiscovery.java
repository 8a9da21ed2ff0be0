package org.axlecause.statistics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Many comparisons at once, so that only a stated share of what is called different is so by chance (Benjamini and
 * Hochberg 1995, J. R. Stat. Soc. B 57:289).
 *
 * @param pValues one per comparison, from 0 to 1
 */
public record FalseDiscovery(List<Double> pValues) {

    public FalseDiscovery {
        pValues = List.copyOf(pValues);
        pValues.forEach(pValue -> {
            if (!(pValue >= 0 && pValue <= 1)) {
                throw new IllegalArgumentException("A p-value of %s: it must lie between 0 and 1".formatted(pValue));
            }
        });
    }

    static FalseDiscovery of(double... pValues) {
        return new FalseDiscovery(DoubleStream.of(pValues).boxed().toList());
    }

    /** The lowest rate of false discoveries at which each comparison still counts, in the order of the p-values. */
    public List<Double> adjusted() {
        int all = pValues.size();
        List<Integer> fromHighest = IntStream.range(0, all)
                .boxed()
                .sorted(Comparator.<Integer>comparingDouble(pValues::get).reversed())
                .toList();
        List<Double> adjusted = new ArrayList<>(pValues);
        double lowest = 1;
        for (int passed = 0; passed < all; passed++) {
            int index = fromHighest.get(passed);
            lowest = Math.min(lowest, pValues.get(index) * all / (all - passed));
            adjusted.set(index, lowest);
        }
        return List.copyOf(adjusted);
    }

    /**
     * Whether each comparison counts as different, in the order of the p-values.
     *
     * @param rate expected share of false ones among those that count, from 0 to 1
     */
    public List<Boolean> discoveries(double rate) {
        return adjusted().stream().map(adjusted -> adjusted <= rate).toList();
    }
}
