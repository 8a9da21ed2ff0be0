package org.axlecause.facts;

import java.util.Arrays;

/** An immutable row of samples in SI units; a gap is NaN. */
public final class Samples {

    private final double[] values;

    private Samples(double[] values) {
        this.values = values;
    }

    /** Takes a copy of the values. */
    public static Samples of(double... values) {
        return new Samples(values.clone());
    }

    /** How many samples there are, gaps included. */
    public int size() {
        return values.length;
    }

    /** The sample at that index; NaN where there is a gap. */
    public double at(int index) {
        return values[index];
    }

    /** A copy of all samples. */
    public double[] toArray() {
        return values.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Samples samples && Arrays.equals(values, samples.values);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        return values.length + " samples";
    }
}
