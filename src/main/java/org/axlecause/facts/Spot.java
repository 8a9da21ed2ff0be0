package org.axlecause.facts;

/** Part of a wheel brake or height on the vehicle that a place may name. */
public enum Spot {
    LEADING,
    TRAILING,
    PRIMARY,
    SECONDARY,
    INNER,
    OUTER,
    UPPER,
    LOWER;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
