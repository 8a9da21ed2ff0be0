package org.axlecause.facts;

/** Circumstance of a test in which a regime does not hold a figure against the vehicle. */
public enum Circumstance {
    /** The wheel with the lower force locked. */
    LOWER_WHEEL_LOCKED,
    /** More than half of the wheels of the tested brake locked. */
    MORE_THAN_HALF_LOCKED,
    /** All wheels of the tested brake locked. */
    ALL_LOCKED,
    /** The front wheels, or all wheels, locked. */
    FRONT_AXLE_OR_ALL_LOCKED,
    /** Both wheels of the axle give no more than a stated force. */
    BOTH_WHEELS_LOW,
    /** The rollers were wet and a lower stated figure is reached. */
    WET_ROLLERS;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
