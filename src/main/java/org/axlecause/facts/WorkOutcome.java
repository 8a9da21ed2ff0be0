package org.axlecause.facts;

/** How a reported step ended. */
public enum WorkOutcome {
    DONE,
    NOT_POSSIBLE,
    NOT_NEEDED;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
