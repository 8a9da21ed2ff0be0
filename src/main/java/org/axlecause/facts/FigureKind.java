package org.axlecause.facts;

/** Figure made of a test, with the UCUM code of the unit it is shown in; shares are kept as ratios and shown in percent. */
public enum FigureKind {
    PEAK("N"),
    DRAG("N"),
    FLUCTUATION("%"),
    HOLD("N"),
    IMBALANCE("%"),
    IMBALANCE_LOW("%"),
    IMBALANCE_MID("%"),
    IMBALANCE_HIGH("%"),
    PEAK_IMBALANCE("%"),
    EFFICIENCY("%"),
    ONSET("s"),
    RISE_TIME("s"),
    RELEASE_TIME("s"),
    RISE_LAG("s"),
    RELEASE_LAG("s"),
    RESIDUAL("N"),
    RESIDUAL_DECAY("%"),
    FIRST_HARMONIC("%"),
    SECOND_HARMONIC("%"),
    HYSTERESIS("%"),
    DECAY_WHILE_HELD("%"),
    PARKING_RATIO("%"),
    MEAN_FULLY_DEVELOPED_DECELERATION("m/s2"),
    STOPPING_DISTANCE("m"),
    IMBALANCE_OVER_AXLE_LOAD("%"),
    IMBALANCE_PER_AXLE_MASS("N/kg"),
    EFFORT_PER_MASS("N/kg"),
    DRAG_SHARE_OF_AXLE_LOAD("%"),
    /** Force at which the wheel locked or slipped on the rollers, as reported or as its trace shows; there only where it did. */
    SLIP_FORCE("N"),
    /** Force for each newton at the pedal in the middle of the rise. */
    STEEPNESS("N/N"),
    SCATTER("%");

    private final String unit;

    FigureKind(String unit) {
        this.unit = unit;
    }

    /** UCUM code of the unit that the figure is shown in. */
    public String unit() {
        return unit;
    }

    /** Whether a higher value of the figure is the better one. */
    public boolean isBetterHigh() {
        return switch (this) {
            case PEAK, HOLD, EFFICIENCY, EFFORT_PER_MASS, PARKING_RATIO, MEAN_FULLY_DEVELOPED_DECELERATION -> true;
            default -> false;
        };
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
