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
            FigureKind.STEEPNESS,
            FigureKind.DECAY_WHILE_HELD,
            FigureKind.SCATTER);

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
        if (wheel != null && wheel.peak() != null && Boolean.TRUE.equals(wheel.locked())) {
            force(FigureKind.SLIP_FORCE, place, wheel.peak(), tester, sheet);
        }
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
            Place place = Place.ofWheel(axle.number(), side);
            BigDecimal slip = sheet.valueOf(FigureKind.SLIP_FORCE, place);
            if (slip != null && slip.doubleValue() < trade.of(TradeValueCode.LOCK_ON_LIGHT_LOAD_SHARE) * wheelLoad) {
                sheet.doubt(
                        DoubtCode.LOCKED_ON_LIGHT_LOAD,
                        place,
                        String.format(
                                Locale.ROOT,
                                "locked at %.0f N, %.0f %% of about %.0f N wheel load: the reading shows the grip, not"
                                        + " the brake; load the axle or read before slip",
                                slip.doubleValue(),
                                100 * slip.doubleValue() / wheelLoad,
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
        WheelReading one = axle.left();
        WheelReading other = axle.right();
        Place place = Place.ofAxle(axle.number());
        if (one == null || other == null || (one.fluctuation() == null && other.fluctuation() == null)) {
            double ofPeaks = Math.abs(imbalance(left.doubleValue(), right.doubleValue()));
            if (ofPeaks >= trade.of(TradeValueCode.IMBALANCE_WORTH_NOTING)
                    && ofPeaks <= trade.of(TradeValueCode.IMBALANCE_BY_SWING_ALONE)) {
                sheet.doubt(
                        DoubtCode.SWING_HIDDEN_BY_PEAK,
                        place,
                        String.format(
                                Locale.ROOT,
                                "the peaks differ by %.0f %% and no swing was recorded: a swing within the turn of one"
                                        + " wheel alone can make as much; record the swing or a trace",
                                100 * ofPeaks));
            }
            return;
        }
        hiddenSwing(
                place,
                Swinging.of(left, swingOf(one)),
                Swinging.of(right, swingOf(other)),
                "a trace or by the mean at a steady pedal",
                trade,
                sheet);
    }

    /**
     * A wheel whose force swings.
     *
     * @param peak highest force
     * @param mean mean force
     * @param swing swing within a turn over the highest force
     */
    record Swinging(double peak, double mean, double swing) {

        private static Swinging of(BigDecimal peak, double swing) {
            return new Swinging(peak.doubleValue(), peak.doubleValue() * (1 - swing / 2), swing);
        }
    }

    /**
     * Says where a swing makes the peaks differ otherwise than the forces do.
     *
     * @param instead what tells more than the peaks
     */
    static void hiddenSwing(
            Place axle, Swinging left, Swinging right, String instead, TradeValues trade, FigureSheet sheet) {
        if (!(Math.max(left.swing(), right.swing()) >= trade.of(TradeValueCode.SWING_WORTH_NOTING))) {
            return;
        }
        double ofPeaks = imbalance(left.peak(), right.peak());
        double ofMeans = imbalance(left.mean(), right.mean());
        if (Math.abs(ofPeaks - ofMeans) < trade.of(TradeValueCode.SWING_SHIFT_OF_IMBALANCE)
                || Math.max(Math.abs(ofPeaks), Math.abs(ofMeans)) < trade.of(TradeValueCode.IMBALANCE_WORTH_NOTING)) {
            return;
        }
        sheet.doubt(
                DoubtCode.SWING_HIDDEN_BY_PEAK,
                axle,
                String.format(
                        Locale.ROOT,
                        "the wheels swing by %.0f %% and %.0f %% of their highest force within a turn; the peaks differ"
                                + " by %.0f %%, the mean forces by about %.0f %%: judge by %s",
                        100 * left.swing(),
                        100 * right.swing(),
                        100 * Math.abs(ofPeaks),
                        100 * Math.abs(ofMeans),
                        instead));
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
