package org.axlecause.measurement;

import org.jspecify.annotations.Nullable;

/** What the trace of one wheel shows, in newtons and seconds; NaN where it can't show it. */
final class WheelTrace {

    private static final double ONSET_SHARE = 0.1;
    private static final double RISE_SHARE = 0.9;
    /** A held force below this many standard errors has no tenth that could be timed. */
    private static final double BEYOND_ERROR = 8;
    /** Share of the force that a fit may leave beyond noise before it is made over fewer turns. */
    private static final double UNEVEN = 0.002;
    /** Swing as a share of the held force below which a force counts as even. */
    private static final double LEAST_SWING = 0.02;
    /** Times of its noise by which a force outside the hold must exceed it to be the peak. */
    private static final double BEYOND_NOISE = 4.5;
    /** Turns of the hold that the swing is fitted to. */
    private static final double TURNS_OF_FIT = 4;

    private final Signal force;
    private final Phases phases;
    private final Turn turn;
    private final TradeValues trade;
    private final double span;
    private final double rolling;
    private final double base;
    private final Signal net;
    private final Signal smooth;
    private final @Nullable TurnFit fit;
    private final double hold;
    private final Signal even;

    WheelTrace(Signal force, Phases phases, Turn turn, TradeValues trade, double reportedDrag) {
        this.force = force;
        this.phases = phases;
        this.turn = turn;
        this.trade = trade;
        this.span = Edges.span(force);
        this.rolling = rollingOf();
        this.base = Double.isNaN(rolling) ? reportedDrag : rolling;
        this.net = force.minus(Double.isNaN(base) ? 0 : base);
        this.smooth = net.smoothed(span);
        this.fit = fitOf();
        this.hold = holdOf();
        this.even = fit == null || !swings(fit) ? smooth : net.without(fit).smoothed(span);
    }

    private double rollingOf() {
        double to = phases.isApplied() ? phases.start() : force.end();
        double turns = Math.floor((to - force.time(0)) / turn.length() + 1e-6);
        if (turns < 1) {
            return Double.NaN;
        }
        double from = to - turns * turn.length();
        return force.seen(from, to) ? force.mean(from, to) : Double.NaN;
    }

    private @Nullable TurnFit fitOf() {
        double turns = Math.min(TURNS_OF_FIT, Math.floor(phases.holdLength() / turn.length() + 1e-6));
        if (!phases.isHeld() || turns < 1 || Double.isNaN(base)) {
            return null;
        }
        TurnFit many = fitOver(turns, false);
        double fewer = Math.min(turns, trade.of(TradeValueCode.HOLD_TURNS));
        boolean bends = many == null
                || many.residual() > 2 * net.noise(many.from(), many.to()) + UNEVEN * Math.abs(many.mean());
        return bends ? fitOver(fewer, true) : many;
    }

    private @Nullable TurnFit fitOver(double turns, boolean bent) {
        double from = phases.holdEnd() - turns * turn.length();
        if (!force.seen(from, phases.holdEnd()) || force.to(phases.holdEnd()) - force.from(from) < 9) {
            return null;
        }
        return bent
                ? TurnFit.ofBent(net, from, phases.holdEnd(), turn.frequency())
                : TurnFit.of(net, from, phases.holdEnd(), turn.frequency());
    }

    private double holdOf() {
        if (fit == null) {
            return Double.NaN;
        }
        double turns =
                Math.min(trade.of(TradeValueCode.HOLD_TURNS), Math.floor(phases.holdLength() / turn.length() + 1e-6));
        return net.mean(phases.holdEnd() - turns * turn.length(), phases.holdEnd());
    }

    /** Mean force over whole turns before the brake is applied. */
    double rolling() {
        return rolling;
    }

    /** Force that counts as zero braking: the rolling force, or the reported drag where the trace has none. */
    double base() {
        return base;
    }

    /** Net force: what the brake adds. */
    Signal net() {
        return net;
    }

    /** Net force without its noise. */
    Signal smooth() {
        return smooth;
    }

    /** Net force without its noise and without its swing. */
    Signal even() {
        return even;
    }

    private boolean swings(TurnFit turns) {
        return hold > 0 && turns.range() > 4 * turns.amplitudeError() && turns.range() > LEAST_SWING * hold;
    }

    @Nullable
    TurnFit fit() {
        return fit;
    }

    /** Mean net force over the last whole turns of the hold. */
    double hold() {
        return hold;
    }

    /** Standard error of the held force by its noise. */
    double holdError() {
        return fit == null ? Double.NaN : fit.meanError();
    }

    /** Highest force, without what noise adds to it. */
    double peak() {
        double from = phases.isApplied() ? phases.start() : 0;
        double to = phases.isReleased() ? phases.releaseStart() : phases.end();
        if (!force.seen(from, to)) {
            return Double.NaN;
        }
        if (span == 0 || fit == null) {
            return force.smoothed(span).highest(0, force.end());
        }
        double inHold = Math.max(fit.highest(), fit.mean() + fit.crest());
        double before = smooth.highest(0, fit.from());
        double after = smooth.highest(fit.to(), smooth.end());
        double beyond = inHold + BEYOND_NOISE * fit.residual() * Math.sqrt(net.step() / span);
        double elsewhere = Math.max(before, after);
        return base + (elsewhere > beyond ? elsewhere : inHold);
    }

    double rawPeak() {
        return force.highest(0, force.end());
    }

    /** Swing within a turn over the highest force. */
    double swing() {
        if (fit == null || !hasTurns() || base + fit.mean() <= 0) {
            return Double.NaN;
        }
        return fit.swingOfLastTurn(base);
    }

    /** Amplitude of a harmonic over the held net force. */
    double harmonic(int number) {
        return fit == null || !hasTurns() || !isTimeable() ? Double.NaN : fit.amplitude(number) / hold;
    }

    boolean hasTurns() {
        return phases.holdLength() >= (trade.of(TradeValueCode.HOLD_TURNS) - 1e-6) * turn.length();
    }

    private boolean isTimeable() {
        return !Double.isNaN(hold) && hold > BEYOND_ERROR * holdError() + 1e-6;
    }

    /** Time from the first movement of the pedal to a tenth of the own held force. */
    double onset() {
        if (!isTimeable()) {
            return Double.NaN;
        }
        double half = even().risesTo(hold / 2, phases.start(), phases.holdEnd());
        double reached = Double.isNaN(half) ? half : smooth.lastAtOrBelow(ONSET_SHARE * hold, phases.start(), half);
        return seenTime(phases.start(), reached);
    }

    /** Time to nine tenths. */
    double riseTime() {
        return isTimeable()
                ? seenTime(phases.start(), smooth.risesTo(RISE_SHARE * hold, phases.start(), phases.holdEnd()))
                : Double.NaN;
    }

    private double seenTime(double from, double reached) {
        return Double.isNaN(reached) || !force.seen(from, reached) ? Double.NaN : reached - from;
    }

    /** Time from the release of the pedal down to a tenth; the time recorded where it stays above. */
    double releaseTime() {
        if (!isTimeable() || !phases.isReleased()) {
            return Double.NaN;
        }
        double fallen = fallen();
        if (!Double.isNaN(fallen)) {
            return seenTime(phases.releaseStart(), fallen);
        }
        double recorded = phases.end() - phases.releaseStart();
        return recorded >= trade.of(TradeValueCode.RESIDUAL_DELAY) ? recorded : Double.NaN;
    }

    /** Whether the record ends before the force has fallen to a tenth. */
    boolean hangsOn() {
        return isTimeable() && phases.isReleased() && Double.isNaN(fallen());
    }

    private double fallen() {
        return smooth.fallsTo(ONSET_SHARE * hold, phases.releaseStart(), phases.end());
    }

    /** Net force some time after the release. */
    double residual(double releaseEnd) {
        double time = releaseEnd + trade.of(TradeValueCode.RESIDUAL_DELAY);
        double half = span / 2;
        return Double.isNaN(time) || Double.isNaN(rolling) || time + half > phases.end() || !force.seen(time, time)
                ? Double.NaN
                : smooth.at(time);
    }

    /** Mean net force over the last turn of the record, once the brake has been off for a while. */
    double after(double releaseEnd) {
        double from = Math.max(releaseEnd + trade.of(TradeValueCode.RESIDUAL_DELAY) / 2, phases.end() - turn.length());
        return Double.isNaN(releaseEnd) || Double.isNaN(rolling) || phases.end() - from < turn.length() / 2
                ? Double.NaN
                : net.mean(from, phases.end());
    }

    /** Share of the residual that is gone in the rest of the record, stated per second. */
    double residualDecay(double releaseEnd) {
        double first = residual(releaseEnd);
        double from = releaseEnd + trade.of(TradeValueCode.RESIDUAL_DELAY);
        double last = phases.end() - span / 2;
        if (Double.isNaN(first) || last - from < 0.5 || first <= trade.of(TradeValueCode.ZERO_DRIFT_FORCE)) {
            return Double.NaN;
        }
        return (first - smooth.at(last)) / first / (last - from);
    }

    /** Fall of the held force over the span of the definition, in parts of it; negative where it still rises. */
    double decay() {
        if (fit == null || !hasTurns() || !isTimeable()) {
            return Double.NaN;
        }
        return -fit.slope() * trade.of(TradeValueCode.DECAY_SPAN) / hold;
    }

    /** Width, to either side, of what slow change and swing leave of the held force, in parts of it. */
    double scatter() {
        if (fit == null || !hasTurns() || hold <= 0) {
            return Double.NaN;
        }
        return 2 * fit.residual() / hold;
    }

    /** Standard deviation of the noise that smoothing leaves. */
    double noiseLeft() {
        double noise = force.noise();
        return span <= force.step() ? noise : noise * Math.sqrt(force.step() / span);
    }

    double span() {
        return span;
    }
}
