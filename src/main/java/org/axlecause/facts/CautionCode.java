package org.axlecause.facts;

/** Caution that belongs before a step. */
public enum CautionCode {
    DUST,
    OLD_FRICTION_MATERIAL,
    FLUID_HANDLING,
    FLUID_CLASS,
    LIFTING,
    ROAD_TEST,
    ROLLER_BED,
    SPRING_TENSION,
    PRESSURE_BLEEDING,
    TWO_PERSON_CHECK,
    ELECTRIC_PARKING_BRAKE,
    ANTILOCK_MODULATOR,
    HIGH_VOLTAGE,
    HOT_PARTS,
    SOLVENTS,
    MACHINING,
    TORQUE_AND_LIMITS,
    AIR_SUSPENSION,
    LOCAL_LAW,
    UNMARKED_PARTS,
    RESTRAINT_WIRING;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
