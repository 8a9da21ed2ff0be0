package org.axlecause.fleet;

/**
 * How pressure reaches and moves the pistons of one wheel.
 *
 * @param riseTime time constant of rising pressure, seconds
 * @param fallTime time constant of falling pressure, seconds
 * @param heldPressure pressure that a flap in the hose keeps back, pascals
 * @param pistonFriction pressure that it takes to move the pistons, pascals
 * @param springPressure pressure that the springs or the seals' rollback take, pascals
 * @param clearanceTime time of applied pedal until the linings touch, seconds
 * @param travelLimit pressure at which the travel is used up, pascals; without end where it never is
 */
public record Hydraulics(
        double riseTime,
        double fallTime,
        double heldPressure,
        double pistonFriction,
        double springPressure,
        double clearanceTime,
        double travelLimit) {

    /** The same with a restriction in the line. */
    public Hydraulics restricted(double rise, double fall, double held) {
        return new Hydraulics(rise, fall, held, pistonFriction, springPressure, clearanceTime, travelLimit);
    }

    /** The same with tight pistons. */
    public Hydraulics withPistonFriction(double pressure) {
        return new Hydraulics(riseTime, fallTime, heldPressure, pressure, springPressure, clearanceTime, travelLimit);
    }

    /** The same with other springs. */
    public Hydraulics withSpringPressure(double pressure) {
        return new Hydraulics(riseTime, fallTime, heldPressure, pistonFriction, pressure, clearanceTime, travelLimit);
    }

    /** The same with linings that touch late. */
    public Hydraulics withClearanceTime(double seconds) {
        return new Hydraulics(riseTime, fallTime, heldPressure, pistonFriction, springPressure, seconds, travelLimit);
    }

    /** The same with travel that runs out. */
    public Hydraulics withTravelLimit(double pressure) {
        return new Hydraulics(
                riseTime, fallTime, heldPressure, pistonFriction, springPressure, clearanceTime, pressure);
    }
}
