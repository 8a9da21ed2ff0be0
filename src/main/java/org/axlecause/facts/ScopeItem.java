package org.axlecause.facts;

/** Part or job that a scope line is about. */
public enum ScopeItem {
    SHOE_SET,
    WHEEL_CYLINDER,
    DRUM,
    HARDWARE_KIT,
    PAD_SET,
    DISC,
    CALLIPER,
    SLIDE_PIN_KIT,
    FLEXIBLE_HOSE,
    BRAKE_PIPE,
    BRAKE_FLUID,
    BLEED_NIPPLE,
    PARKING_CABLE,
    HUB_SEAL,
    HUB_BEARING,
    ADJUSTER,
    PARKING_BRAKE,
    HYDRAULIC_SYSTEM,
    ROLLER_TEST,
    PIPE_NUT,
    MASTER_CYLINDER,
    SERVO,
    LOAD_SENSING_VALVE,
    BACK_PLATE,
    WHEEL_BOLT,
    PARKING_EQUALISER,
    PARKING_ACTUATOR,
    PARKING_SHOE_SET,
    ANTILOCK_MODULATOR,
    HUB_FACE,
    PEDAL_LINKAGE,
    ANTILOCK_SENSOR,
    CALLIPER_CARRIER;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
