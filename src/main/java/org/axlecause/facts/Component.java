package org.axlecause.facts;

/** Part of the brake that a finding, an obstacle or a check speaks about. */
public enum Component {
    WHEEL_CYLINDER,
    SHOE_LINING,
    PAD,
    DRUM,
    DISC,
    RETURN_SPRING,
    ADJUSTER,
    BACK_PLATE,
    CALLIPER,
    SLIDE_PIN,
    FLEXIBLE_HOSE,
    BRAKE_PIPE,
    PIPE_UNION,
    BLEED_NIPPLE,
    MASTER_CYLINDER,
    SERVO,
    LOAD_SENSING_VALVE,
    PEDAL,
    BRAKE_FLUID,
    PARKING_LEVER,
    PARKING_CABLE,
    SHOE_LEVER,
    ELECTRIC_PARKING_ACTUATOR,
    HUB_BEARING,
    HUB_SEAL,
    ANTILOCK_SENSOR,
    WARNING_LAMP,
    TYRE,
    HOLD_DOWN,
    WHEEL_BOLT,
    PARKING_EQUALISER,
    HUB_FLANGE,
    ANTILOCK_MODULATOR,
    TRANSMISSION;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
