package org.axlecause.fleet;

/**
 * A valve that passes only a share of the pressure above a knee.
 *
 * @param knee pressure up to which all passes
 * @param slope share that passes above it
 */
public record Proportioning(double knee, double slope) {

    /** A line without a valve. */
    public static final Proportioning NONE = new Proportioning(Double.POSITIVE_INFINITY, 1);

    /** Pressure behind the valve. */
    public double behind(double pressure) {
        return pressure <= knee ? pressure : knee + slope * (pressure - knee);
    }
}
