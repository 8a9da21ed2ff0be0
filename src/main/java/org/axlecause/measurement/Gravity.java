package org.axlecause.measurement;

/** Acceleration of gravity where no regime prescribes one. */
final class Gravity {

    /** Standard acceleration of gravity, m/s2 (3rd General Conference on Weights and Measures, 1901). */
    static final double STANDARD = 9.80665;

    private Gravity() {}
}
