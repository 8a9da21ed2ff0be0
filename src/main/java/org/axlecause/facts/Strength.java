package org.axlecause.facts;

/** How clearly a symptom shows. */
public enum Strength {
    SLIGHT,
    CLEAR,
    STRONG;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
