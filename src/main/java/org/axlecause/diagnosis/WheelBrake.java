package org.axlecause.diagnosis;

import java.util.Locale;
import org.axlecause.facts.Axle;
import org.jspecify.annotations.Nullable;

/** Kind of wheel brake that an axle has. */
public enum WheelBrake {
    DRUM,
    DISC;

    /** The kind of brake on that axle; null where it has none that is known. */
    public static @Nullable WheelBrake of(Axle axle) {
        if (axle.isDrum()) {
            return DRUM;
        }
        return axle.isDisc() ? DISC : null;
    }

    /** The word in the files. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
