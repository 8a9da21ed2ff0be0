package org.axlecause.facts;

/** Cause of a braking fault. */
public enum CauseCode {
    WHEEL_CYLINDER_LEAKING,
    WHEEL_CYLINDER_PISTON_STUCK,
    WHEEL_CYLINDER_PISTONS_TIGHT,
    HUB_SEAL_LEAKING,
    LINING_SOAKED_EARLIER,
    LINING_GLAZED,
    LINING_WORN_OUT,
    ADJUSTER_NOT_TAKEN_UP,
    DRUM_OVAL,
    DRUM_ECCENTRIC,
    PARKING_CABLE_SEIZED,
    CALLIPER_PISTON_SEIZED,
    SLIDE_PINS_SEIZED,
    HOSE_RESTRICTED,
    AIR_IN_CIRCUIT,
    BRAKE_PIPE_CORRODED,
    TEST_NOT_VALID;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
