package org.axlecause.facts;

/** Workshop threshold that symptom rules and targets read. */
public enum ThresholdCode {
    ONE_WHEEL_LOW_IMBALANCE,
    AXLE_LOW_SHARE,
    DRAG_FORCE,
    DRAG_SHARE_OF_LOAD,
    DRAG_RATIO,
    DRAG_RATIO_FORCE,
    FLUCTUATION,
    FLUCTUATION_FAULT,
    LAG,
    RELEASE_TIME,
    RESIDUAL,
    PARKING_IMBALANCE,
    LOW_EFFORT_IMBALANCE_LOW,
    LOW_EFFORT_IMBALANCE_HIGH,
    HIGH_EFFORT_IMBALANCE_LOW,
    HIGH_EFFORT_IMBALANCE_HIGH,
    NO_FORCE_SHARE,
    RETEST_IMBALANCE,
    RETEST_LAG,
    RETEST_DRAG,
    RETEST_FLUCTUATION,
    RETEST_FLUCTUATION_DISC,
    RETEST_RELEASE_TIME,
    RETEST_PARKING_IMBALANCE,
    RETEST_PARKING_EFFICIENCY,
    ONE_WHEEL_LOW_CLEAR,
    ONE_WHEEL_LOW_STRONG,
    AXLE_LOW_EFFICIENCY,
    VEHICLE_LOW_EFFICIENCY,
    BALANCED_IMBALANCE,
    RISE_RATIO,
    HYSTERESIS,
    DECAY_WHILE_HELD,
    PARKING_LOW_EFFICIENCY,
    RECENT_WORK_DISTANCE,
    LINING_THICKNESS_LEAST,
    PAD_THICKNESS_LEAST,
    DRUM_OVALITY_MOST,
    DRUM_ECCENTRICITY_MOST,
    DISC_THICKNESS_VARIATION_MOST,
    DISC_RUN_OUT_MOST,
    FLUID_BOILING_POINT_LEAST,
    FLUID_WATER_CONTENT_MOST,
    HUB_PLAY_MOST,
    PEDAL_RESERVE_LEAST,
    TOO_CLOSE_RISK,
    GRAB_STEEPNESS_RATIO,
    GRAB_LOCK_SHARE,
    GRAB_ABOVE_EXPECTED,
    SCATTER,
    RISE_TIME,
    WARM_RECOVERY,
    DRAG_GROWTH,
    SWING_CLEARANCE,
    WARM_RECOVERY_FORCE,
    IMBALANCE_CLEARANCE,
    WHEEL_GAIN;

    /** Whether it is an aim of the re-test, which final figures alone are held against. */
    public boolean isAim() {
        return switch (this) {
            case RETEST_IMBALANCE,
                    RETEST_LAG,
                    RETEST_DRAG,
                    RETEST_FLUCTUATION,
                    RETEST_FLUCTUATION_DISC,
                    RETEST_RELEASE_TIME,
                    RETEST_PARKING_IMBALANCE,
                    RETEST_PARKING_EFFICIENCY -> true;
            default -> false;
        };
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
