package org.axlecause.facts;

/** Kind of gearbox. */
public enum Gearbox {
    MANUAL,
    AUTOMATIC;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
