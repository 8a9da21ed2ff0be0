package org.axlecause.fleet;

/** What slows the fluid down: a throat in hose or pipe, and air that has to be squeezed first. */
public final class Restriction {

    /** Standard atmosphere, pascals. */
    private static final double ATMOSPHERE = 101_325;

    private Restriction() {}

    /**
     * Time constant of a laminar throat before a compliant wheel brake, seconds.
     *
     * @param bore diameter of the throat, metres
     * @param length its length, metres
     * @param viscosity dynamic viscosity of the fluid, pascal seconds
     * @param compliance volume that the wheel brake takes per pascal, cubic metres
     */
    public static double timeConstant(double bore, double length, double viscosity, double compliance) {
        return 128 * viscosity * length / (Math.PI * Math.pow(bore, 4)) * compliance;
    }

    /** Volume that a bubble of air gives way, isothermally, at a pressure above the atmosphere. */
    public static double squeezed(double volume, double pressure) {
        return volume * (1 - ATMOSPHERE / (pressure + ATMOSPHERE));
    }

    /** Compliance that a bubble of air adds at a pressure above the atmosphere. */
    public static double compliance(double volume, double pressure) {
        return volume * ATMOSPHERE / Math.pow(pressure + ATMOSPHERE, 2);
    }
}
