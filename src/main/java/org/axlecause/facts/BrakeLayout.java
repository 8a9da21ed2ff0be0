package org.axlecause.facts;

/** How the wheel brakes of an axle are built. */
public enum BrakeLayout {
    DRUM_SIMPLEX,
    DRUM_DUPLEX,
    DRUM_DUO_SERVO,
    DISC_FLOATING,
    DISC_FIXED;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
