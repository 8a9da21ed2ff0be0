package org.axlecause.facts;

/** Driven axles. */
public enum Drive {
    FRONT,
    REAR,
    ALL;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
