package org.axlecause.facts;

/** Clause that a policy may set. */
public enum ClauseCode {
    TWIN_HYDRAULIC_PART,
    HARDWARE_KIT_WITH_SHOES,
    CONTAMINATED_DRUM,
    FLUID_RENEWAL,
    IMBALANCE_TARGET,
    LINING_RENEWAL_THICKNESS,
    PAD_RENEWAL_THICKNESS,
    TWIN_PARKING_CABLE,
    TWIN_BRAKE_PIPE;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
