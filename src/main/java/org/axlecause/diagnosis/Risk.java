package org.axlecause.diagnosis;

import java.util.Locale;

/** Harm that a check can do to parts. */
public enum Risk {
    NONE,
    LOW,
    MEDIUM,
    HIGH;

    /** The word in the files and on the wire. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
