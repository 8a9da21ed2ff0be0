package org.axlecause.facts;

/** What was decided about a scope line. */
public enum Decision {
    AGREED,
    REFUSED,
    LATER;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
