package org.axlecause.fleet;

import java.util.List;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Place;

/**
 * A fault that an invented vehicle has.
 *
 * @param code what it is
 * @param places where it is: both wheels of an axle where both have it
 */
public record Fault(CauseCode code, List<Place> places) {

    public Fault {
        places = List.copyOf(places);
    }

    @Override
    public String toString() {
        return code + " at "
                + String.join(" and ", places.stream().map(Place::toString).toList());
    }
}
