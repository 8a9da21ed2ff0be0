package org.axlecause.measurement;

import java.math.BigDecimal;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.Samples;
import org.axlecause.facts.Side;
import org.axlecause.facts.Tester;
import org.axlecause.facts.Trace;
import org.axlecause.facts.WheelReading;
import org.jspecify.annotations.Nullable;

/** The trace of an axle, taken apart into phases, wheel turn and wheels. */
final class AxleTrace {

    /** Fewest samples that phases can be found in. */
    static final int FEWEST_SAMPLES = 20;
    /** Time after the first fall at which a release without a recorded pedal counts as over. */
    private static final double USUAL_RELEASE = 0.3;

    /** Time over which a force is looked at after the tester stopped, seconds. */
    private static final double STOPPED_SPAN = 0.1;
    /** Share of the held force below which a force has broken down. */
    private static final double STOPPED_SHARE = 0.3;
    /** Share of the held force at which a force begins to break down. */
    private static final double FALLEN_SHARE = 0.8;

    private final AxleReading axle;
    private final Trace trace;
    private final Phases phases;
    private final Turn turn;
    private final @Nullable Signal pedal;
    private final WheelTrace left;
    private final WheelTrace right;
    private final TradeValues trade;

    private AxleTrace(
            AxleReading axle,
            Trace trace,
            Phases phases,
            Turn turn,
            @Nullable Signal pedal,
            WheelTrace left,
            WheelTrace right,
            TradeValues trade) {
        this.axle = axle;
        this.trace = trace;
        this.phases = phases;
        this.turn = turn;
        this.pedal = pedal;
        this.left = left;
        this.right = right;
        this.trade = trade;
    }

    /** The trace taken apart; null where there is none or it has too few samples to say anything. */
    static @Nullable AxleTrace of(AxleReading axle, @Nullable Tester tester, TradeValues trade) {
        Trace trace = axle.trace();
        if (trace == null || sampleCount(trace) < FEWEST_SAMPLES) {
            return null;
        }
        double period = trace.samplePeriod().doubleValue();
        int count = sampleCount(trace);
        Signal leftForce = Signal.of(trace.left(), period, count);
        Signal rightForce = Signal.of(trace.right(), period, count);
        Samples pedalSamples = trace.pedal();
        Signal pedal =
                pedalSamples == null || pedalSamples.size() < count ? null : Signal.of(pedalSamples, period, count);
        Turn turn = Turn.usual(tester, trade);
        Phases phases = new PhaseFinder(leftForce, rightForce, turn.length(), trade.of(TradeValueCode.STEADY_SHARE))
                .find(pedal);
        if (phases.holdLength() > turn.length()) {
            turn = Turn.find(leftForce, rightForce, phases.holdStart(), phases.holdEnd(), tester, trade);
        }
        return new AxleTrace(
                axle,
                trace,
                phases,
                turn,
                phases.byPedal() && pedal != null ? pedal.smoothed(Edges.span(pedal)) : null,
                new WheelTrace(leftForce, phases, turn, trade, dragOf(axle.left())),
                new WheelTrace(rightForce, phases, turn, trade, dragOf(axle.right())),
                trade);
    }

    static int sampleCount(Trace trace) {
        return Math.min(trace.left().size(), trace.right().size());
    }

    private static double dragOf(@Nullable WheelReading wheel) {
        BigDecimal drag = wheel == null ? null : wheel.drag();
        return drag == null ? Double.NaN : drag.doubleValue();
    }

    AxleReading axle() {
        return axle;
    }

    Trace trace() {
        return trace;
    }

    Phases phases() {
        return phases;
    }

    Turn turn() {
        return turn;
    }

    TradeValues trade() {
        return trade;
    }

    WheelTrace wheel(Side side) {
        return side == Side.LEFT ? left : right;
    }

    /** When the release is over; where no pedal was recorded, a usual release after the first fall. */
    double releaseEnd() {
        return phases.byPedal() ? phases.releaseEnd() : phases.releaseStart() + USUAL_RELEASE;
    }

    /** Wheel with the higher held force; the left one where they are equal. */
    Side stronger() {
        return right.hold() > left.hold() ? Side.RIGHT : Side.LEFT;
    }

    /** Time at which an effort is passed in the rise, by the pedal or else by the stronger wheel; NaN where it is not. */
    double timeOfEffort(double effort) {
        if (!phases.isHeld()) {
            return Double.NaN;
        }
        if (pedal != null) {
            return pedal.risesTo(pedalAt(pedal, effort), phases.start(), phases.holdEnd());
        }
        WheelTrace strong = wheel(stronger());
        return strong.even().risesTo(effort * strong.hold(), phases.start(), phases.holdEnd());
    }

    /** Rise of a wheel's force for each newton at the pedal between two efforts; NaN where no pedal was recorded. */
    double steepness(Side side, double from, double to) {
        double first = timeOfEffort(from);
        double second = timeOfEffort(to);
        WheelTrace wheel = wheel(side);
        if (pedal == null
                || Double.isNaN(first)
                || Double.isNaN(second)
                || !wheel.net().seen(first, second)) {
            return Double.NaN;
        }
        double pressed = pedalAt(pedal, to) - pedalAt(pedal, from);
        return pressed <= 0
                ? Double.NaN
                : (wheel.even().at(second) - wheel.even().at(first)) / pressed;
    }

    /** Whether both forces broke down while the pedal was still held: the tester stopped on slip. */
    boolean stoppedOnSlip() {
        if (pedal == null || !phases.isHeld() || phases.isReleased()) {
            return false;
        }
        double held = pedalAt(pedal, 1);
        double last = phases.end() - STOPPED_SPAN;
        return last > phases.holdEnd()
                && pedal.at(phases.holdEnd() + STOPPED_SPAN) > held / 2
                && left.net().mean(last, phases.end()) < STOPPED_SHARE * left.hold()
                && right.net().mean(last, phases.end()) < STOPPED_SHARE * right.hold();
    }

    /** Time at which a wheel's force broke down at the end of its hold. */
    double brokeDown(Side side) {
        WheelTrace wheel = wheel(side);
        return wheel.net().fallsTo(FALLEN_SHARE * wheel.hold(), phases.holdStart(), phases.end());
    }

    /** Time at which the same pedal force is passed while it is let go; NaN where that was not recorded. */
    double timeOfEffortFalling(double effort) {
        if (pedal == null || !phases.isReleased()) {
            return Double.NaN;
        }
        return pedal.fallsTo(pedalAt(pedal, effort), phases.releaseStart(), phases.end());
    }

    private double pedalAt(Signal calm, double effort) {
        double base = calm.quantile(0.02);
        double held = calm.mean(phases.holdEnd() - Math.min(phases.holdLength(), turn.length()), phases.holdEnd());
        return base + effort * (held - base);
    }
}
