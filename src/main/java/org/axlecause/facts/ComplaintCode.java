package org.axlecause.facts;

/** What the driver or the first look reports about the brakes. */
public enum ComplaintCode {
    PULLS,
    NOISE,
    LONG_PEDAL,
    SPONGY_PEDAL,
    SINKING_PEDAL,
    HARD_PEDAL,
    PULSATING_PEDAL,
    HOT_WHEEL,
    WARNING_LAMP,
    PARKING_BRAKE_WEAK,
    FLUID_LOSS;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
