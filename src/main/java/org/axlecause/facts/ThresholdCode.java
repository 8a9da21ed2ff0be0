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
    RETEST_PARKING_EFFICIENCY;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
