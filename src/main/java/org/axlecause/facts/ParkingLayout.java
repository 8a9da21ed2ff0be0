package org.axlecause.facts;

/** How the parking brake of an axle works. */
public enum ParkingLayout {
    CABLE_ON_SERVICE_SHOES,
    CABLE_ON_CALLIPER,
    ELECTRIC_ON_CALLIPER,
    SHOES_IN_DISC,
    TRANSMISSION,
    NONE;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
