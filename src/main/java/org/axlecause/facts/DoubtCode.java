package org.axlecause.facts;

/** Doubt about a test. */
public enum DoubtCode {
    WET_SURFACE,
    REPORTED_CONDITION,
    FIGURE_AGAINST_TRACE,
    IDENTICAL_CHANNELS,
    CLIPPED,
    GAP,
    DRIFTING_ZERO,
    NO_HOLD,
    TOO_SHORT,
    LOCKED_ON_LIGHT_LOAD,
    SWING_HIDDEN_BY_PEAK,
    NOT_REPEATABLE,
    STOPPED_ON_SLIP;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
