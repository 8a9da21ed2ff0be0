package org.axlecause.statistics;

import java.util.Optional;

/**
 * How often two causes come in the same case.
 *
 * @param both cases with both
 * @param first cases with the first, with or without the second
 * @param second cases with the second, with or without the first
 * @param cases all cases
 */
public record CoOccurrence(long both, long first, long second, long cases) {

    public CoOccurrence {
        if (both < 0 || both > Math.min(first, second) || first + second - both > cases) {
            throw new IllegalArgumentException(
                    "%d with both, %d and %d with either, of %d: these counts contradict each other"
                            .formatted(both, first, second, cases));
        }
    }

    /** Beside the number expected if neither had to do with the other; none where one of them never came. */
    public Optional<ObservedExpected> againstChance() {
        double expected = cases == 0 ? 0 : (double) first * second / cases;
        return expected > 0 ? Optional.of(new ObservedExpected(both, expected)) : Optional.empty();
    }

    /** Whether the second comes otherwise with the first than without; none where the first came never or always. */
    public Optional<Significance> significance() {
        if (first == 0 || first == cases) {
            return Optional.empty();
        }
        return Optional.of(new TwoProportions(new Proportion(both, first), new Proportion(second - both, cases - first))
                .significance());
    }
}
