package org.axlecause.measurement;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.Tester;
import org.axlecause.facts.WheelReading;
import org.jspecify.annotations.Nullable;

/** Figures of an axle of which only peaks were recorded: what is over in time can't be seen, and is said so. */
final class PeakFigures {

    /** What one wheel shows only over time. */
    static final List<FigureKind> TIMED_BY_WHEEL = List.of(
            FigureKind.HOLD,
            FigureKind.ONSET,
            FigureKind.RISE_TIME,
            FigureKind.RELEASE_TIME,
            FigureKind.RISE_LAG,
            FigureKind.RELEASE_LAG,
            FigureKind.RESIDUAL,
            FigureKind.RESIDUAL_DECAY,
            FigureKind.FIRST_HARMONIC,
            FigureKind.SECOND_HARMONIC,
            FigureKind.HYSTERESIS,
            FigureKind.DECAY_WHILE_HELD);

    /** What an axle shows only over effort. */
    static final List<FigureKind> TIMED_BY_AXLE =
            List.of(FigureKind.IMBALANCE_LOW, FigureKind.IMBALANCE_MID, FigureKind.IMBALANCE_HIGH);

    private PeakFigures() {}

    static void of(AxleReading axle, @Nullable Tester tester, TradeValues trade, FigureSheet sheet) {
        Place place = Place.ofAxle(axle.number());
        TIMED_BY_AXLE.forEach(kind -> sheet.cannotShow(kind, place));
        wheel(axle.left(), Place.ofWheel(axle.number(), Side.LEFT), tester, sheet);
        wheel(axle.right(), Place.ofWheel(axle.number(), Side.RIGHT), tester, sheet);
        peakImbalance(place, peakOf(axle.left()), peakOf(axle.right()), tester, sheet);
        hiddenSwing(axle, trade, sheet);
    }

    private static void wheel(@Nullable WheelReading wheel, Place place, @Nullable Tester tester, FigureSheet sheet) {
        TIMED_BY_WHEEL.forEach(kind -> sheet.cannotShow(kind, place));
        force(FigureKind.PEAK, place, peakOf(wheel), tester, sheet);
        force(FigureKind.DRAG, place, wheel == null ? null : wheel.drag(), tester, sheet);
        BigDecimal fluctuation = wheel == null ? null : wheel.fluctuation();
        if (fluctuation == null) {
            sheet.cannotShow(FigureKind.FLUCTUATION, place);
        } else {
            sheet.show(FigureKind.FLUCTUATION, place, fluctuation, null);
        }
    }

    static void force(
            FigureKind kind, Place place, @Nullable BigDecimal force, @Nullable Tester tester, FigureSheet sheet) {
        if (force == null) {
            sheet.cannotShow(kind, place);
            return;
        }
        ForceUncertainty uncertainty = ForceUncertainty.of(force, tester);
        sheet.show(kind, place, force, uncertainty == null ? null : Rounded.uncertainty(uncertainty.combined()));
    }

    static void peakImbalance(
            Place axle,
            @Nullable BigDecimal left,
            @Nullable BigDecimal right,
            @Nullable Tester tester,
            FigureSheet sheet) {
        if (left == null || right == null || left.max(right).signum() <= 0) {
            sheet.cannotShow(FigureKind.PEAK_IMBALANCE, axle);
            return;
        }
        BigDecimal high = left.max(right);
        BigDecimal low = left.min(right);
        BigDecimal imbalance = high.subtract(low).divide(high, MathContext.DECIMAL64);
        sheet.show(FigureKind.PEAK_IMBALANCE, axle, imbalance, ImbalanceUncertainty.of(high, low, tester));
    }

    static void lightLock(AxleReading axle, TradeValues trade, FigureSheet sheet) {
        BigDecimal load = axle.load();
        if (load == null) {
            return;
        }
        double wheelLoad = load.doubleValue() / 2 * Gravity.STANDARD;
        for (Side side : Side.values()) {
            WheelReading wheel = side == Side.LEFT ? axle.left() : axle.right();
            BigDecimal peak = peakOf(wheel);
            if (wheel != null
                    && peak != null
                    && Boolean.TRUE.equals(wheel.locked())
                    && peak.doubleValue() < trade.of(TradeValueCode.LOCK_ON_LIGHT_LOAD_SHARE) * wheelLoad) {
                sheet.doubt(
                        DoubtCode.LOCKED_ON_LIGHT_LOAD,
                        Place.ofWheel(axle.number(), side),
                        String.format(
                                Locale.ROOT,
                                "locked at %.0f N, %.0f %% of about %.0f N wheel load: the reading shows the grip, not"
                                        + " the brake; load the axle or read before slip",
                                peak.doubleValue(),
                                100 * peak.doubleValue() / wheelLoad,
                                wheelLoad));
            }
        }
    }

    private static void hiddenSwing(AxleReading axle, TradeValues trade, FigureSheet sheet) {
        BigDecimal left = peakOf(axle.left());
        BigDecimal right = peakOf(axle.right());
        if (left == null || right == null || left.max(right).signum() <= 0) {
            return;
        }
        double leftSwing = swingOf(axle.left());
        double rightSwing = swingOf(axle.right());
        if (Math.max(leftSwing, rightSwing) < trade.of(TradeValueCode.SWING_WORTH_NOTING)) {
            return;
        }
        double ofPeaks = imbalance(left.doubleValue(), right.doubleValue());
        double ofMeans =
                imbalance(left.doubleValue() * (1 - leftSwing / 2), right.doubleValue() * (1 - rightSwing / 2));
        if (Math.abs(ofPeaks - ofMeans) < trade.of(TradeValueCode.SWING_SHIFT_OF_IMBALANCE)
                || Math.max(Math.abs(ofPeaks), Math.abs(ofMeans)) < trade.of(TradeValueCode.IMBALANCE_WORTH_NOTING)) {
            return;
        }
        sheet.doubt(
                DoubtCode.SWING_HIDDEN_BY_PEAK,
                Place.ofAxle(axle.number()),
                String.format(
                        Locale.ROOT,
                        "the wheels swing by %.0f %% and %.0f %% of their highest force within a turn; the peaks differ"
                                + " by %.0f %%, the mean forces by about %.0f %%: judge by a trace or by the mean at a"
                                + " steady pedal",
                        100 * leftSwing,
                        100 * rightSwing,
                        100 * Math.abs(ofPeaks),
                        100 * Math.abs(ofMeans)));
    }

    /** Imbalance of left and right, positive where the left wheel is the weaker. */
    private static double imbalance(double left, double right) {
        double high = Math.max(left, right);
        return high <= 0 ? 0 : (right - left) / high;
    }

    private static double swingOf(@Nullable WheelReading wheel) {
        return wheel == null || wheel.fluctuation() == null
                ? 0
                : wheel.fluctuation().doubleValue();
    }

    static @Nullable BigDecimal peakOf(@Nullable WheelReading wheel) {
        return wheel == null ? null : wheel.peak();
    }
}
