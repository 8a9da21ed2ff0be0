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

    /** How far that is, in words; a code that is none reaches the whole vehicle. */
    public static String words(String code) {
        return switch (code) {
            case "wheel" -> "at the wheel";
            case "axle" -> "at both wheels of the axle";
            case "circuit" -> "in the circuit";
            default -> "for the whole vehicle";
        };
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
