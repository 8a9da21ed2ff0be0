package org.axlecause.measurement;

import java.math.BigDecimal;
import java.util.Locale;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.Place;
import org.axlecause.facts.Samples;
import org.axlecause.facts.Side;
import org.axlecause.facts.Tester;
import org.axlecause.facts.Trace;
import org.hipparchus.stat.regression.SimpleRegression;
import org.jspecify.annotations.Nullable;

/** What is wrong with a trace: named, so that nothing is guessed over it. */
final class TraceDoubts {

    /** Longest stretch of one and the same highest value, seconds, that a noisy force can show by chance. */
    private static final double FLAT = 0.2;

    private static final double AT_THE_END = 0.999;
    private static final double BEYOND_ERROR = 5;

    private final AxleTrace trace;
    private final @Nullable Tester tester;
    private final TradeValues trade;
    private final FigureSheet sheet;
    private final Place axle;

    TraceDoubts(AxleTrace trace, @Nullable Tester tester, FigureSheet sheet) {
        this.trace = trace;
        this.tester = tester;
        this.trade = trace.trade();
        this.sheet = sheet;
        this.axle = Place.ofAxle(trace.axle().number());
    }

    /** A trace that is too short to be taken apart at all. */
    static void tooFewSamples(AxleReading axle, FigureSheet sheet) {
        Trace trace = axle.trace();
        if (trace != null) {
            sheet.doubt(
                    DoubtCode.TOO_SHORT,
                    Place.ofAxle(axle.number()),
                    "%d samples are too few to find rolling, rise and hold in".formatted(AxleTrace.sampleCount(trace)));
        }
    }

    /** Both channels hold the same samples: one of them is not what it says. */
    boolean identical() {
        Trace raw = trace.trace();
        if (!raw.left().equals(raw.right())) {
            return false;
        }
        sheet.doubt(
                DoubtCode.IDENTICAL_CHANNELS,
                axle,
                "both channels hold the very same samples: one wheel was recorded twice, so the axle can't be compared;"
                        + " repeat the test");
        return true;
    }

    void gaps() {
        for (Side side : Side.values()) {
            Samples samples = samples(side);
            int missing = 0;
            double first = Double.NaN;
            for (int i = 0; i < samples.size(); i++) {
                if (Double.isNaN(samples.at(i))) {
                    missing++;
                    first = Double.isNaN(first) ? i * period() : first;
                }
            }
            if (missing > 0) {
                sheet.doubt(
                        DoubtCode.GAP,
                        wheel(side),
                        String.format(
                                Locale.ROOT,
                                "%d of %d samples are missing, the first at %.2f s: what falls into the gaps is not"
                                        + " made up",
                                missing,
                                samples.size(),
                                first));
            }
        }
    }

    /** Whether the channel stands at one highest value where it must not. */
    boolean clipped(Side side) {
        Samples samples = samples(side);
        double highest = highest(samples);
        double flat = longestFlat(samples, highest) * period();
        BigDecimal range = tester == null ? null : tester.range();
        boolean atRange = range != null && highest >= AT_THE_END * range.doubleValue();
        boolean noiseEndsThere = flat >= FLAT && isNoisyElsewhere(side, highest);
        boolean bothAtOne = flat >= FLAT
                && highest > 0
                && highest == highest(samples(LossShapes.opposite(side)))
                && longestFlat(samples(LossShapes.opposite(side)), highest) * period() >= FLAT;
        if (!atRange && !noiseEndsThere && !bothAtOne) {
            return false;
        }
        sheet.doubt(
                DoubtCode.CLIPPED,
                wheel(side),
                String.format(
                        Locale.ROOT,
                        "the force is cut off at %.0f N%s: the true peak is higher",
                        highest,
                        atRange ? ", the end of the tester's range" : ""));
        return true;
    }

    private boolean isNoisyElsewhere(Side side, double highest) {
        double step = resolution();
        int changes = 0;
        int all = 0;
        Samples samples = samples(side);
        for (int i = 2; i < samples.size(); i++) {
            if (samples.at(i) < 0.95 * highest) {
                all++;
                double bend = Math.abs(samples.at(i - 2) - 2 * samples.at(i - 1) + samples.at(i));
                changes += bend > Math.max(2.5 * step, 0.002 * highest) ? 1 : 0;
            }
        }
        return all > 20 && changes > all / 2;
    }

    private double resolution() {
        BigDecimal step = tester == null ? null : tester.resolution();
        return step == null ? 0 : step.doubleValue();
    }

    private static double highest(Samples samples) {
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < samples.size(); i++) {
            highest = samples.at(i) > highest ? samples.at(i) : highest;
        }
        return highest;
    }

    private static int longestFlat(Samples samples, double level) {
        int longest = 0;
        int run = 0;
        for (int i = 0; i < samples.size(); i++) {
            run = samples.at(i) == level ? run + 1 : 0;
            longest = Math.max(longest, run);
        }
        return longest;
    }

    /** Whether the zero of a channel moves: it goes on as it drifts before the brake, or ends where no brake can. */
    boolean drifting(Side side) {
        WheelTrace wheel = trace.wheel(side);
        double limit = trade.of(TradeValueCode.ZERO_DRIFT_FORCE);
        double after = wheel.after(trace.releaseEnd());
        double foretold = driftWhileRolling(side);
        boolean below = after < -limit;
        boolean negative = wheel.rolling() < -limit || wheel.rolling() + after < -limit;
        boolean goesOn = Math.abs(foretold) > limit
                && (Double.isNaN(after) || Math.abs(after - foretold) < Math.abs(foretold) / 2);
        if (!below && !negative && !goesOn) {
            return false;
        }
        sheet.doubt(
                DoubtCode.DRIFTING_ZERO,
                wheel(side),
                negative
                        ? String.format(
                                Locale.ROOT,
                                "the force without brake is negative (%.0f N): set the tester's zero and repeat",
                                Math.min(wheel.rolling(), wheel.rolling() + after))
                        : String.format(
                                Locale.ROOT,
                                "the zero moves by about %.0f N during the test: let the tester warm up and repeat",
                                Double.isNaN(after) ? foretold : after));
        return true;
    }

    /** Drift up to the end of the record as the rolling force foretells it; 0 where that is within its error. */
    private double driftWhileRolling(Side side) {
        Phases phases = trace.phases();
        double to = phases.isApplied() ? phases.start() : phases.end();
        if (to < trace.turn().length()) {
            return 0;
        }
        double turns = Math.floor(to / trace.turn().length() + 1e-6);
        double from = to - turns * trace.turn().length();
        Signal force = trace.wheel(side).smooth();
        SimpleRegression line = new SimpleRegression();
        for (int i = force.from(from); i <= force.to(to); i++) {
            line.addData(force.time(i), force.value(i));
        }
        double slope = line.getSlope();
        double span = Math.max(force.step(), trace.wheel(side).span());
        double error = line.getSlopeStdErr() * Math.sqrt(span / force.step());
        return Math.abs(slope) > BEYOND_ERROR * error ? slope * (phases.end() - (from + to) / 2) : 0;
    }

    void hold() {
        Phases phases = trace.phases();
        if (!phases.isApplied()) {
            sheet.doubt(DoubtCode.NO_HOLD, axle, "no application of the brake is seen in the trace");
            return;
        }
        double turns = phases.holdLength() / trace.turn().length();
        if (turns < trade.of(TradeValueCode.HOLD_TURNS) - 1e-6) {
            sheet.doubt(
                    DoubtCode.NO_HOLD,
                    axle,
                    phases.isHeld()
                            ? String.format(
                                    Locale.ROOT,
                                    "steady for only %.1f turns of the wheel: hold the pedal for at least two turns",
                                    turns)
                            : "the pedal was never held steady: hold it for at least two turns of the wheel");
        }
    }

    void tooShort() {
        boolean noBase = Double.isNaN(trace.wheel(Side.LEFT).base())
                || Double.isNaN(trace.wheel(Side.RIGHT).base());
        double rolled = trace.phases().isApplied()
                ? trace.phases().start()
                : trace.phases().end();
        if (noBase && rolled < trace.turn().length()) {
            sheet.doubt(
                    DoubtCode.TOO_SHORT,
                    axle,
                    String.format(
                            Locale.ROOT,
                            "%.1f s of rolling before the brake is applied are less than a turn of the wheel (%.1f s):"
                                    + " the rolling force can't be taken off",
                            rolled,
                            trace.turn().length()));
        }
    }

    private Samples samples(Side side) {
        return side == Side.LEFT ? trace.trace().left() : trace.trace().right();
    }

    private double period() {
        return trace.trace().samplePeriod().doubleValue();
    }

    private Place wheel(Side side) {
        return Place.ofWheel(trace.axle().number(), side);
    }
}
