package org.axlecause.fleet;

/**
 * How strongly a shoe multiplies its actuating force: torque over force and drum radius is
 * {@code slope * friction / (1 -+ selfHelp * friction)}, with the minus for a leading shoe.
 *
 * @param slope factor per friction without self-help
 * @param selfHelp self-energising per friction
 */
public record ShoeFactor(double slope, double selfHelp) {

    /** Factor of a leading shoe; without end where the friction is high enough to lock it. */
    public double leading(double friction) {
        double rest = 1 - selfHelp * friction;
        return rest <= 0 ? Double.POSITIVE_INFINITY : slope * friction / rest;
    }

    /** Factor of a trailing shoe. */
    public double trailing(double friction) {
        return slope * friction / (1 + selfHelp * friction);
    }

    /** Friction at which a leading shoe locks by itself. */
    public double lockingFriction() {
        return 1 / selfHelp;
    }
}
