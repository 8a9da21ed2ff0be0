package org.axlecause.diagnosis;

import org.jspecify.annotations.Nullable;

/**
 * How often a cause is behind a complaint about an axle, relative to the other causes; null where it can't be there.
 *
 * @param drumOld axle with old drum brakes
 * @param drumYoung axle with young drum brakes
 * @param discOld axle with old disc brakes
 * @param discYoung axle with young disc brakes
 */
public record Weights(
        @Nullable Double drumOld,
        @Nullable Double drumYoung,
        @Nullable Double discOld,
        @Nullable Double discYoung) {

    @Nullable
    Double of(PriorGroup group) {
        return switch (group) {
            case DRUM_OLD -> drumOld;
            case DRUM_YOUNG -> drumYoung;
            case DISC_OLD -> discOld;
            case DISC_YOUNG -> discYoung;
        };
    }
}
