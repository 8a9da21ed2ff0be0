package org.axlecause.measurement;

import java.util.Arrays;
import org.axlecause.facts.Samples;
import org.hipparchus.stat.descriptive.rank.Median;
import org.hipparchus.util.KthSelector;
import org.jspecify.annotations.Nullable;

/** A channel of a trace on an even grid of time, straight between its samples; gaps are bridged but remembered. */
final class Signal {

    /** Finest step that is worked on; a faster trace is averaged down to it. */
    private static final double FINEST_STEP = 0.005;
    /** Turns the median of absolute second differences of white noise into its standard deviation. */
    private static final double SECOND_DIFFERENCE = 0.6744897501960817 * Math.sqrt(6);

    private final double start;
    private final double step;
    private final double[] values;
    private final int[] gapsBefore;
    private double @Nullable [] integral;
    private double @Nullable [] sorted;
    private double noise = Double.NaN;

    private Signal(double start, double step, double[] values, int[] gapsBefore) {
        this.start = start;
        this.step = step;
        this.values = values;
        this.gapsBefore = gapsBefore;
    }

    static Signal of(Samples samples, double period, int count) {
        int block = Math.max(1, (int) Math.floor(FINEST_STEP / period + 1e-9));
        int size = count / block;
        double[] values = new double[size];
        int[] gaps = new int[size + 1];
        for (int i = 0; i < size; i++) {
            double sum = 0;
            for (int j = 0; j < block; j++) {
                sum += samples.at(i * block + j);
            }
            values[i] = sum / block;
            gaps[i + 1] = gaps[i] + (Double.isNaN(sum) ? 1 : 0);
        }
        bridge(values);
        return new Signal((block - 1) * period / 2, block * period, values, gaps);
    }

    private static void bridge(double[] values) {
        int last = -1;
        for (int i = 0; i < values.length; i++) {
            if (Double.isNaN(values[i])) {
                continue;
            }
            for (int j = last + 1; j < i; j++) {
                values[j] = last < 0 ? values[i] : values[last] + (values[i] - values[last]) * (j - last) / (i - last);
            }
            last = i;
        }
        Arrays.fill(values, last + 1, values.length, last < 0 ? 0 : values[last]);
    }

    int size() {
        return values.length;
    }

    double step() {
        return step;
    }

    double value(int index) {
        return values[index];
    }

    double time(int index) {
        return start + index * step;
    }

    double end() {
        return time(values.length - 1);
    }

    /** First sample at or after that time. */
    int from(double time) {
        return clamp((int) Math.ceil((time - start) / step - 1e-9));
    }

    /** Last sample at or before that time. */
    int to(double time) {
        return clamp((int) Math.floor((time - start) / step + 1e-9));
    }

    private int clamp(int index) {
        return Math.max(0, Math.min(values.length - 1, index));
    }

    double at(double time) {
        double place = Math.max(0, Math.min(values.length - 1.0, (time - start) / step));
        int before = Math.min((int) place, values.length - 2);
        if (before < 0) {
            return values[0];
        }
        double part = place - before;
        return values[before] * (1 - part) + values[before + 1] * part;
    }

    double mean(double from, double to) {
        double first = Math.max(start, from);
        double last = Math.min(end(), to);
        return last - first < 1e-9 ? at(from) : (integralAt(last) - integralAt(first)) / (last - first);
    }

    private double integralAt(double time) {
        double[] sums = integral();
        int last = values.length - 1;
        double place = Math.max(0, Math.min(last, (time - start) / step));
        int before = Math.min((int) place, last);
        if (before == last) {
            return sums[last];
        }
        double part = place - before;
        double here = values[before] + part * (values[before + 1] - values[before]);
        return sums[before] + part * step * (values[before] + here) / 2;
    }

    private double[] integral() {
        double[] known = integral;
        if (known == null) {
            known = new double[values.length];
            for (int i = 1; i < values.length; i++) {
                known[i] = known[i - 1] + step * (values[i - 1] + values[i]) / 2;
            }
            integral = known;
        }
        return known;
    }

    /** Whether there is no gap between those times. */
    boolean seen(double from, double to) {
        return gapsBefore[to(to) + 1] == gapsBefore[from(from)];
    }

    boolean hasGap() {
        return gapsBefore[values.length] > 0;
    }

    /** Mean over a span around each sample, shorter at the ends; a straight line stays what it is. */
    Signal smoothed(double span) {
        if (span < 2 * step) {
            return this;
        }
        double[] smooth = new double[values.length];
        for (int i = 0; i < smooth.length; i++) {
            double time = time(i);
            double half = Math.min(span / 2, Math.min(time - start, end() - time));
            smooth[i] = half < step / 2 ? values[i] : mean(time - half, time + half);
        }
        return new Signal(start, step, smooth, gapsBefore);
    }

    Signal minus(double offset) {
        double[] shifted = new double[values.length];
        for (int i = 0; i < shifted.length; i++) {
            shifted[i] = values[i] - offset;
        }
        Signal moved = new Signal(start, step, shifted, gapsBefore);
        moved.noise = noise;
        return moved;
    }

    Signal plus(Signal other) {
        double[] sum = new double[Math.min(values.length, other.values.length)];
        int[] gaps = new int[sum.length + 1];
        for (int i = 0; i < sum.length; i++) {
            sum[i] = values[i] + other.values[i];
            gaps[i + 1] = gapsBefore[i + 1] + other.gapsBefore[i + 1];
        }
        return new Signal(start, step, sum, gaps);
    }

    /** The same signal divided by a swing. */
    Signal without(TurnFit swing) {
        double[] even = new double[values.length];
        for (int i = 0; i < even.length; i++) {
            even[i] = values[i] / swing.factorAt(time(i));
        }
        return new Signal(start, step, even, gapsBefore);
    }

    /** Standard deviation of what changes from sample to sample. */
    double noise() {
        if (Double.isNaN(noise)) {
            noise = noise(start, end());
        }
        return noise;
    }

    /** The same between two times. */
    double noise(double from, double to) {
        int first = from(from) + 1;
        int last = to(to) - 1;
        if (last - first < 8) {
            return 0;
        }
        double[] second = new double[last - first + 1];
        for (int i = first; i <= last; i++) {
            second[i - first] = Math.abs(values[i - 1] - 2 * values[i] + values[i + 1]);
        }
        return new Median().evaluate(second) / SECOND_DIFFERENCE;
    }

    /** Value below which that share of the samples lies. */
    double quantile(double share) {
        int rank = (int) Math.round(share * (values.length - 1));
        return sorted == null ? new KthSelector().select(values.clone(), null, rank) : sorted[rank];
    }

    /** All values from low to high; not to be changed. */
    double[] ranked() {
        if (sorted == null) {
            sorted = values.clone();
            Arrays.sort(sorted);
        }
        return sorted;
    }

    double highest(double from, double to) {
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = from(from); i <= to(to); i++) {
            highest = Math.max(highest, values[i]);
        }
        return highest;
    }

    /** First time from then on at which the signal has risen to the level; NaN where it never has. */
    double risesTo(double level, double from, double to) {
        for (int i = from(from); i <= to(to); i++) {
            if (values[i] >= level) {
                return i == 0 || values[i - 1] >= level || time(i - 1) < from - step ? time(i) : crossing(i, level);
            }
        }
        return Double.NaN;
    }

    /** First time from then on at which the signal has fallen to the level; NaN where it never has. */
    double fallsTo(double level, double from, double to) {
        for (int i = from(from); i <= to(to); i++) {
            if (values[i] <= level) {
                return i == 0 || values[i - 1] <= level || time(i - 1) < from - step ? time(i) : crossing(i, level);
            }
        }
        return Double.NaN;
    }

    /** Last time up to then at which the signal was at or below the level; the start where it never was. */
    double lastAtOrBelow(double level, double from, double to) {
        for (int i = to(to); i >= from(from); i--) {
            if (values[i] <= level) {
                return i + 1 < values.length && values[i + 1] > level ? crossing(i + 1, level) : time(i);
            }
        }
        return from;
    }

    /** Last time up to then at which the signal was at or above the level; the start where it never was. */
    double lastAtOrAbove(double level, double from, double to) {
        for (int i = to(to); i >= from(from); i--) {
            if (values[i] >= level) {
                return i + 1 < values.length && values[i + 1] < level ? crossing(i + 1, level) : time(i);
            }
        }
        return from;
    }

    private double crossing(int after, double level) {
        double before = values[after - 1];
        double part = values[after] == before ? 1 : (level - before) / (values[after] - before);
        return time(after - 1) + step * Math.max(0, Math.min(1, part));
    }
}
