package org.axlecause.fleet;

/**
 * One wheel on its rollers; SI units.
 *
 * @param pair what rubs on what
 * @param actuatorArea bore area of the wheel cylinder, or piston area of one side of a calliper
 * @param effectiveRadius drum radius, or mean radius of the pads
 * @param tyreRadius rolling radius of the tyre
 * @param hydraulics how pressure reaches the pistons
 * @param swing how the force swings with the wheel
 * @param rollingForce force of the rolling tyre and bearings
 * @param dragForce force of a brake that rubs while released
 * @param grip coefficient of friction between tyre and rollers
 * @param load load on the wheel, newtons
 */
public record WheelBrake(
        FrictionPair pair,
        double actuatorArea,
        double effectiveRadius,
        double tyreRadius,
        Hydraulics hydraulics,
        Swing swing,
        double rollingForce,
        double dragForce,
        double grip,
        double load) {

    /** Roller force per pascal of effective pressure. */
    public double forcePerPressure() {
        return pair.factor() * actuatorArea * effectiveRadius / tyreRadius;
    }

    /** Highest force that the tyre passes on. */
    public double slipForce() {
        return grip * load;
    }

    /** Force in newtons at a steady line pressure in pascals, without swing and rolling force. */
    public double steadyForce(double pressure) {
        double reached = Math.min(pressure, hydraulics.travelLimit());
        double effective = Math.max(0, reached - hydraulics.pistonFriction() - hydraulics.springPressure());
        return Math.min(effective * forcePerPressure(), slipForce());
    }

    /** The same wheel with another friction pair. */
    public WheelBrake with(FrictionPair other) {
        return new WheelBrake(
                other,
                actuatorArea,
                effectiveRadius,
                tyreRadius,
                hydraulics,
                swing,
                rollingForce,
                dragForce,
                grip,
                load);
    }

    /** The same wheel with other hydraulics. */
    public WheelBrake with(Hydraulics other) {
        return new WheelBrake(
                pair, actuatorArea, effectiveRadius, tyreRadius, other, swing, rollingForce, dragForce, grip, load);
    }

    /** The same wheel with another swing. */
    public WheelBrake with(Swing other) {
        return new WheelBrake(
                pair,
                actuatorArea,
                effectiveRadius,
                tyreRadius,
                hydraulics,
                other,
                rollingForce,
                dragForce,
                grip,
                load);
    }

    /** The same wheel with another friction of its lining. */
    public WheelBrake withFriction(double friction) {
        return with(pair.withFriction(friction));
    }

    /** The same wheel with a rubbing brake. */
    public WheelBrake withDragForce(double force) {
        return new WheelBrake(
                pair, actuatorArea, effectiveRadius, tyreRadius, hydraulics, swing, rollingForce, force, grip, load);
    }

    /** The same wheel with another grip. */
    public WheelBrake withGrip(double coefficient) {
        return new WheelBrake(
                pair,
                actuatorArea,
                effectiveRadius,
                tyreRadius,
                hydraulics,
                swing,
                rollingForce,
                dragForce,
                coefficient,
                load);
    }
}
