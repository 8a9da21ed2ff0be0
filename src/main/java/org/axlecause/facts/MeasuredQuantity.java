package org.axlecause.facts;

/** Quantity that a finding may carry. */
public enum MeasuredQuantity {
    LINING_THICKNESS,
    PAD_THICKNESS,
    DRUM_DIAMETER,
    DRUM_OVALITY,
    DRUM_ECCENTRICITY,
    DISC_THICKNESS,
    DISC_THICKNESS_VARIATION,
    DISC_RUN_OUT,
    FLUID_BOILING_POINT,
    FLUID_WATER_CONTENT,
    LEVER_TRAVEL,
    CYLINDER_BORE,
    HUB_PLAY,
    PEDAL_RESERVE;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
