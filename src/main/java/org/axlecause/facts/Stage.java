package org.axlecause.facts;

/** When a test was driven. */
public enum Stage {
    ARRIVAL,
    DIAGNOSTIC,
    FINAL;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
