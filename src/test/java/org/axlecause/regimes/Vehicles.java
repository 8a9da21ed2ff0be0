package org.axlecause.regimes;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.axlecause.facts.Axle;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.TrailerKind;
import org.axlecause.facts.Vehicle;
import org.jspecify.annotations.Nullable;

/** Vehicles for the tests of regimes; two axles, the front one steered, parking brake on the rear one. */
public final class Vehicles {

    /** Day on which the limits of the tests are asked. */
    public static final LocalDate TODAY = LocalDate.of(2026, 3, 2);

    private static final List<Axle> AXLES = List.of(
            new Axle(1, true, BrakeLayout.DISC_FLOATING, ParkingLayout.NONE),
            new Axle(2, false, BrakeLayout.DRUM_SIMPLEX, ParkingLayout.CABLE_ON_SERVICE_SHOES));

    private Vehicles() {}

    /** A vehicle of a category, first used and registered on a day, of which nothing else matters. */
    public static Vehicle anyVehicle(String category, LocalDate first) {
        return vehicle(category, first, null, true, CircuitSplit.DIAGONAL, "2000", "1400", "1300", null, null, AXLES);
    }

    /** The small van of most tests: category N1 of 2020 kg with 1430 kg on the test. */
    public static Vehicle aSmallVan() {
        return vehicle(
                "N1",
                LocalDate.of(2015, 9, 14),
                LocalDate.of(2013, 2, 1),
                true,
                CircuitSplit.DIAGONAL,
                "2020",
                "1430",
                "1310",
                null,
                null,
                AXLES);
    }

    /** The same vehicle approved on a day, or never said to be. */
    public static Vehicle approved(Vehicle v, @Nullable LocalDate day) {
        return copy(v, v.firstUsed(), day, v.antilock(), v.circuitSplit(), v.maximumMass(), v.testMass(), v.axles());
    }

    /** The same vehicle with another anti-lock statement. */
    public static Vehicle antilock(Vehicle v, @Nullable Boolean antilock) {
        return copy(
                v,
                v.firstUsed(),
                v.typeApproved(),
                antilock,
                v.circuitSplit(),
                v.maximumMass(),
                v.testMass(),
                v.axles());
    }

    /** The same vehicle with another circuit split. */
    public static Vehicle circuits(Vehicle v, @Nullable CircuitSplit split) {
        return copy(v, v.firstUsed(), v.typeApproved(), v.antilock(), split, v.maximumMass(), v.testMass(), v.axles());
    }

    /** The same vehicle with other masses. */
    public static Vehicle masses(Vehicle v, @Nullable String maximum, @Nullable String test) {
        return copy(
                v,
                v.firstUsed(),
                v.typeApproved(),
                v.antilock(),
                v.circuitSplit(),
                decimal(maximum),
                decimal(test),
                v.axles());
    }

    /** The same vehicle with other axles. */
    public static Vehicle axles(Vehicle v, Axle... axles) {
        return copy(
                v,
                v.firstUsed(),
                v.typeApproved(),
                v.antilock(),
                v.circuitSplit(),
                v.maximumMass(),
                v.testMass(),
                List.of(axles));
    }

    /** A vehicle whose first day on the road nobody has said. */
    public static Vehicle ofUnknownAge(Vehicle v) {
        return copy(v, null, null, v.antilock(), v.circuitSplit(), v.maximumMass(), v.testMass(), v.axles());
    }

    /** A trailer of category O4. */
    public static Vehicle aTrailer(TrailerKind kind, LocalDate registered, LocalDate approved) {
        return vehicle("O4", registered, approved, true, null, "24000", null, null, null, kind, AXLES);
    }

    /** A lorry of 12 t whose combination may weigh 18 t. */
    public static Vehicle aLorryThatDrawsATrailer() {
        return vehicle(
                "N2",
                LocalDate.of(2016, 1, 10),
                null,
                true,
                CircuitSplit.FRONT_REAR,
                "12000",
                null,
                null,
                "18000",
                null,
                AXLES);
    }

    /** A vehicle said in full. */
    public static Vehicle vehicle(
            String category,
            @Nullable LocalDate first,
            @Nullable LocalDate approved,
            @Nullable Boolean antilock,
            @Nullable CircuitSplit split,
            @Nullable String maximum,
            @Nullable String test,
            @Nullable String unladen,
            @Nullable String combination,
            @Nullable TrailerKind trailer,
            List<Axle> axles) {
        return new Vehicle(
                category,
                "Corvane",
                "Portal",
                first,
                first,
                approved,
                null,
                decimal(maximum),
                decimal(unladen),
                decimal(test),
                3,
                null,
                null,
                false,
                false,
                split,
                antilock,
                null,
                axles,
                null,
                decimal(combination),
                trailer);
    }

    private static Vehicle copy(
            Vehicle v,
            @Nullable LocalDate first,
            @Nullable LocalDate approved,
            @Nullable Boolean antilock,
            @Nullable CircuitSplit split,
            @Nullable BigDecimal maximum,
            @Nullable BigDecimal test,
            List<Axle> axles) {
        return new Vehicle(
                v.category(),
                v.make(),
                v.model(),
                first,
                first,
                approved,
                v.odometer(),
                maximum,
                v.unladenMass(),
                test,
                v.seats(),
                v.drive(),
                v.gearbox(),
                v.regenerative(),
                v.airSuspension(),
                split,
                antilock,
                v.serviceFluid(),
                axles,
                v.identity(),
                v.combinationMass(),
                v.trailer());
    }

    private static @Nullable BigDecimal decimal(@Nullable String number) {
        return number == null ? null : new BigDecimal(number);
    }
}
