package org.axlecause.measurement;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntToDoubleFunction;

/** Forces of the weaker and the stronger wheel in the rise and the hold, to which shapes of the loss are fitted. */
final class Forces {

    private static final double GRID_STEP = 0.02;
    /** Share of the held force of the stronger wheel from which samples count. */
    private static final double FROM_SHARE = 0.03;

    private static final double LONGEST_DELAY = 3;
    private static final double FINEST_DELAY = 0.05;

    /** Seconds within which two steps are the same. */
    private static final double SAME_STEP = 1e-9;

    private final double[] times;
    private final double[] strong;
    private final double[] weak;
    private final double steadyFrom;

    /**
     * Samples from the first movement of the pedal to the end of the hold, where the stronger wheel brakes at all.
     *
     * @param scale held force of the stronger wheel
     */
    Forces(Phases phases, Signal low, Signal high, double scale) {
        double step = Math.max(GRID_STEP, (phases.holdEnd() - phases.start()) / 600);
        int most = (int) ((phases.holdEnd() - phases.start()) / step) + 2;
        double[] at = new double[most];
        double[] ofStrong = new double[most];
        double[] ofWeak = new double[most];
        int count = 0;
        for (double time = phases.start(); time <= phases.holdEnd(); time += step) {
            double force = high.at(time);
            if (force >= FROM_SHARE * scale && high.seen(time, time) && low.seen(time, time)) {
                at[count] = time;
                ofStrong[count] = force;
                ofWeak[count++] = low.at(time);
            }
        }
        times = Arrays.copyOf(at, count);
        strong = Arrays.copyOf(ofStrong, count);
        weak = Arrays.copyOf(ofWeak, count);
        steadyFrom = phases.holdStart();
    }

    int size() {
        return times.length;
    }

    /** Force of the stronger wheel at an instant. */
    double strong(int instant) {
        return strong[instant];
    }

    /** The stronger wheel's force, delayed by a restriction, by a dead time, or by linings that touch late. */
    boolean fitLate(double bound) {
        double first = times[0];
        for (double delay = FINEST_DELAY; delay <= LONGEST_DELAY; delay *= 1.05) {
            double[] restricted = new double[times.length];
            double[] shifted = new double[times.length];
            double followed = 0;
            double step = 0;
            double share = 0;
            int behind = 0;
            for (int i = 0; i < times.length; i++) {
                double since = i == 0 ? 0 : times[i] - times[i - 1];
                if (Math.abs(since - step) > SAME_STEP) {
                    step = since;
                    share = 1 - Math.exp(-step / delay);
                }
                followed += (strong[i] - followed) * share;
                restricted[i] = followed;
                while (behind < i && times[behind + 1] <= times[i] - delay) {
                    behind++;
                }
                shifted[i] = times[i] - delay < first ? 0 : strong[behind];
            }
            double dead = delay;
            if (distance(i -> restricted[i]) <= bound
                    || distance(i -> shifted[i]) <= bound
                    || distance(i -> times[i] < first + dead ? 0 : strong[i]) <= bound) {
                return true;
            }
        }
        return false;
    }

    /** Root mean square distance of a shape from the weaker wheel, rise and hold weighing alike. */
    double distance(IntToDoubleFunction shape) {
        double[] squares = new double[2];
        int[] counts = new int[2];
        for (int i = 0; i < times.length; i++) {
            int part = times[i] < steadyFrom ? 0 : 1;
            double rest = weak[i] - shape.applyAsDouble(i);
            squares[part] += rest * rest;
            counts[part]++;
        }
        double worst = 0;
        for (int part = 0; part < 2; part++) {
            worst = counts[part] == 0 ? worst : Math.max(worst, squares[part] / counts[part]);
        }
        return Math.sqrt(worst);
    }

    static double least(double from, double to, DoubleUnaryOperator distance) {
        double best = from;
        double least = Double.POSITIVE_INFINITY;
        double low = from;
        double high = to;
        for (int round = 0; round < 3; round++) {
            double step = (high - low) / 40;
            for (int i = 0; i <= 40; i++) {
                double here = distance.applyAsDouble(low + i * step);
                if (here < least) {
                    least = here;
                    best = low + i * step;
                }
            }
            low = Math.max(from, best - step);
            high = Math.min(to, best + step);
        }
        return best;
    }
}
