package org.axlecause.facts;

/** How the hydraulic circuits divide the wheels. */
public enum CircuitSplit {
    FRONT_REAR,
    DIAGONAL,
    SINGLE;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
