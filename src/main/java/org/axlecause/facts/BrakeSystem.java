package org.axlecause.facts;

/** Brake that a test applies. */
public enum BrakeSystem {
    SERVICE,
    PARKING,
    SECONDARY;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
