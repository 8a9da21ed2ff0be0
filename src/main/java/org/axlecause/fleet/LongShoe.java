package org.axlecause.fleet;

/**
 * A pivoted shoe with a lining long enough for the sinusoidal pressure of the long-shoe theory; any one unit of length.
 *
 * @param drumRadius radius of the drum
 * @param width width of the lining
 * @param from where the lining begins, radians from the pivot
 * @param to where it ends, radians from the pivot
 * @param pivotRadius distance of the pivot from the drum's centre
 * @param actuationArm arm of the actuating force about the pivot
 */
public record LongShoe(
        double drumRadius, double width, double from, double to, double pivotRadius, double actuationArm) {

    private double steepest() {
        return Math.sin(Math.min(to, Math.PI / 2));
    }

    private double contact() {
        return Math.cos(from) - Math.cos(to);
    }

    /** Moment of the friction about the pivot at that highest pressure. */
    public double frictionMoment(double pressure, double friction) {
        double sines = Math.pow(Math.sin(to), 2) - Math.pow(Math.sin(from), 2);
        return friction
                * pressure
                * width
                * drumRadius
                / steepest()
                * (drumRadius * contact() - pivotRadius / 2 * sines);
    }

    /** Moment of the normal force about the pivot at that highest pressure. */
    public double normalMoment(double pressure) {
        return pressure
                * width
                * drumRadius
                * pivotRadius
                / steepest()
                * ((to - from) / 2 - (Math.sin(2 * to) - Math.sin(2 * from)) / 4);
    }

    /** Braking torque at that highest pressure. */
    public double torque(double pressure, double friction) {
        return friction * pressure * width * drumRadius * drumRadius * contact() / steepest();
    }

    /** Actuating force that a leading shoe needs for that highest pressure. */
    public double leadingForce(double pressure, double friction) {
        return (normalMoment(pressure) - frictionMoment(pressure, friction)) / actuationArm;
    }

    /** Highest pressure that a trailing shoe reaches under that actuating force. */
    public double trailingPressure(double force, double friction) {
        return force * actuationArm / (normalMoment(1) + frictionMoment(1, friction));
    }

    /** The same shoe as a factor of its friction. */
    public ShoeFactor factor() {
        double normal = normalMoment(1);
        return new ShoeFactor(torque(1, 1) * actuationArm / (normal * drumRadius), frictionMoment(1, 1) / normal);
    }
}
