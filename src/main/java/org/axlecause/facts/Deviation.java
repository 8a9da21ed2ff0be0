package org.axlecause.facts;

/** How far a vehicle leaves the straight line on a road test. */
public enum Deviation {
    NONE,
    SLIGHT,
    EXCESSIVE;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
