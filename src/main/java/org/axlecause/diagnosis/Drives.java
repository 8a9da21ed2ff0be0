package org.axlecause.diagnosis;

import java.util.Locale;

/** Kind of braking that a check needs; none of them is safe on brakes that may fail. */
public enum Drives {
    ROLLER,
    HOLD,
    ROAD;

    /** The word in the files. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
