package org.axlecause.measurement;

import java.util.Arrays;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntToDoubleFunction;
import org.axlecause.facts.LossShape;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;

/**
 * Which shape the missing force has over effort. Each shape is fitted to the rise and the hold of the weaker wheel with
 * the swing taken out; every shape that fits is kept.
 */
final class LossShapes {

    private static final double GRID_STEP = 0.02;
    /** Share of the held force of the stronger wheel from which samples count. */
    private static final double FROM_SHARE = 0.03;

    private static final double LONGEST_DELAY = 3;
    private static final double FINEST_DELAY = 0.05;
    /** Times of the noise by which a difference must exceed what is worth asking for. */
    private static final double BEYOND_NOISE = 1;
    /** Share of the loss that a shape may leave unexplained. */
    private static final double EXPLAINED = 0.4;

    private static final double SWING_GONE = 0.3;
    private static final double SWING_SEEN = 0.02;

    private final AxleTrace trace;
    private final TradeValues trade;
    private final FigureSheet sheet;
    private final Place axle;
    private double[] times = {};
    private double[] strong = {};
    private double[] weak = {};

    LossShapes(AxleTrace trace, FigureSheet sheet) {
        this.trace = trace;
        this.trade = trace.trade();
        this.sheet = sheet;
        this.axle = Place.ofAxle(trace.axle().number());
    }

    void find() {
        boolean cyclic = cyclic();
        extra();
        EffortCurve curve = EffortCurve.of(trace, true);
        double[] worst = {0, 0};
        double noise = Math.hypot(
                trace.wheel(Side.LEFT).noiseLeft(), trace.wheel(Side.RIGHT).noiseLeft());
        for (EffortCurve.Point point : curve.points()) {
            if (point.higher() >= trade.of(TradeValueCode.LOW_EFFORT_FORCE)) {
                double doubtful = BEYOND_NOISE * noise / point.higher();
                worst[0] = Math.max(worst[0], point.towards(Side.LEFT) - doubtful);
                worst[1] = Math.max(worst[1], point.towards(Side.RIGHT) - doubtful);
            }
        }
        double note = trade.of(TradeValueCode.SHAPE_IMBALANCE);
        if (Math.max(worst[0], worst[1]) < note) {
            return;
        }
        Side weaker = worst[0] >= worst[1] ? Side.LEFT : Side.RIGHT;
        boolean crosses = Math.min(worst[0], worst[1]) >= note;
        if (crosses || !fit(weaker)) {
            sheet.fits(
                    LossShape.UNDECIDED,
                    wheel(weaker),
                    crosses
                            ? "the weaker wheel changes sides over effort"
                            : cyclic
                                    ? "beside the swing the forces differ in no known way over effort"
                                    : "the forces differ by up to %s, in no known way over effort"
                                            .formatted(percent(Math.max(worst[0], worst[1]))));
        }
    }

    private boolean cyclic() {
        boolean any = false;
        for (Side side : Side.values()) {
            WheelTrace wheel = trace.wheel(side);
            double swing = wheel.swing();
            if (swing >= trade.of(TradeValueCode.CYCLIC_SWING)) {
                any = true;
                sheet.fits(
                        LossShape.CYCLIC,
                        wheel(side),
                        "the force swings by %s of its highest within a turn of %.2f s, %s once and %s twice a turn; mean %.0f N"
                                .formatted(
                                        percent(swing),
                                        trace.turn().length(),
                                        percent(wheel.harmonic(1)),
                                        percent(wheel.harmonic(2)),
                                        wheel.hold()));
            }
        }
        return any;
    }

    private void extra() {
        for (Side side : Side.values()) {
            WheelTrace more = trace.wheel(side);
            WheelTrace other = trace.wheel(opposite(side));
            double rolling = more.rolling() - other.rolling();
            double after = more.after(trace.releaseEnd()) - other.after(trace.releaseEnd());
            boolean stays = Double.isNaN(after) || after + rolling > rolling / 2;
            if (rolling >= trade.of(TradeValueCode.EXTRA_FORCE) && stays) {
                sheet.fits(
                        LossShape.EXTRA,
                        wheel(side),
                        String.format(
                                Locale.ROOT,
                                "%.0f N while rolling before the brake is applied, %.0f N at the other wheel",
                                more.rolling(),
                                other.rolling()));
            }
        }
    }

    private boolean fit(Side weaker) {
        WheelTrace low = trace.wheel(weaker);
        WheelTrace high = trace.wheel(opposite(weaker));
        gather(low.even(), high.even(), high.hold());
        if (times.length < 10) {
            return false;
        }
        double scale = high.hold();
        double bound = Math.hypot(
                trade.of(TradeValueCode.SHAPE_FIT_SHARE) * scale, Math.hypot(low.noiseLeft(), high.noiseLeft()));
        double loss = distance(i -> strong[i]);
        double heldLoss = (high.hold() - low.hold()) / high.hold();
        boolean any = false;

        double share = least(0, 1, k -> distance(i -> k * strong[i]));
        if (distance(i -> share * strong[i]) <= Math.min(bound, EXPLAINED * loss)) {
            any = true;
            sheet.fits(
                    LossShape.PROPORTIONAL,
                    wheel(weaker),
                    "%s of the other wheel's force at every effort: this wheel is weak or the other grabs"
                            .formatted(percent(share)));
        }
        double missing = least(0, scale, c -> distance(i -> Math.max(0, strong[i] - c)));
        if (distance(i -> Math.max(0, strong[i] - missing)) <= Math.min(bound, EXPLAINED * loss)) {
            any = true;
            sheet.fits(
                    LossShape.OFFSET,
                    wheel(weaker),
                    String.format(Locale.ROOT, "about %.0f N less than the other wheel at every effort", missing));
        }
        double cap = least(0, scale, c -> distance(i -> Math.min(c, strong[i])));
        if (distance(i -> Math.min(cap, strong[i])) <= Math.min(bound, EXPLAINED * loss)) {
            any = true;
            sheet.fits(
                    LossShape.CAPPED,
                    wheel(weaker),
                    String.format(
                            Locale.ROOT,
                            "equal to the other wheel up to %.0f N, then no further%s",
                            cap,
                            slips(low, high) ? "; its swing is gone: the tyre slips on the rollers" : ""));
        }
        double lag = low.onset() - high.onset();
        double riseLag = low.riseTime() - high.riseTime();
        double later = Math.max(Double.isNaN(lag) ? 0 : lag, Double.isNaN(riseLag) ? 0 : riseLag);
        if (later >= trade.of(TradeValueCode.LATE_LAG)
                && Math.abs(heldLoss) <= trade.of(TradeValueCode.LATE_HOLD_IMBALANCE)
                && fitsLate(Math.min(bound, EXPLAINED * loss))) {
            any = true;
            sheet.fits(
                    LossShape.LATE,
                    wheel(weaker),
                    String.format(
                            Locale.ROOT,
                            "%.2f s later than the other wheel, and within %s of it while held",
                            later,
                            percent(Math.abs(heldLoss))));
        }
        return any;
    }

    static boolean slips(WheelTrace low, WheelTrace high) {
        return low.swing() < SWING_GONE * high.swing() && high.swing() > SWING_SEEN;
    }

    private void gather(Signal low, Signal high, double scale) {
        Phases phases = trace.phases();
        double step = Math.max(GRID_STEP, (phases.holdEnd() - phases.start()) / 600);
        int most = (int) ((phases.holdEnd() - phases.start()) / step) + 2;
        times = new double[most];
        strong = new double[most];
        weak = new double[most];
        int count = 0;
        for (double time = phases.start(); time <= phases.holdEnd(); time += step) {
            double force = high.at(time);
            if (force >= FROM_SHARE * scale && high.seen(time, time) && low.seen(time, time)) {
                times[count] = time;
                strong[count] = force;
                weak[count++] = low.at(time);
            }
        }
        times = Arrays.copyOf(times, count);
        strong = Arrays.copyOf(strong, count);
        weak = Arrays.copyOf(weak, count);
    }

    /** The stronger wheel's force, delayed by a restriction, by a dead time, or by linings that touch late. */
    private boolean fitsLate(double bound) {
        double first = times[0];
        for (double delay = FINEST_DELAY; delay <= LONGEST_DELAY; delay *= 1.05) {
            double[] restricted = new double[times.length];
            double[] shifted = new double[times.length];
            double followed = 0;
            for (int i = 0; i < times.length; i++) {
                double step = i == 0 ? 0 : times[i] - times[i - 1];
                followed += (strong[i] - followed) * (1 - Math.exp(-step / delay));
                restricted[i] = followed;
                shifted[i] = strongAt(times[i] - delay);
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

    private double strongAt(double time) {
        int low = 0;
        int high = times.length - 1;
        if (time < times[0]) {
            return 0;
        }
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (times[middle] <= time) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return strong[low];
    }

    /** Root mean square distance of a shape from the weaker wheel, rise and hold weighing alike. */
    private double distance(IntToDoubleFunction shape) {
        double steadyFrom = trace.phases().holdStart();
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

    private static double least(double from, double to, DoubleUnaryOperator distance) {
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

    private Place wheel(Side side) {
        return Place.ofWheel(axle.axle() == null ? 0 : axle.axle(), side);
    }

    static Side opposite(Side side) {
        return side == Side.LEFT ? Side.RIGHT : Side.LEFT;
    }

    private static String percent(double ratio) {
        return String.format(Locale.ROOT, "%.0f %%", 100 * ratio);
    }
}
