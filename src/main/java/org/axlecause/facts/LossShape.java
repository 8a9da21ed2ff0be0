package org.axlecause.facts;

/** How the missing force behaves over effort. */
public enum LossShape {
    PROPORTIONAL,
    OFFSET,
    CAPPED,
    LATE,
    EXTRA,
    CYCLIC,
    UNDECIDED;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
