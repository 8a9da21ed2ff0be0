package org.axlecause.facts;

/** Circumstance reported with a test that may make it doubtful. */
public enum TestCondition {
    TYRE_WET,
    TYRE_UNDER_INFLATED,
    TYRE_DAMAGED,
    TYRES_UNEQUAL,
    ROLLERS_WET,
    ROLLERS_WORN,
    NOT_CENTRED,
    ENGINE_NOT_IDLING,
    GEARBOX_IN_PARK,
    PERMANENTLY_ENGAGED_DRIVE,
    LOAD_SHIFTED,
    PARKING_BRAKE_LEFT_ON,
    REGENERATIVE_BRAKING_ACTIVE,
    BRAKES_COLD,
    STOOD_FOR_LONG,
    TYRE_STUDDED,
    ROLLERS_DIRTY,
    ROLLER_SPEEDS_DIFFER,
    LIMITED_SLIP_DIFFERENTIAL,
    SERVO_ONLY_WHEN_MOVING;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
