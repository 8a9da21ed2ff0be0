package org.axlecause.fleet;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.List;
import java.util.random.RandomGenerator;
import org.axlecause.facts.Axle;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.Drive;
import org.axlecause.facts.Gearbox;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.Vehicle;

/** Draws sound vehicles of any age and layout. */
final class VehicleDraw {

    private static final double GRAVITY = 9.81;
    private static final int DAYS_OF_A_YEAR = 365;

    private final VehicleTable table;

    VehicleDraw(VehicleTable table) {
        this.table = table;
    }

    VehicleState draw(double age, LocalDate day, RandomGenerator random) {
        Vehicle vehicle = vehicle(age, day, random);
        double mass = vehicle.testMass() == null ? 0 : vehicle.testMass().doubleValue();
        Pedal pedal = new Pedal(
                table.value("pedal.ratio"),
                table.value("pedal.servo-gain"),
                table.value("pedal.servo-run-out") * WheelState.BAR,
                table.value("pedal.master-diameter"),
                table.value("pedal.efficiency"));
        VehicleState state = new VehicleState(vehicle, pedal, mass * GRAVITY);
        double frontShare = draw("front-share", random);
        double tyre = draw("tyre-radius", random);
        double grip = draw("grip", random);
        double parkingShare = draw("parking-share", random);
        for (Axle axle : vehicle.axles()) {
            boolean front = axle.number() == 1;
            double load = mass * GRAVITY * (front ? frontShare : 1 - frontShare) / 2;
            Parts parts = parts(axle, random);
            for (Side side : Side.values()) {
                state.add(new WheelState(
                        axle,
                        Place.ofWheel(axle.number(), side),
                        wheel(axle, parts, tyre, grip, load, random),
                        front ? 0 : parkingShare * state.weight()));
            }
        }
        return state;
    }

    private Vehicle vehicle(double age, LocalDate day, RandomGenerator random) {
        boolean van = chance("light-van", random);
        double unladen = Math.round(draw("unladen-mass", random));
        boolean regenerative = chance("regenerative", random);
        double drive = random.nextDouble();
        Drive driven = drive < table.value("shares.front-drive")
                ? Drive.FRONT
                : drive < table.value("shares.front-drive") + table.value("shares.rear-drive") ? Drive.REAR : Drive.ALL;
        BrakeLayout front = VehicleTable.pick(table.front(), random);
        BrakeLayout rear = VehicleTable.pick(table.rear(), random);
        ParkingLayout parking = rear == BrakeLayout.DRUM_SIMPLEX || rear == BrakeLayout.DRUM_DUO_SERVO
                ? ParkingLayout.CABLE_ON_SERVICE_SHOES
                : rear == BrakeLayout.DISC_FIXED
                        ? ParkingLayout.SHOES_IN_DISC
                        : VehicleTable.pick(table.rearDiscParking(), random);
        return new Vehicle(
                van ? "N1" : "M1",
                "Corvane",
                van ? "Portal" : "Brook",
                day.minusDays(Math.round(age * DAYS_OF_A_YEAR)),
                null,
                null,
                BigDecimal.valueOf(Math.round(age * draw("kilometres-per-year", random)) * 1000L),
                mass(unladen + draw("payload", random)),
                mass(unladen),
                mass(unladen + table.value("driver-mass")),
                null,
                driven,
                Gearbox.MANUAL,
                regenerative,
                false,
                chance("diagonal-split", random) ? CircuitSplit.DIAGONAL : CircuitSplit.FRONT_REAR,
                chance("antilock", random),
                "DOT 4",
                List.of(new Axle(1, true, front, ParkingLayout.NONE), new Axle(2, false, rear, parking)),
                null);
    }

    private Parts parts(Axle axle, RandomGenerator random) {
        String of = axle.isDrum() ? "drum" : axle.number() == 1 ? "disc-front" : "disc-rear";
        return new Parts(
                draw(of + ".actuator-area", random),
                draw(of + ".radius", random),
                draw(of + ".spring-pressure", random),
                draw("friction", random));
    }

    /** Parts that both wheels of an axle have alike. */
    private record Parts(double area, double radius, double spring, double friction) {}

    private WheelBrake wheel(Axle axle, Parts parts, double tyre, double grip, double load, RandomGenerator random) {
        double friction = parts.friction * (1 + table.value("scatter.wheel") * random.nextGaussian());
        double line = table.value("line.time");
        Hydraulics hydraulics = new Hydraulics(
                line,
                line,
                0,
                table.value("line.piston-friction") * WheelState.BAR,
                parts.spring * WheelState.BAR,
                0,
                Double.POSITIVE_INFINITY);
        double turn = 2 * Math.PI;
        Swing swing = new Swing(
                draw("swing", random), turn * random.nextDouble(), draw("swing", random), turn * random.nextDouble());
        return new WheelBrake(
                pair(axle, friction),
                parts.area,
                parts.radius,
                tyre,
                hydraulics,
                swing,
                draw("rolling-share", random) * load,
                0,
                grip,
                load);
    }

    private FrictionPair pair(Axle axle, double friction) {
        ShoeFactor shoe = new ShoeFactor(table.value("shoe.gain"), table.value("shoe.self-energising"));
        BrakeLayout layout = axle.brake() == null ? BrakeLayout.DISC_FLOATING : axle.brake();
        return switch (layout) {
            case DRUM_SIMPLEX -> new FrictionPair.Simplex(friction, shoe, 1, 1);
            case DRUM_DUPLEX -> new FrictionPair.Duplex(friction, shoe, 1, 1);
            case DRUM_DUO_SERVO ->
                new FrictionPair.DuoServo(
                        friction,
                        new FrictionPair.DuoServoGeometry(
                                table.value("duo-servo.cylinder"),
                                table.value("duo-servo.link"),
                                table.value("duo-servo.anchor"),
                                table.value("duo-servo.lining")),
                        true,
                        true);
            case DISC_FLOATING, DISC_FIXED -> new FrictionPair.Disc(friction, 1);
        };
    }

    private double draw(String name, RandomGenerator random) {
        return table.range(name).draw(random);
    }

    private boolean chance(String share, RandomGenerator random) {
        return random.nextDouble() < table.value("shares." + share);
    }

    private static BigDecimal mass(double kilograms) {
        return BigDecimal.valueOf(kilograms).setScale(0, RoundingMode.HALF_EVEN);
    }
}
