package org.axlecause.facts;

/** Step of work. */
public enum StepCode {
    READ_VEHICLE_DATA,
    SECURE_AND_LIFT,
    CONTROL_DUST,
    REMOVE_DRUM,
    LOOK_OVER_AXLE,
    MATCH_PARTS,
    STRIP_SHOES,
    RENEW_WHEEL_CYLINDER,
    RENEW_HUB_SEAL,
    CLEAN_BACK_PLATE,
    FABRICATE_BRAKE_PIPE,
    RENEW_BRAKE_PIPE,
    FIT_SHOES,
    DEGREASE_DRUM,
    RENEW_DRUM,
    REMOVE_CALLIPER,
    RENEW_CALLIPER,
    FREE_SLIDE_PINS,
    FIT_PADS,
    RENEW_DISC,
    RENEW_FLEXIBLE_HOSE,
    RENEW_BLEED_NIPPLE,
    RENEW_PARKING_CABLE,
    RENEW_HUB_BEARING,
    RENEW_ADJUSTER,
    BLEED_CIRCUIT,
    SET_SHOES,
    SET_PARKING_BRAKE,
    REFIT_WHEELS,
    PUMP_PEDAL,
    BED_IN,
    FINAL_ROLLER_TEST,
    LEAK_CHECK;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
