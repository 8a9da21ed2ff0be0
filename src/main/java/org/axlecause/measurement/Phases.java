package org.axlecause.measurement;

/**
 * Phases of a test in seconds from its beginning: rolling up to {@code start}, rise, hold, release, after. NaN where a
 * phase is not in the trace.
 *
 * @param start first movement of the pedal, or first rise of a force where no pedal was recorded
 * @param holdStart from when the pedal or the forces are steady
 * @param holdEnd until when
 * @param releaseStart when the pedal is let go, or when the first force falls
 * @param releaseEnd when the pedal is back
 * @param end end of the trace
 * @param byPedal whether they were read off the pedal
 */
record Phases(
        double start,
        double holdStart,
        double holdEnd,
        double releaseStart,
        double releaseEnd,
        double end,
        boolean byPedal) {

    boolean isApplied() {
        return !Double.isNaN(start);
    }

    boolean isHeld() {
        return !Double.isNaN(holdStart);
    }

    boolean isReleased() {
        return !Double.isNaN(releaseStart);
    }

    double holdLength() {
        return isHeld() ? holdEnd - holdStart : 0;
    }
}
