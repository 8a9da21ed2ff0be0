package org.axlecause.facts;

/** Deficiency against a regime or a workshop limit. */
public enum DeficiencyCode {
    SERVICE_IMBALANCE,
    SERVICE_EFFICIENCY,
    PARKING_EFFICIENCY,
    PARKING_ONE_SIDED,
    NO_EFFORT_AT_WHEEL,
    BINDING,
    FORCE_FLUCTUATION,
    ABNORMAL_LAG,
    GRABBING,
    LINING_CONTAMINATED,
    LINING_BELOW_LIMIT,
    WHEEL_CYLINDER_LEAKING,
    SECONDARY_EFFICIENCY,
    SECONDARY_IMBALANCE,
    PARKING_IMBALANCE,
    CALLIPER_LEAKING,
    FLEXIBLE_HOSE_LEAKING,
    BRAKE_PIPE_LEAKING,
    BRAKE_FLUID_LOW;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
