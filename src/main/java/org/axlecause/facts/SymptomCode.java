package org.axlecause.facts;

/** What a test, the pedal or the driver shows of a fault. */
public enum SymptomCode {
    ONE_WHEEL_LOW,
    AXLE_LOW,
    DIAGONAL_LOW,
    FRONT_AXLE_LOW,
    REAR_AXLE_LOW,
    ALL_WHEELS_LOW,
    DRAG_ONE_WHEEL,
    DRAG_AXLE,
    DRAG_ALL,
    FORCE_SWING_ONE_WHEEL,
    FORCE_SWING_AXLE,
    SLOW_RISE_ONE_WHEEL,
    SLOW_RISE_AXLE,
    SLOW_RELEASE_ONE_WHEEL,
    SLOW_RELEASE_AXLE,
    RESIDUAL_DECAYING,
    GRAB_ONE_WHEEL,
    EARLY_LOCK,
    PARKING_ONE_SIDE_LOW,
    PARKING_BOTH_LOW,
    PARKING_STAYS_ON,
    LOW_EFFORT_IMBALANCE,
    HIGH_EFFORT_IMBALANCE,
    WIDE_HYSTERESIS,
    NO_FORCE_AT_WHEEL,
    HIGH_THRESHOLD,
    FORCE_DECAYS_WHILE_HELD,
    IRREGULAR_FORCE,
    PEDAL_LONG,
    PEDAL_SPONGY,
    PEDAL_SINKING,
    PEDAL_HARD,
    PEDAL_PULSATING,
    FLUID_LOW,
    WARNING_LAMP_LIT,
    PROPORTIONAL_LOSS,
    TEST_NOT_REPEATABLE,
    FORCE_RECOVERS_WARM,
    DRAG_GROWS,
    SWING_CLEARS,
    GRIP_RETURNS;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
