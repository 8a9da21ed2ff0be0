package org.axlecause.facts;

/** How a regime states what a brake achieves. */
public enum EffortUnit {
    /** Force over weight. */
    SHARE_OF_WEIGHT,
    /** Force over mass. */
    NEWTONS_PER_KILOGRAM;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
