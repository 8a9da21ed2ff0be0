package org.axlecause.judgement;

import org.axlecause.facts.Place;
import org.axlecause.facts.Vehicle;

/** Tells places that a vehicle has from those it has not. */
final class Places {

    private Places() {}

    static boolean known(Place place, Vehicle vehicle) {
        Integer axle = place.axle();
        return axle == null || vehicle.axle(axle) != null;
    }
}
