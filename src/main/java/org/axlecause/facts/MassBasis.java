package org.axlecause.facts;

/** Mass to which a regime relates the brake forces. */
public enum MassBasis {
    /** Maximum authorised mass. */
    MAXIMUM_MASS,
    /** Mass that the inspection relates to, as the tester or the data show it. */
    TEST_MASS,
    /** Unladen mass with what the regime adds to it. */
    UNLADEN_MASS,
    /** Unladen mass with a mass for each passenger seat. */
    UNLADEN_MASS_AND_SEATS,
    /** Sum of the axle loads weighed during the test. */
    AXLE_LOADS;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
