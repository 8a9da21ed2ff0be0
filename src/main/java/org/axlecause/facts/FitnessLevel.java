package org.axlecause.facts;

/** Advice on use of the vehicle, mildest last to first by harm. */
public enum FitnessLevel {
    NOT_ESTABLISHED,
    NO_RESTRICTION_FOUND,
    REPAIR_PLANNED,
    REPAIR_BEFORE_USE,
    DO_NOT_DRIVE;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
