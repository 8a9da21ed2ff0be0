package org.axlecause.facts;

/** How far a condition has gone. */
public enum Extent {
    LIGHT,
    MODERATE,
    SEVERE;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
