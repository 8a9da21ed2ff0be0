package org.axlecause.facts;

/** How far a scope line reaches. */
public enum ScopeExtent {
    WHEEL,
    AXLE,
    CIRCUIT,
    VEHICLE;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
