package org.axlecause.measurement;

import java.util.ArrayList;
import java.util.List;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.Side;
import org.axlecause.facts.Tester;
import org.jspecify.annotations.Nullable;

/**
 * Net forces of an axle and their imbalance over effort, from a twentieth to the whole of the held pedal, or of the held
 * force of the stronger wheel where no pedal was recorded; the last point is the hold itself.
 *
 * @param points from light to hard
 */
public record EffortCurve(List<Point> points) {

    private static final int STEPS = 20;

    public EffortCurve {
        points = List.copyOf(points);
    }

    /**
     * Forces at one effort.
     *
     * @param effort share of the held effort
     * @param time seconds from the beginning of the trace
     * @param left net force of the left wheel, newtons
     * @param right net force of the right wheel, newtons
     */
    public record Point(double effort, double time, double left, double right) {

        /** (high - low) / high; 0 where neither wheel brakes. */
        public double imbalance() {
            return Math.abs(towards(Side.LEFT));
        }

        /** The same, positive where that side is the weaker, negative where it is the stronger. */
        public double towards(Side weaker) {
            double low = Math.max(0, weaker == Side.LEFT ? left : right);
            double high = Math.max(0, weaker == Side.LEFT ? right : left);
            double top = Math.max(low, high);
            return top <= 0 ? 0 : (high - low) / top;
        }

        /** Force of the stronger wheel. */
        public double higher() {
            return Math.max(left, right);
        }
    }

    /** The curve of an axle's trace; without points where there is no trace, or no steady hold that effort is a share of. */
    public static EffortCurve of(AxleReading axle, @Nullable Tester tester) {
        AxleTrace trace = AxleTrace.of(axle, tester, TradeValues.released());
        return trace == null ? new EffortCurve(List.of()) : of(trace, false);
    }

    /** The curve with the swing of the wheels left in or taken out. */
    static EffortCurve of(AxleTrace trace, boolean even) {
        List<Point> points = new ArrayList<>();
        WheelTrace left = trace.wheel(Side.LEFT);
        WheelTrace right = trace.wheel(Side.RIGHT);
        if (Double.isNaN(left.hold()) || Double.isNaN(right.hold())) {
            return new EffortCurve(points);
        }
        Signal ofLeft = even ? left.even() : left.smooth();
        Signal ofRight = even ? right.even() : right.smooth();
        for (int step = 1; step < STEPS; step++) {
            double effort = (double) step / STEPS;
            double time = trace.timeOfEffort(effort);
            if (!Double.isNaN(time)
                    && left.net().seen(time, time)
                    && right.net().seen(time, time)) {
                points.add(new Point(effort, time, ofLeft.at(time), ofRight.at(time)));
            }
        }
        points.add(new Point(1, trace.phases().holdEnd(), left.hold(), right.hold()));
        return new EffortCurve(points);
    }

    /** The point at that share of the effort; null where the trace can't show it. */
    public @Nullable Point at(double effort) {
        return points.stream()
                .filter(point -> Math.abs(point.effort() - effort) < 1e-9)
                .findFirst()
                .orElse(null);
    }
}
