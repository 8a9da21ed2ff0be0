package org.axlecause.facts;

/** Whose limit it is. */
public enum LimitStanding {
    REGIME,
    WORKSHOP,
    POLICY;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
