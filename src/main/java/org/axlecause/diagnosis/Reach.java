package org.axlecause.diagnosis;

import java.util.Locale;

/** Where an effect is, seen from the place of what causes it. */
public enum Reach {
    SAME_WHEEL,
    OTHER_WHEEL,
    EACH_WHEEL,
    CIRCUIT,
    EACH_CIRCUIT,
    CIRCUIT_WHEELS,
    AXLE,
    VEHICLE,
    SAME;

    /** Level of a state that is reached, from a place of the given level. */
    Level level(Level from) {
        return switch (this) {
            case SAME -> from;
            case SAME_WHEEL, OTHER_WHEEL, EACH_WHEEL, CIRCUIT_WHEELS -> Level.WHEEL;
            case CIRCUIT, EACH_CIRCUIT -> Level.CIRCUIT;
            case AXLE -> Level.AXLE;
            case VEHICLE -> Level.VEHICLE;
        };
    }

    /** The word in the files. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
