package org.axlecause.statistics;

import java.util.List;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Place;

/**
 * A case that has ended, as far as weights are learned from it.
 *
 * @param reference its reference
 * @param vehicle what tells its vehicle from others: its token, or the reference where the vehicle has none
 * @param vehicleKnown whether no other case can be of the same vehicle without saying so
 * @param causes causes that were confirmed, by code and place; none where it is undetermined
 */
record ConfirmedCase(String reference, String vehicle, boolean vehicleKnown, List<Confirmed> causes) {

    ConfirmedCase {
        causes = List.copyOf(causes);
    }

    /**
     * A cause that was confirmed.
     *
     * @param code the cause
     * @param place axle and side; the vehicle for what has no axle
     */
    record Confirmed(CauseCode code, Place place) {}

    /** Whether the cause was confirmed at that place, or at one of which it is a part. */
    boolean isConfirmed(CauseCode code, Place at) {
        return causes.stream()
                .anyMatch(confirmed ->
                        confirmed.code() == code && confirmed.place().meets(at));
    }

    /** Whether the cause was confirmed on that axle, or where it belongs to no axle. */
    boolean isConfirmedOn(CauseCode code, int axle) {
        return isConfirmed(code, Place.ofAxle(axle));
    }
}
