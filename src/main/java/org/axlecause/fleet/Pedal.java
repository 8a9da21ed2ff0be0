package org.axlecause.fleet;

/**
 * From the foot to the pressure in the line.
 *
 * @param ratio lever ratio of the pedal
 * @param servoGain multiplication by the servo; 1 without one
 * @param servoRunOut line pressure up to which the servo assists, pascals
 * @param masterDiameter bore of the master cylinder, metres
 * @param efficiency share of the force that becomes pressure
 */
public record Pedal(double ratio, double servoGain, double servoRunOut, double masterDiameter, double efficiency) {

    /** Area of the master cylinder, square metres. */
    public double masterArea() {
        return Math.PI * masterDiameter * masterDiameter / 4;
    }

    /** Line pressure in pascals at a pedal force in newtons. */
    public double pressure(double force) {
        double perNewton = ratio * efficiency / masterArea();
        double assisted = force * perNewton * servoGain;
        if (assisted <= servoRunOut) {
            return assisted;
        }
        double forceAtRunOut = servoRunOut / (perNewton * servoGain);
        return servoRunOut + (force - forceAtRunOut) * perNewton;
    }

    /** Pedal force in newtons that makes a line pressure in pascals. */
    public double forceFor(double pressure) {
        double perNewton = ratio * efficiency / masterArea();
        if (pressure <= servoRunOut) {
            return pressure / (perNewton * servoGain);
        }
        return servoRunOut / (perNewton * servoGain) + (pressure - servoRunOut) / perNewton;
    }

    /** Travel of the pedal that moves a volume of fluid, metres. */
    public double travelFor(double volume) {
        return volume / masterArea() * ratio;
    }
}
