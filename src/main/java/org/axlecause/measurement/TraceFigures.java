package org.axlecause.measurement;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.Map;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.Tester;
import org.axlecause.facts.WheelReading;
import org.jspecify.annotations.Nullable;

/** Figures of an axle whose forces were recorded over time. */
final class TraceFigures {

    private static final double QUARTER = 0.25;
    private static final double HALF = 0.5;
    private static final double THREE_QUARTERS = 0.75;
    private static final String FROM_PEDAL = "from-first-pedal-movement";
    private static final String FROM_FORCE = "from-first-rise-of-force";
    private static final String AT_LEAST = "at-least-until-the-record-ends";
    private static final String FROM_RELEASE = "from-release-of-pedal";
    private static final String FROM_FALL = "from-first-fall-of-force";

    private final AxleTrace trace;
    private final @Nullable Tester tester;
    private final TradeValues trade;
    private final FigureSheet sheet;
    private final Place axle;
    private final Map<Side, Boolean> clipped = new EnumMap<>(Side.class);
    private final Map<Side, Boolean> drifting = new EnumMap<>(Side.class);
    private final Map<Side, BigDecimal> peaks = new EnumMap<>(Side.class);

    private TraceFigures(AxleTrace trace, @Nullable Tester tester, FigureSheet sheet) {
        this.trace = trace;
        this.tester = tester;
        this.trade = trace.trade();
        this.sheet = sheet;
        this.axle = Place.ofAxle(trace.axle().number());
    }

    static void of(AxleTrace trace, @Nullable Tester tester, FigureSheet sheet) {
        new TraceFigures(trace, tester, sheet).all();
    }

    private void all() {
        TraceDoubts doubts = new TraceDoubts(trace, tester, sheet);
        AgainstTrace reports = new AgainstTrace(trace, sheet);
        boolean identical = doubts.identical();
        doubts.gaps();
        doubts.hold();
        doubts.tooShort();
        for (Side side : Side.values()) {
            clipped.put(side, doubts.clipped(side));
            drifting.put(side, doubts.drifting(side));
        }
        for (Side side : Side.values()) {
            WheelReading reported =
                    side == Side.LEFT ? trace.axle().left() : trace.axle().right();
            boolean agrees = reported == null || reports.agrees(side, reported);
            wheel(side, reported == null || !agrees ? null : reported.peak());
        }
        lags(identical);
        imbalances(identical);
        if (!identical && !clipped.containsValue(true)) {
            new LossShapes(trace, sheet).find();
            new Slip(trace, tester, sheet).find();
            hiddenSwing();
        }
    }

    private void wheel(Side side, @Nullable BigDecimal agreedPeak) {
        WheelTrace wheel = trace.wheel(side);
        Place place = Place.ofWheel(trace.axle().number(), side);
        boolean whole = !isTrue(clipped, side);
        boolean zero = !isTrue(drifting, side);
        BigDecimal peak = !whole || Double.isNaN(wheel.peak())
                ? null
                : agreedPeak == null ? Rounded.force(wheel.peak()) : agreedPeak;
        if (peak != null) {
            peaks.put(side, peak);
        }
        PeakFigures.force(FigureKind.PEAK, place, peak, tester, sheet);
        force(FigureKind.DRAG, place, zero ? wheel.rolling() : Double.NaN, 0);
        force(FigureKind.HOLD, place, whole ? wheel.hold() : Double.NaN, wheel.holdError());
        force(FigureKind.RESIDUAL, place, zero ? wheel.residual(trace.releaseEnd()) : Double.NaN, wheel.noiseLeft());
        share(FigureKind.RESIDUAL_DECAY, place, zero ? wheel.residualDecay(trace.releaseEnd()) : Double.NaN, null);
        TurnFit fit = wheel.fit();
        Double swingError = fit == null || wheel.hold() <= 0 ? null : fit.amplitudeError() / wheel.hold();
        share(FigureKind.FLUCTUATION, place, whole ? wheel.swing() : Double.NaN, twice(swingError));
        boolean turns = whole && !trace.turn().ambiguous();
        share(FigureKind.FIRST_HARMONIC, place, turns ? wheel.harmonic(1) : Double.NaN, swingError);
        share(FigureKind.SECOND_HARMONIC, place, turns ? wheel.harmonic(2) : Double.NaN, swingError);
        share(FigureKind.SCATTER, place, whole ? wheel.scatter() : Double.NaN, null);
        share(FigureKind.DECAY_WHILE_HELD, place, whole ? wheel.decay() : Double.NaN, decayError(wheel));
        steepness(place, whole ? trace.steepness(side, QUARTER, THREE_QUARTERS) : Double.NaN);
        share(FigureKind.HYSTERESIS, place, whole ? hysteresis(wheel) : Double.NaN, ofTwo(wheel));
        String since = trace.phases().byPedal() ? FROM_PEDAL : FROM_FORCE;
        time(FigureKind.ONSET, place, whole ? wheel.onset() : Double.NaN, wheel, since);
        time(FigureKind.RISE_TIME, place, whole ? wheel.riseTime() : Double.NaN, wheel, since);
        String released = trace.phases().byPedal() ? FROM_RELEASE : FROM_FALL;
        time(
                FigureKind.RELEASE_TIME,
                place,
                whole ? wheel.releaseTime() : Double.NaN,
                wheel,
                wheel.hangsOn() ? AT_LEAST : released);
    }

    private void lags(boolean identical) {
        for (Side side : Side.values()) {
            WheelTrace wheel = trace.wheel(side);
            WheelTrace other = trace.wheel(LossShapes.opposite(side));
            Place place = Place.ofWheel(trace.axle().number(), side);
            boolean comparable = !identical && !clipped.containsValue(true);
            time(
                    FigureKind.RISE_LAG,
                    place,
                    comparable ? later(wheel.onset(), other.onset()) : Double.NaN,
                    wheel,
                    null);
            boolean bothHang = wheel.hangsOn() && other.hangsOn();
            time(
                    FigureKind.RELEASE_LAG,
                    place,
                    comparable && !bothHang ? later(wheel.releaseTime(), other.releaseTime()) : Double.NaN,
                    wheel,
                    wheel.hangsOn() ? AT_LEAST : null);
        }
    }

    private static double later(double own, double other) {
        return Math.max(0, own - other) + 0 * other;
    }

    private void imbalances(boolean identical) {
        EffortCurve curve = EffortCurve.of(trace, false);
        boolean comparable = !identical && !clipped.containsValue(true);
        EffortCurve.Point low = curve.at(QUARTER);
        boolean enough = low != null
                && low.higher() >= trade.of(TradeValueCode.LOW_EFFORT_FORCE)
                && !drifting.containsValue(true);
        imbalance(FigureKind.IMBALANCE_LOW, comparable && enough ? low : null);
        imbalance(FigureKind.IMBALANCE_MID, comparable ? curve.at(HALF) : null);
        imbalance(FigureKind.IMBALANCE_HIGH, comparable ? curve.at(1) : null);
        PeakFigures.peakImbalance(
                axle, identical ? null : peaks.get(Side.LEFT), identical ? null : peaks.get(Side.RIGHT), tester, sheet);
    }

    private void imbalance(FigureKind kind, EffortCurve.@Nullable Point point) {
        if (point == null || point.higher() <= 0) {
            sheet.cannotShow(kind, axle);
            return;
        }
        double low = Math.max(0, Math.min(point.left(), point.right()));
        sheet.show(
                kind,
                axle,
                Rounded.ratio(point.imbalance()),
                ImbalanceUncertainty.of(Rounded.force(point.higher()), Rounded.force(low), tester));
    }

    private void steepness(Place place, double value) {
        if (Double.isNaN(value)) {
            sheet.cannotShow(FigureKind.STEEPNESS, place);
        } else {
            sheet.show(FigureKind.STEEPNESS, place, Rounded.ratio(value), null);
        }
    }

    /** The displayed peaks are what a regime compares; where a swing makes them differ more than the forces do, that is said. */
    private void hiddenSwing() {
        BigDecimal left = peaks.get(Side.LEFT);
        BigDecimal right = peaks.get(Side.RIGHT);
        WheelTrace ofLeft = trace.wheel(Side.LEFT);
        WheelTrace ofRight = trace.wheel(Side.RIGHT);
        if (left != null && right != null && !Double.isNaN(ofLeft.hold()) && !Double.isNaN(ofRight.hold())) {
            PeakFigures.hiddenSwing(
                    axle,
                    new PeakFigures.Swinging(left.doubleValue(), ofLeft.base() + ofLeft.hold(), ofLeft.swing()),
                    new PeakFigures.Swinging(right.doubleValue(), ofRight.base() + ofRight.hold(), ofRight.swing()),
                    "the mean forces of this trace",
                    trade,
                    sheet);
        }
    }

    private double hysteresis(WheelTrace wheel) {
        double rising = trace.timeOfEffort(HALF);
        double falling = trace.timeOfEffortFalling(HALF);
        return wheel.hold() > 0
                        && wheel.net().seen(rising, rising)
                        && wheel.net().seen(falling, falling)
                ? (wheel.smooth().at(falling) - wheel.smooth().at(rising)) / wheel.hold()
                : Double.NaN;
    }

    private @Nullable Double decayError(WheelTrace wheel) {
        TurnFit fit = wheel.fit();
        return fit == null || wheel.hold() <= 0
                ? null
                : fit.slopeError() * trade.of(TradeValueCode.DECAY_SPAN) / wheel.hold();
    }

    /** Standard uncertainty, by the noise, of a difference of two forces over the held one. */
    private static @Nullable Double ofTwo(WheelTrace wheel) {
        return wheel.hold() > 0 ? Math.sqrt(2) * wheel.noiseLeft() / wheel.hold() : null;
    }

    private static @Nullable Double twice(@Nullable Double error) {
        return error == null ? null : 2 * error;
    }

    private void force(FigureKind kind, Place place, double value, double error) {
        if (Double.isNaN(value)) {
            sheet.cannotShow(kind, place);
            return;
        }
        ForceUncertainty uncertainty = ForceUncertainty.of(value, tester, Double.isNaN(error) ? 0 : error);
        sheet.show(
                kind,
                place,
                Rounded.force(value),
                uncertainty == null ? null : Rounded.uncertainty(uncertainty.combined()));
    }

    private void share(FigureKind kind, Place place, double value, @Nullable Double error) {
        if (Double.isNaN(value)) {
            sheet.cannotShow(kind, place);
        } else {
            sheet.show(kind, place, Rounded.ratio(value), error == null ? null : Rounded.uncertainty(error));
        }
    }

    private void time(FigureKind kind, Place place, double value, WheelTrace wheel, @Nullable String basis) {
        if (Double.isNaN(value)) {
            sheet.cannotShow(kind, place);
            return;
        }
        double period = trace.trace().samplePeriod().doubleValue();
        double spread = Math.max(period, wheel.span()) / Math.sqrt(12);
        sheet.show(kind, place, Rounded.time(value), Rounded.uncertainty(spread), basis);
    }

    private static boolean isTrue(Map<Side, Boolean> flags, Side side) {
        return Boolean.TRUE.equals(flags.get(side));
    }
}
