package org.axlecause.fleet;

/**
 * One application of the pedal during a test: rolling, a linear rise, a hold, a linear release, rolling on.
 *
 * @param start when the pedal begins to move, seconds
 * @param rise how long it is pressed further
 * @param hold how long it is held
 * @param release how long it is let go
 * @param end when the recording ends
 * @param pedalForce force while held, newtons
 */
public record Application(double start, double rise, double hold, double release, double end, double pedalForce) {

    /** Pedal force at a time. */
    public double forceAt(double time) {
        double since = time - start;
        if (since <= 0) {
            return 0;
        }
        if (since < rise) {
            return pedalForce * since / rise;
        }
        double released = since - rise - hold;
        if (released <= 0) {
            return pedalForce;
        }
        return released >= release ? 0 : pedalForce * (1 - released / release);
    }
}
