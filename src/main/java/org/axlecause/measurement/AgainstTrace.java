package org.axlecause.measurement;

import java.math.BigDecimal;
import java.util.Locale;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.WheelReading;
import org.jspecify.annotations.Nullable;

/** Reported figures of a test beside its own trace. */
final class AgainstTrace {

    private final AxleTrace trace;
    private final TradeValues trade;
    private final FigureSheet sheet;

    AgainstTrace(AxleTrace trace, FigureSheet sheet) {
        this.trace = trace;
        this.trade = trace.trade();
        this.sheet = sheet;
    }

    /** Whether a reported peak agrees with its trace. */
    boolean agrees(Side side, WheelReading reported) {
        WheelTrace wheel = trace.wheel(side);
        boolean peak =
                agreesForce(side, "peak", reported.peak(), wheel.peak(), Math.max(wheel.peak(), wheel.rawPeak()));
        agreesForce(side, "drag", reported.drag(), wheel.rolling(), wheel.rolling());
        BigDecimal swing = reported.fluctuation();
        if (swing != null
                && !Double.isNaN(wheel.swing())
                && Math.abs(swing.doubleValue() - wheel.swing())
                        > trade.of(TradeValueCode.FIGURE_AGAINST_TRACE_SWING)) {
            sheet.doubt(
                    DoubtCode.FIGURE_AGAINST_TRACE,
                    wheel(side),
                    String.format(
                            Locale.ROOT,
                            "reported swing %.0f %%, trace %.0f %% while held",
                            100 * swing.doubleValue(),
                            100 * wheel.swing()));
        }
        return peak;
    }

    private boolean agreesForce(Side side, String what, @Nullable BigDecimal reported, double lowest, double highest) {
        if (reported == null || Double.isNaN(lowest)) {
            return true;
        }
        double value = reported.doubleValue();
        double distance = Math.max(
                trade.of(TradeValueCode.FIGURE_AGAINST_TRACE_FORCE),
                trade.of(TradeValueCode.FIGURE_AGAINST_TRACE_SHARE) * Math.abs(value));
        if (value >= lowest - distance && value <= highest + distance) {
            return true;
        }
        sheet.doubt(
                DoubtCode.FIGURE_AGAINST_TRACE,
                wheel(side),
                String.format(Locale.ROOT, "reported %s %.0f N, trace %.0f N", what, value, lowest));
        return false;
    }

    private Place wheel(Side side) {
        return Place.ofWheel(trace.axle().number(), side);
    }
}
