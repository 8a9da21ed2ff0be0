package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * One axle of a vehicle.
 *
 * @param number counted from the front, 1 upwards
 * @param steered whether it steers
 * @param brake layout of its wheel brakes; null where unknown or unbraked
 * @param parkingBrake parking brake that acts on it
 * @param unladenLoad what it carries of the unladen mass, kilograms
 */
public record Axle(
        int number,
        boolean steered,
        @Nullable BrakeLayout brake,
        ParkingLayout parkingBrake,
        @Nullable BigDecimal unladenLoad) {

    /** An axle of which no load is known. */
    public Axle(int number, boolean steered, @Nullable BrakeLayout brake, ParkingLayout parkingBrake) {
        this(number, steered, brake, parkingBrake, null);
    }

    /** Whether its wheel brakes are drums. */
    public boolean isDrum() {
        return brake == BrakeLayout.DRUM_SIMPLEX
                || brake == BrakeLayout.DRUM_DUPLEX
                || brake == BrakeLayout.DRUM_DUO_SERVO;
    }

    /** Whether its wheel brakes are discs. */
    public boolean isDisc() {
        return brake == BrakeLayout.DISC_FLOATING || brake == BrakeLayout.DISC_FIXED;
    }
}
