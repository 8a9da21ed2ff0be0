package org.axlecause.facts;

/** On which side of its value a limit refuses. */
public enum Bound {
    MAXIMUM,
    MINIMUM;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
