package org.axlecause.statistics;

/**
 * A closed interval of a share, a ratio, a difference or a count.
 *
 * @param low not above high
 * @param high not below low
 */
public record Interval(double low, double high) {

    public Interval {
        if (!(low <= high)) {
            throw new IllegalArgumentException(
                    "An interval from %s to %s: give two numbers, the lower one first".formatted(low, high));
        }
    }

    boolean contains(double value) {
        return low <= value && value <= high;
    }

    Interval dividedBy(double divisor) {
        return new Interval(low / divisor, high / divisor);
    }
}
