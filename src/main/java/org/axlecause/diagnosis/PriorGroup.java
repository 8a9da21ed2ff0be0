package org.axlecause.diagnosis;

import java.util.Locale;

/** Axles whose causes have weights of their own in the cause model. */
public enum PriorGroup {
    DRUM_OLD,
    DRUM_YOUNG,
    DISC_OLD,
    DISC_YOUNG;

    static PriorGroup of(WheelBrake brake, boolean old) {
        if (brake == WheelBrake.DRUM) {
            return old ? DRUM_OLD : DRUM_YOUNG;
        }
        return old ? DISC_OLD : DISC_YOUNG;
    }

    /** The word in the files of the cause model. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
