package org.axlecause.measurement;

import java.util.Arrays;

/** Where a signal begins to rise, where it stands and where it begins to fall, with noise allowed for. */
final class Edges {

    /** Share of the range that a quiet channel may move without having begun to rise. */
    static final double QUIET = 0.0005;
    /** Times of the noise that a movement must exceed. */
    static final double BEYOND_NOISE = 4;
    /** Share between two marks from which the beginning of a noisy rise is drawn back to its foot. */
    static final double MARKS_APART = 0.15;
    /** Longest span of smoothing, seconds. */
    static final double LONGEST_SPAN = 0.25;

    private Edges() {}

    /** Where a rise begins: the last quiet sample, or the foot of the rising line where noise hides it. */
    static double foot(Signal smooth, Signal raw, double base, double top, double before) {
        double range = top - base;
        double noise = raw.noise(0, before);
        double quiet = QUIET * range;
        double calm = noiseOf(smooth, noise);
        if (BEYOND_NOISE * calm <= quiet) {
            return smooth.lastAtOrBelow(base + quiet, 0, before);
        }
        double low = Math.max(0.05, BEYOND_NOISE * calm / range);
        double first = smooth.lastAtOrBelow(base + low * range, 0, before);
        double second = smooth.risesTo(base + (low + MARKS_APART) * range, first, smooth.end());
        if (Double.isNaN(second)) {
            return first;
        }
        return Math.max(0, first - (second - first) * low / MARKS_APART);
    }

    static double shoulder(Signal pedal, double top, double base, double after, double noise) {
        double range = top - base;
        double calm = noiseOf(pedal, noise);
        double fallen = pedal.fallsTo(base + range / 2, after, pedal.end());
        if (Double.isNaN(fallen)) {
            return Double.NaN;
        }
        if (BEYOND_NOISE * calm <= QUIET * range) {
            double level = Math.max(pedal.mean(after - LONGEST_SPAN, after) - QUIET * range, base + 0.8 * range);
            return pedal.lastAtOrAbove(level, 0, fallen);
        }
        double low = Math.max(0.05, BEYOND_NOISE * calm / range);
        double first = pedal.lastAtOrAbove(top - low * range, 0, fallen);
        double second = pedal.fallsTo(top - (low + MARKS_APART) * range, first, pedal.end());
        return Double.isNaN(second) ? first : first - (second - first) * low / MARKS_APART;
    }

    static double back(Signal pedal, double base, double top, double letGo, double noise) {
        double range = top - base;
        double calm = noiseOf(pedal, noise);
        if (BEYOND_NOISE * calm <= QUIET * range) {
            return pedal.fallsTo(base + QUIET * range, letGo, pedal.end());
        }
        double low = Math.max(0.05, BEYOND_NOISE * calm / range);
        double first = pedal.fallsTo(base + (low + MARKS_APART) * range, letGo, pedal.end());
        double second = pedal.fallsTo(base + low * range, letGo, pedal.end());
        return Double.isNaN(second) ? Double.NaN : second + (second - first) * low / MARKS_APART;
    }

    /** Span of smoothing that a noisy signal needs; none for a clean one. */
    static double span(Signal signal) {
        double top = signal.quantile(0.98) - signal.quantile(0.02);
        double noise = signal.noise();
        if (top <= 0 || noise <= 0.005 * top) {
            return 0;
        }
        double samples = Math.pow(noise / (0.01 * top), 2);
        return Math.min(LONGEST_SPAN, Math.max(2, samples) * signal.step());
    }

    static double noiseOf(Signal smoothed, double noise) {
        return Math.min(noise, smoothed.noise() + noise * Math.sqrt(smoothed.step() / LONGEST_SPAN));
    }

    static double median(Signal signal, double from, double to) {
        int first = signal.from(from);
        int last = signal.to(to);
        double[] part = new double[last - first + 1];
        for (int i = 0; i < part.length; i++) {
            part[i] = signal.value(first + i);
        }
        Arrays.sort(part);
        return part[part.length / 2];
    }

    /** The level above a floor around which most samples lie. */
    static double densest(Signal signal, double floor, double share) {
        double[] sorted = signal.ranked();
        int best = 0;
        double level = sorted[sorted.length - 1];
        int upper = 0;
        for (int lower = 0; lower < sorted.length; lower++) {
            if (sorted[lower] < floor) {
                continue;
            }
            while (upper < sorted.length && sorted[upper] <= sorted[lower] * (1 + 2 * share)) {
                upper++;
            }
            if (upper - lower > best) {
                best = upper - lower;
                level = sorted[(lower + upper - 1) / 2];
            }
        }
        return level;
    }

    static double[] longestWithin(Signal signal, double level, double distance) {
        double[] best = {0, 0};
        int begin = -1;
        for (int i = 0; i <= signal.size(); i++) {
            boolean within = i < signal.size() && Math.abs(signal.value(i) - level) <= distance;
            if (within && begin < 0) {
                begin = i;
            }
            if (!within && begin >= 0) {
                if (signal.time(i - 1) - signal.time(begin) > best[1] - best[0]) {
                    best = new double[] {signal.time(begin), signal.time(i - 1)};
                }
                begin = -1;
            }
        }
        return best;
    }
}
