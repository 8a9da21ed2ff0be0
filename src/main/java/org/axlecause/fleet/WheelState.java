package org.axlecause.fleet;

import java.util.EnumMap;
import java.util.Map;
import org.axlecause.facts.Axle;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.Spot;
import org.jspecify.annotations.Nullable;

/** A wheel brake with what faults have done to it. */
final class WheelState {

    static final double BAR = 1e5;

    private final Axle axle;
    private final Place place;
    private final WheelBrake sound;
    private final double soundParkingForce;
    private final Map<PhysicalQuantity, Double> always = new EnumMap<>(PhysicalQuantity.class);
    private final Map<PhysicalQuantity, Double> firstRun = new EnumMap<>(PhysicalQuantity.class);
    private @Nullable Spot stuckSpot;
    private FaultForm.Trapped trapped = FaultForm.Trapped.NOTHING;

    WheelState(Axle axle, Place place, WheelBrake sound, double soundParkingForce) {
        this.axle = axle;
        this.place = place;
        this.sound = sound;
        this.soundParkingForce = soundParkingForce;
    }

    Axle axle() {
        return axle;
    }

    Place place() {
        return place;
    }

    WheelBrake sound() {
        return sound;
    }

    FaultForm.Trapped trapped() {
        return trapped;
    }

    void change(PhysicalQuantity quantity, double value, boolean onlyFirstRun) {
        (onlyFirstRun ? firstRun : always).merge(quantity, value, quantity::together);
    }

    void stuckAt(Spot spot) {
        this.stuckSpot = spot;
    }

    void trap(FaultForm.Trapped by) {
        if (by != FaultForm.Trapped.NOTHING) {
            this.trapped = by;
        }
    }

    double value(PhysicalQuantity quantity, double usual, boolean first) {
        Double lasting = always.get(quantity);
        Double passing = first ? firstRun.get(quantity) : null;
        if (lasting == null) {
            return passing == null ? usual : passing;
        }
        return passing == null ? lasting : quantity.together(lasting, passing);
    }

    /** The wheel on its rollers; the last argument is the scatter of this run. */
    WheelBrake brake(boolean first, double scatter) {
        double friction = value(PhysicalQuantity.FRICTION, sound.pair().friction(), first)
                * value(PhysicalQuantity.FRICTION_TIMES, 1, first)
                * scatter;
        Hydraulics healthy = sound.hydraulics();
        Hydraulics hydraulics = new Hydraulics(
                value(PhysicalQuantity.RISE_TIME, healthy.riseTime(), first),
                value(PhysicalQuantity.FALL_TIME, healthy.fallTime(), first),
                value(PhysicalQuantity.HELD_PRESSURE, healthy.heldPressure() / BAR, first) * BAR,
                value(PhysicalQuantity.PISTON_FRICTION, healthy.pistonFriction() / BAR, first) * BAR,
                value(PhysicalQuantity.SPRING_PRESSURE, healthy.springPressure() / BAR, first) * BAR,
                value(PhysicalQuantity.CLEARANCE_TIME, healthy.clearanceTime(), first),
                value(PhysicalQuantity.TRAVEL_LIMIT, Double.POSITIVE_INFINITY, first) * BAR);
        Swing round = sound.swing();
        return new WheelBrake(
                pair(friction, first),
                sound.actuatorArea() * value(PhysicalQuantity.ACTUATOR_AREA_TIMES, 1, first),
                sound.effectiveRadius(),
                sound.tyreRadius(),
                hydraulics,
                new Swing(
                        value(PhysicalQuantity.SWING_FIRST, round.first(), first),
                        round.firstPhase(),
                        value(PhysicalQuantity.SWING_SECOND, round.second(), first),
                        round.secondPhase()),
                sound.rollingForce() * value(PhysicalQuantity.ROLLING_TIMES, 1, first),
                value(PhysicalQuantity.DRAG, 0, first),
                value(PhysicalQuantity.GRIP, sound.grip(), first),
                sound.load());
    }

    /** Force of the parking brake of this wheel when the lever is pulled as on a sound vehicle. */
    double parkingForce(WheelBrake now) {
        double friction = axle.parkingBrake() != ParkingLayout.SHOES_IN_DISC
                ? factorForParking(now) / factorForParking(sound)
                : 1;
        return soundParkingForce * friction * value(PhysicalQuantity.PARKING_TIMES, 1, false);
    }

    double soundParkingForce() {
        return soundParkingForce;
    }

    double parkingRest() {
        return value(PhysicalQuantity.PARKING_REST, 0, false);
    }

    /** The lever spreads both shoes, whether the pistons move or not. */
    private static double factorForParking(WheelBrake wheel) {
        FrictionPair pair = wheel.pair();
        double friction = pair.friction();
        if (pair instanceof FrictionPair.Simplex simplex) {
            return new FrictionPair.Simplex(friction, simplex.shoe(), 1, 1).factor();
        }
        if (pair instanceof FrictionPair.DuoServo duo) {
            return new FrictionPair.DuoServo(friction, duo.geometry(), true, true).factor();
        }
        return pair.factor();
    }

    private FrictionPair pair(double friction, boolean first) {
        double pistons = value(PhysicalQuantity.PISTON_SHARE, 1, first);
        boolean firstShoe = stuckSpot == Spot.LEADING || stuckSpot == Spot.UPPER || stuckSpot == Spot.PRIMARY;
        double one = firstShoe ? pistons : 1;
        double other = firstShoe ? 1 : pistons;
        FrictionPair pair = sound.pair();
        if (pair instanceof FrictionPair.Simplex simplex) {
            return new FrictionPair.Simplex(friction, simplex.shoe(), one, other);
        }
        if (pair instanceof FrictionPair.Duplex duplex) {
            return new FrictionPair.Duplex(friction, duplex.shoe(), one, other);
        }
        if (pair instanceof FrictionPair.DuoServo duo) {
            return new FrictionPair.DuoServo(friction, duo.geometry(), one == 1, other == 1);
        }
        return new FrictionPair.Disc(friction, value(PhysicalQuantity.OUTER_SHARE, 1, first));
    }

    double knee(boolean first) {
        return value(PhysicalQuantity.KNEE, Double.POSITIVE_INFINITY, first) * BAR;
    }

    double slope(boolean first) {
        return value(PhysicalQuantity.SLOPE, 1, first);
    }
}
