package org.axlecause.diagnosis;

import java.util.Locale;
import org.axlecause.facts.Place;

/** Kind of place that a cause, a symptom, a finding or a check belongs to. */
public enum Level {
    WHEEL,
    AXLE,
    CIRCUIT,
    VEHICLE;

    static Level of(Place place) {
        if (place.isWheel()) {
            return WHEEL;
        }
        if (place.axle() != null) {
            return AXLE;
        }
        return place.circuit() != null ? CIRCUIT : VEHICLE;
    }

    /** The word in the files. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
