package org.axlecause.measurement;

import java.util.Locale;

/** Value of the trade that the making of figures reads; SI units or ratios. */
public enum TradeValueCode {
    SWING_WORTH_NOTING,
    SWING_SHIFT_OF_IMBALANCE,
    IMBALANCE_WORTH_NOTING,
    IMBALANCE_BY_SWING_ALONE,
    LOCK_ON_LIGHT_LOAD_SHARE,
    REPEAT_SHARE,
    REPEAT_FORCE,
    LOW_EFFORT_FORCE,
    HOLD_TURNS,
    STEADY_SHARE,
    RESIDUAL_DELAY,
    ZERO_DRIFT_FORCE,
    FIGURE_AGAINST_TRACE_SHARE,
    FIGURE_AGAINST_TRACE_FORCE,
    FIGURE_AGAINST_TRACE_SWING,
    SHAPE_IMBALANCE,
    SHAPE_FIT_SHARE,
    LATE_LAG,
    LATE_HOLD_IMBALANCE,
    EXTRA_FORCE,
    CYCLIC_SWING,
    DECAY_SPAN,
    SMALLEST_TYRE_RADIUS,
    LARGEST_TYRE_RADIUS,
    USUAL_TYRE_RADIUS,
    SLOWEST_ROLLERS,
    FASTEST_ROLLERS;

    /** The code as it is written in the file. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
