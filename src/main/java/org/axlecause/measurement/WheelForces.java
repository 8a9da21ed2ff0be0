package org.axlecause.measurement;

import java.math.BigDecimal;
import org.axlecause.facts.ImbalanceFormula;
import org.axlecause.facts.Samples;
import org.axlecause.facts.Side;
import org.axlecause.facts.Trace;
import org.jspecify.annotations.Nullable;

/**
 * The two forces that a formula compares.
 *
 * @param higher higher force, newtons
 * @param lower lower force, newtons
 * @param leftIsHigher whether the higher force is that of the left wheel
 * @param difference difference that the formula takes, newtons
 * @param note how the forces were taken where the formula alone doesn't say it
 */
record WheelForces(
        BigDecimal higher,
        BigDecimal lower,
        boolean leftIsHigher,
        BigDecimal difference,
        @Nullable String note) {

    private static final int NONE = -1;

    static WheelForces by(ImbalanceFormula formula, TestedAxle axle, BigDecimal left, BigDecimal right) {
        return switch (formula) {
            case LARGEST_DIFFERENCE_OVER_HIGHER, LARGEST_DIFFERENCE_OVER_AXLE_LOAD ->
                whileRising(axle.trace(), left, right);
            case RELATIVE_AT_SLIP -> atSlip(axle, left, right);
            default -> of(left, right, null);
        };
    }

    private static WheelForces of(BigDecimal left, BigDecimal right, @Nullable String note) {
        BigDecimal higher = left.max(right);
        BigDecimal lower = left.min(right);
        return new WheelForces(higher, lower, left.compareTo(right) >= 0, higher.subtract(lower), note);
    }

    /** The largest difference at one instant up to the later of the two peaks. */
    private static WheelForces whileRising(@Nullable Trace trace, BigDecimal left, BigDecimal right) {
        if (trace == null) {
            return of(left, right, "difference of the highest forces, no trace was recorded");
        }
        int last = Math.max(peakOf(trace.left()), peakOf(trace.right()));
        double largest = 0;
        for (int i = 0;
                i <= last && i < trace.left().size() && i < trace.right().size();
                i++) {
            double difference = Math.abs(trace.left().at(i) - trace.right().at(i));
            if (difference > largest) {
                largest = difference;
            }
        }
        return new WheelForces(
                left.max(right),
                left.min(right),
                left.compareTo(right) >= 0,
                Rounded.force(largest),
                "difference at one instant of the trace");
    }

    /** The forces as the first of the locked wheels is at its peak. */
    private static WheelForces atSlip(TestedAxle axle, BigDecimal left, BigDecimal right) {
        Trace trace = axle.trace();
        if (trace == null || axle.lockedWheels() == 0) {
            return of(left, right, "highest forces, no instant of slip was recorded");
        }
        int ofLeft = axle.locked(Side.LEFT) ? peakOf(trace.left()) : NONE;
        int ofRight = axle.locked(Side.RIGHT) ? peakOf(trace.right()) : NONE;
        int instant = ofLeft == NONE ? ofRight : ofRight == NONE ? ofLeft : Math.min(ofLeft, ofRight);
        if (instant == NONE
                || instant >= trace.left().size()
                || instant >= trace.right().size()
                || Double.isNaN(trace.left().at(instant))
                || Double.isNaN(trace.right().at(instant))) {
            return of(left, right, "highest forces, the trace has a gap at the instant of slip");
        }
        return of(
                Rounded.force(Math.max(0, trace.left().at(instant))),
                Rounded.force(Math.max(0, trace.right().at(instant))),
                "forces of the trace as the first wheel slips");
    }

    private static int peakOf(Samples samples) {
        int best = NONE;
        for (int i = 0; i < samples.size(); i++) {
            if (!Double.isNaN(samples.at(i)) && (best == NONE || samples.at(i) > samples.at(best))) {
                best = i;
            }
        }
        return best;
    }
}
