package org.axlecause.facts;

/** Liquid that soiled a part. */
public enum Agent {
    BRAKE_FLUID,
    GREASE,
    GEAR_OIL,
    WATER,
    UNKNOWN;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
