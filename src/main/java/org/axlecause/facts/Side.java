package org.axlecause.facts;

/** Side of the vehicle, seen from the driver's seat facing forward. */
public enum Side {
    LEFT,
    RIGHT;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
