package org.axlecause.facts;

/** Whether a line must, should or may be done. */
public enum Necessity {
    REQUIRED,
    RECOMMENDED,
    OPTIONAL;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
