package org.axlecause.facts;

/** How settled a cause is. */
public enum CauseStanding {
    CONFIRMED,
    SUSPECTED,
    RULED_OUT;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
