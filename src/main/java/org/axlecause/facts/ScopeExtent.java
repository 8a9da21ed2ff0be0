package org.axlecause.facts;

/** How far a scope line reaches. */
public enum ScopeExtent {
    WHEEL,
    AXLE,
    CIRCUIT,
    VEHICLE;

    /** How far work at a place reaches. */
    public static ScopeExtent of(Place place) {
        if (place.circuit() != null) {
            return CIRCUIT;
        }
        if (place.axle() == null) {
            return VEHICLE;
        }
        return place.side() == null ? AXLE : WHEEL;
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
