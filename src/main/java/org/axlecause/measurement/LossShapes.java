package org.axlecause.measurement;

import java.util.Locale;
import org.axlecause.facts.LossShape;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;

/**
 * Which shape the missing force has over effort. Each shape is fitted to the rise and the hold of the weaker wheel with
 * the swing taken out; every shape that fits is kept.
 */
final class LossShapes {

    /** Times of the noise by which a difference must exceed what is worth asking for. */
    private static final double BEYOND_NOISE = 1;
    /** Share of the loss that a shape may leave unexplained. */
    private static final double EXPLAINED = 0.4;

    /** Fewest instants that a shape is fitted to. */
    private static final int FEWEST = 10;

    private static final double SWING_GONE = 0.3;
    private static final double SWING_SEEN = 0.02;

    private final AxleTrace trace;
    private final TradeValues trade;
    private final FigureSheet sheet;
    private final Place axle;

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
        Forces forces = new Forces(trace.phases(), low.even(), high.even(), high.hold());
        if (forces.size() < FEWEST) {
            return false;
        }
        double scale = high.hold();
        double bound = Math.hypot(
                trade.of(TradeValueCode.SHAPE_FIT_SHARE) * scale, Math.hypot(low.noiseLeft(), high.noiseLeft()));
        double loss = forces.distance(i -> forces.strong(i));
        double heldLoss = (high.hold() - low.hold()) / high.hold();
        boolean any = false;

        double share = Forces.least(0, 1, k -> forces.distance(i -> k * forces.strong(i)));
        if (forces.distance(i -> share * forces.strong(i)) <= Math.min(bound, EXPLAINED * loss)) {
            any = true;
            sheet.fits(
                    LossShape.PROPORTIONAL,
                    wheel(weaker),
                    "%s of the other wheel's force at every effort: this wheel is weak or the other grabs"
                            .formatted(percent(share)));
        }
        double missing = Forces.least(0, scale, c -> forces.distance(i -> Math.max(0, forces.strong(i) - c)));
        if (forces.distance(i -> Math.max(0, forces.strong(i) - missing)) <= Math.min(bound, EXPLAINED * loss)) {
            any = true;
            sheet.fits(
                    LossShape.OFFSET,
                    wheel(weaker),
                    String.format(Locale.ROOT, "about %.0f N less than the other wheel at every effort", missing));
        }
        double cap = Forces.least(0, scale, c -> forces.distance(i -> Math.min(c, forces.strong(i))));
        if (forces.distance(i -> Math.min(cap, forces.strong(i))) <= Math.min(bound, EXPLAINED * loss)) {
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
                && forces.fitLate(Math.min(bound, EXPLAINED * loss))) {
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
