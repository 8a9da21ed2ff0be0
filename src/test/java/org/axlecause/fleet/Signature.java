package org.axlecause.fleet;

import org.axlecause.facts.Samples;
import org.axlecause.facts.Trace;

/**
 * Features of the reference run read off by their definitions, with the phases known from the application: independent
 * of the code that finds phases in strange traces. First wheel is the left one.
 */
final class Signature {

    private static final Application RUN = ReferenceAxle.APPLICATION;
    private static final double PERIOD = 0.01;
    private static final double TURN = 2 * Math.PI * ReferenceAxle.TYRE_RADIUS / ReferenceAxle.ROLLER_SPEED;
    private static final double RELEASE = RUN.start() + RUN.rise() + RUN.hold();

    private final Samples left;
    private final Samples right;

    Signature(Trace trace) {
        left = trace.left();
        right = trace.right();
    }

    double rolling(boolean first) {
        return mean(side(first), RUN.start() - TURN, RUN.start());
    }

    double hold(boolean first) {
        return mean(side(first), RELEASE - 2 * TURN, RELEASE) - rolling(first);
    }

    double imbalanceAt(double effort) {
        double time = RUN.start() + effort * RUN.rise();
        return imbalance(at(true, time) - rolling(true), at(false, time) - rolling(false));
    }

    double imbalanceOfHold() {
        return imbalance(hold(true), hold(false));
    }

    double imbalanceOfPeaks() {
        return imbalance(highest(true) - rolling(true), highest(false) - rolling(false));
    }

    double timeTo(double share, boolean first) {
        double level = rolling(first) + share * hold(first);
        Samples forces = side(first);
        for (int i = index(RUN.start()); i < forces.size(); i++) {
            if (forces.at(i) >= level) {
                return i * PERIOD - RUN.start();
            }
        }
        return Double.NaN;
    }

    double releaseTime(boolean first) {
        double level = rolling(first) + 0.1 * hold(first);
        Samples forces = side(first);
        for (int i = index(RELEASE); i < forces.size(); i++) {
            if (forces.at(i) <= level) {
                return i * PERIOD - RELEASE;
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    double residual(boolean first) {
        return at(first, RELEASE + RUN.release() + 1.5) - rolling(first);
    }

    double swing(boolean first) {
        double highest = Double.NEGATIVE_INFINITY;
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = index(RELEASE - TURN); i <= index(RELEASE); i++) {
            highest = Math.max(highest, side(first).at(i));
            lowest = Math.min(lowest, side(first).at(i));
        }
        return (highest - lowest) / highest;
    }

    private double highest(boolean first) {
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < side(first).size(); i++) {
            highest = Math.max(highest, side(first).at(i));
        }
        return highest;
    }

    /** Positive where the first wheel is the weaker. */
    private static double imbalance(double first, double second) {
        return (second - first) / Math.max(first, second);
    }

    private double at(boolean first, double time) {
        return side(first).at(index(time));
    }

    private Samples side(boolean first) {
        return first ? left : right;
    }

    private static double mean(Samples forces, double from, double to) {
        double sum = 0;
        int count = 0;
        for (int i = index(from) + 1; i <= index(to); i++) {
            sum += forces.at(i);
            count++;
        }
        return sum / count;
    }

    private static int index(double time) {
        return (int) Math.round(time / PERIOD);
    }
}
