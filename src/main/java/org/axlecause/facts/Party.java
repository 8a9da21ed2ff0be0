package org.axlecause.facts;

/** Who decided. */
public enum Party {
    CUSTOMER,
    WORKSHOP;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
