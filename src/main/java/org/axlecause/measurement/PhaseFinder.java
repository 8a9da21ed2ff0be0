package org.axlecause.measurement;

import org.jspecify.annotations.Nullable;

/** Finds the phases of a test from the pedal where it was recorded, else from the forces. */
final class PhaseFinder {

    /** Change of a held force per second, as a share of it, that is still steady. */
    private static final double STEADY_SLOPE = 0.08;

    private static final double SLOPE_SPAN = 0.5;
    /** Share of the held force at which a test that stops on slip has stopped. */
    private static final double STOPPED = 0.3;

    private final Signal left;
    private final Signal right;
    private final double turn;
    private final double steadyShare;

    PhaseFinder(Signal left, Signal right, double turn, double steadyShare) {
        this.left = left;
        this.right = right;
        this.turn = turn;
        this.steadyShare = steadyShare;
    }

    Phases find(@Nullable Signal pedal) {
        if (pedal != null) {
            Phases byPedal = byPedal(pedal);
            if (byPedal.isApplied()) {
                return byPedal;
            }
        }
        Phases byForce = byForce(left.plus(right));
        return byForce.isApplied() ? withEarliestStart(byForce) : byForce;
    }

    private Phases byPedal(Signal raw) {
        Signal pedal = raw.smoothed(Edges.span(raw));
        double base = pedal.quantile(0.02);
        double range = pedal.quantile(0.98) - base;
        double noise = raw.noise();
        if (range <= 0 || range < Edges.BEYOND_NOISE * noise) {
            return none(false);
        }
        double level = Edges.densest(pedal, base + range / 2, steadyShare);
        double[] run = Edges.longestWithin(pedal, level, steadyShare * level);
        double top = run[1] > run[0] ? pedal.mean(run[0], run[1]) : base + range;
        double start = Edges.foot(pedal, raw, base, top, run[0]);
        double letGo = Edges.shoulder(pedal, top, base, Math.max(run[1], run[0]), noise);
        double back = Double.isNaN(letGo) ? Double.NaN : Edges.back(pedal, base, top, letGo, noise);
        double steady = settled(pedal, top, run, noise);
        double heldTo = Double.isNaN(letGo) ? run[1] : letGo;
        double stopped = stoppedOnSlip(steady, heldTo);
        if (!Double.isNaN(stopped)) {
            return new Phases(start, steady, stopped, Double.NaN, Double.NaN, raw.end(), true);
        }
        boolean held = heldTo > steady;
        return new Phases(start, held ? steady : Double.NaN, held ? heldTo : Double.NaN, letGo, back, raw.end(), true);
    }

    /** From when the pedal is at its held force, not only near it. */
    private double settled(Signal pedal, double top, double[] run, double noise) {
        double near = Math.max(steadyShare / 5 * top, Edges.BEYOND_NOISE * Edges.noiseOf(pedal, noise));
        double reached = pedal.risesTo(top - near, run[0], run[1]);
        return Double.isNaN(reached) ? run[0] : reached;
    }

    /** When both forces broke down while the pedal was still held: the tester stops on slip. */
    private double stoppedOnSlip(double from, double to) {
        if (!(to - from > Edges.LONGEST_SPAN)) {
            return Double.NaN;
        }
        Signal sum = left.plus(right).smoothed(Edges.LONGEST_SPAN / 2);
        double highest = sum.highest(from, to);
        double fallen = sum.fallsTo(STOPPED * highest, from, to - Edges.LONGEST_SPAN / 2);
        if (Double.isNaN(fallen) || sum.highest(fallen, to) > 2 * STOPPED * highest) {
            return Double.NaN;
        }
        return Math.max(from, sum.lastAtOrAbove(0.9 * highest, from, fallen) - Edges.LONGEST_SPAN / 4);
    }

    private Phases byForce(Signal raw) {
        Signal force = raw.smoothed(Edges.span(raw));
        double noise = raw.noise();
        double base = Edges.median(force, 0, Math.min(0.3, raw.end() / 4));
        double top = force.quantile(0.98);
        double range = top - base;
        if (range < Math.max(Edges.BEYOND_NOISE * noise, Edges.QUIET * Math.abs(top)) || range <= 0) {
            return none(false);
        }
        double halfUp = force.risesTo(base + range / 2, 0, force.end());
        double start = Edges.foot(force, raw, base, top, halfUp);
        double[] core = steadyCore(force, start, range);
        if (core[1] - core[0] < turn * 0.75) {
            double lastHigh = force.lastAtOrAbove(base + 0.9 * range, start, force.end());
            boolean falls = lastHigh < force.end() - force.step();
            return new Phases(
                    start, Double.NaN, Double.NaN, falls ? lastHigh : Double.NaN, Double.NaN, raw.end(), false);
        }
        TurnFit fit = TurnFit.of(force, core[0], core[1], 1 / turn);
        double tolerance = Math.max(
                steadyShare / 2 * range,
                Math.max(Edges.BEYOND_NOISE * Edges.noiseOf(force, noise), 3 * fit.residual()));
        double end = core[1];
        for (int i = force.from(core[1]); i < force.size(); i++) {
            if (Math.abs(heldAt(fit, force.time(i)) - force.value(i)) > tolerance) {
                break;
            }
            end = force.time(i);
        }
        double begin = core[0];
        for (int i = force.to(core[0]); i >= 0 && force.time(i) > start; i--) {
            if (Math.abs(heldAt(fit, force.time(i)) - force.value(i)) > tolerance) {
                break;
            }
            begin = force.time(i);
        }
        boolean released = end < force.end() - force.step() / 2;
        return new Phases(start, begin, end, released ? end : Double.NaN, Double.NaN, raw.end(), false);
    }

    /** The fitted curve, held at its edge beyond the span of the fit so that its bend does not run away. */
    private static double heldAt(TurnFit fit, double time) {
        double inside = Math.max(fit.from(), Math.min(fit.to(), time));
        double turns = Math.round((time - inside) / fit.turn());
        double shifted = time - turns * fit.turn();
        double back = shifted > fit.to() ? shifted - fit.turn() : shifted < fit.from() ? shifted + fit.turn() : shifted;
        return fit.curveAt(Math.max(fit.from(), Math.min(fit.to(), back)));
    }

    /** The earliest wheel tells when the pedal began to move. */
    private Phases withEarliestStart(Phases phases) {
        double start = phases.start();
        for (Signal wheel : new Signal[] {left, right}) {
            Signal force = wheel.smoothed(Edges.span(wheel));
            double base = Edges.median(force, 0, Math.min(0.3, wheel.end() / 4));
            double top = phases.isHeld()
                    ? force.mean(phases.holdStart(), phases.holdEnd())
                    : force.highest(phases.start(), phases.end());
            if (top - base > Edges.BEYOND_NOISE * wheel.noise() && top > base) {
                double halfUp = force.risesTo(base + (top - base) / 2, phases.start(), phases.end());
                if (!Double.isNaN(halfUp)) {
                    start = Math.min(start, Edges.foot(force, wheel, base, top, halfUp));
                }
            }
        }
        return new Phases(
                start,
                phases.holdStart(),
                phases.holdEnd(),
                phases.releaseStart(),
                phases.releaseEnd(),
                phases.end(),
                phases.byPedal());
    }

    /** Where the mean over a turn is steady longest; shorter by half a slope span at each end. */
    private double[] steadyCore(Signal force, double start, double range) {
        Signal slow = force.smoothed(turn);
        double highest = slow.highest(start, slow.end());
        double[] best = {0, 0};
        double runStart = Double.NaN;
        for (int i = 0; i < slow.size(); i++) {
            double time = slow.time(i);
            double inner = Math.min(time - slow.time(0), slow.end() - time);
            boolean steady = time > start
                    && inner >= turn / 2
                    && slow.value(i) > highest - 0.4 * range
                    && Math.abs(slow.at(time + SLOPE_SPAN / 2) - slow.at(time - SLOPE_SPAN / 2))
                            <= STEADY_SLOPE * SLOPE_SPAN * range;
            if (steady && Double.isNaN(runStart)) {
                runStart = time;
            }
            boolean last = i == slow.size() - 1;
            if (!Double.isNaN(runStart) && (!steady || last)) {
                double runEnd = slow.time(steady ? i : i - 1);
                if (runEnd - runStart > best[1] - best[0]) {
                    best = new double[] {runStart, runEnd};
                }
                runStart = Double.NaN;
            }
        }
        if (best[1] <= best[0]) {
            return new double[] {0, 0};
        }
        double margin = turn / 2 - SLOPE_SPAN / 4;
        return new double[] {Math.max(start, best[0] - margin), Math.min(slow.end(), best[1] + margin)};
    }

    private Phases none(boolean byPedal) {
        return new Phases(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, left.end(), byPedal);
    }
}
