package org.axlecause.facts;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The presented vehicle; masses in kilograms, odometer in metres.
 *
 * @param category category of the UN consolidated resolution R.E.3, such as M1 or N1
 * @param make maker as the sender writes it
 * @param model model as the sender writes it
 * @param firstUsed day of first use
 * @param firstRegistered day of first registration
 * @param typeApproved day of type approval
 * @param odometer distance covered, metres
 * @param maximumMass maximum authorised mass, kilograms
 * @param unladenMass unladen mass, kilograms
 * @param testMass mass as tested, kilograms
 * @param seats seats including the driver's
 * @param drive driven axles
 * @param gearbox kind of gearbox
 * @param regenerative whether the drive brakes regeneratively
 * @param airSuspension whether the vehicle has air suspension
 * @param circuitSplit division of the hydraulic circuits
 * @param antilock whether an anti-lock system is fitted
 * @param serviceFluid DOT class of the brake fluid
 * @param axles axles from the front
 * @param identity random token that stands for registration, VIN and names
 * @param combinationMass maximum authorised mass of the vehicle with its trailer, kilograms
 * @param trailer kind of trailer; null for a motor vehicle
 */
public record Vehicle(
        String category,
        @Nullable String make,
        @Nullable String model,
        @Nullable LocalDate firstUsed,
        @Nullable LocalDate firstRegistered,
        @Nullable LocalDate typeApproved,
        @Nullable BigDecimal odometer,
        @Nullable BigDecimal maximumMass,
        @Nullable BigDecimal unladenMass,
        @Nullable BigDecimal testMass,
        @Nullable Integer seats,
        @Nullable Drive drive,
        @Nullable Gearbox gearbox,
        @Nullable Boolean regenerative,
        @Nullable Boolean airSuspension,
        @Nullable CircuitSplit circuitSplit,
        @Nullable Boolean antilock,
        @Nullable String serviceFluid,
        List<Axle> axles,
        @Nullable String identity,
        @Nullable BigDecimal combinationMass,
        @Nullable TrailerKind trailer) {

    public Vehicle {
        axles = List.copyOf(axles);
    }

    /** A vehicle without a trailer's data. */
    public Vehicle(
            String category,
            @Nullable String make,
            @Nullable String model,
            @Nullable LocalDate firstUsed,
            @Nullable LocalDate firstRegistered,
            @Nullable LocalDate typeApproved,
            @Nullable BigDecimal odometer,
            @Nullable BigDecimal maximumMass,
            @Nullable BigDecimal unladenMass,
            @Nullable BigDecimal testMass,
            @Nullable Integer seats,
            @Nullable Drive drive,
            @Nullable Gearbox gearbox,
            @Nullable Boolean regenerative,
            @Nullable Boolean airSuspension,
            @Nullable CircuitSplit circuitSplit,
            @Nullable Boolean antilock,
            @Nullable String serviceFluid,
            List<Axle> axles,
            @Nullable String identity) {
        this(
                category,
                make,
                model,
                firstUsed,
                firstRegistered,
                typeApproved,
                odometer,
                maximumMass,
                unladenMass,
                testMass,
                seats,
                drive,
                gearbox,
                regenerative,
                airSuspension,
                circuitSplit,
                antilock,
                serviceFluid,
                axles,
                identity,
                null,
                null);
    }

    /** The axle of that number, or null where the vehicle has none. */
    public @Nullable Axle axle(int number) {
        for (Axle axle : axles) {
            if (axle.number() == number) {
                return axle;
            }
        }
        return null;
    }

    /**
     * The circuit that feeds a wheel, or null where the split is not known: with a front-rear split circuit 1 is the
     * front axle, with a diagonal split it is the front left and the rear right wheel.
     */
    public @Nullable Integer circuitOf(Place wheel) {
        if (circuitSplit == null || wheel.axle() == null) {
            return null;
        }
        boolean front = wheel.axle() == 1;
        return switch (circuitSplit) {
            case SINGLE -> 1;
            case FRONT_REAR -> front ? 1 : 2;
            case DIAGONAL -> front == (wheel.side() == Side.LEFT) ? 1 : 2;
        };
    }
}
