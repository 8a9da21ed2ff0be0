package org.axlecause.statistics;

import org.hipparchus.stat.descriptive.moment.Mean;

/**
 * Mean and spread of values, in a form whose parts can be added up without losing digits (Chan, Golub and LeVeque 1983, Am.
 * Stat. 37:242).
 *
 * @param number of values
 * @param mean 0 where there are none
 * @param squares sum of squared distances from the mean
 */
public record Moments(long number, double mean, double squares) {

    public static final Moments NONE = new Moments(0, 0, 0);

    public Moments {
        if (number < 0 || !(squares >= 0)) {
            throw new IllegalArgumentException(
                    "%d values with squares of %s: neither may be negative".formatted(number, squares));
        }
    }

    /** The moments of values. */
    public static Moments of(double... values) {
        if (values.length == 0) {
            return NONE;
        }
        double mean = new Mean().evaluate(values);
        double squares = 0;
        double rest = 0;
        for (double value : values) {
            double distance = value - mean;
            squares += distance * distance;
            rest += distance;
        }
        return new Moments(values.length, mean, squares - rest * rest / values.length);
    }

    /** Those of the values of both. */
    public Moments plus(Moments other) {
        if (number == 0 || other.number == 0) {
            return number == 0 ? other : this;
        }
        long all = Math.addExact(number, other.number);
        double apart = other.mean - mean;
        return new Moments(
                all,
                mean + apart * other.number / all,
                squares + other.squares + apart * apart * number * other.number / all);
    }

    /** Standard deviation with one less than the number as divisor; there is none of fewer than two values. */
    public double standardDeviation() {
        if (number < 2) {
            throw new IllegalStateException("%d value: a standard deviation needs two".formatted(number));
        }
        return Math.sqrt(squares / (number - 1));
    }

    /** How each value goes with the one before, from -1 to 1; values that are all alike have none. */
    static double lagOneAutocorrelation(double... values) {
        Moments moments = of(values);
        if (!(moments.squares > 0)) {
            throw new IllegalArgumentException("Values that are all alike have no autocorrelation");
        }
        double products = 0;
        for (int index = 1; index < values.length; index++) {
            products += (values[index] - moments.mean) * (values[index - 1] - moments.mean);
        }
        return products / moments.squares;
    }
}
