package org.axlecause.facts;

import java.util.stream.Stream;

/** How far a scope line reaches. */
public enum ScopeExtent {
    WHEEL("at the wheel"),
    AXLE("at both wheels of the axle"),
    CIRCUIT("in the circuit"),
    VEHICLE("for the whole vehicle");

    private final String words;

    ScopeExtent(String words) {
        this.words = words;
    }

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

    /** How far that is, in words; a code that is none reaches the whole vehicle. */
    public static String words(String code) {
        return Stream.of(values())
                .filter(extent -> extent.toString().equals(code))
                .findFirst()
                .orElse(VEHICLE)
                .words;
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
