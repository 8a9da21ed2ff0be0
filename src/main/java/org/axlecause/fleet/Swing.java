package org.axlecause.fleet;

/**
 * How the force swings with the wheel's turn: 1 + first sin(angle + phase) + second sin(2 angle + phase).
 *
 * @param first relative amplitude once a turn: an eccentric drum or a disc of uneven thickness
 * @param firstPhase its phase, radians
 * @param second relative amplitude twice a turn: an oval drum
 * @param secondPhase its phase, radians
 */
public record Swing(double first, double firstPhase, double second, double secondPhase) {

    /** A round drum. */
    public static final Swing NONE = new Swing(0, 0, 0, 0);

    /** Factor on the force at a wheel angle in radians. */
    public double at(double angle) {
        return 1 + first * Math.sin(angle + firstPhase) + second * Math.sin(2 * angle + secondPhase);
    }
}
