package org.axlecause.diagnosis;

/**
 * A cause shows a symptom or leaves a finding.
 *
 * @param evidence code of the symptom or finding
 * @param finding whether it is a finding
 * @param reach where it shows, seen from the cause
 * @param letter strength as the files write it
 * @param strength how surely it shows, a probability
 * @param firstRunOnly whether it shows in a first run only, so that it accounts for nothing that a second run still shows
 * @param sharedFrictionOnly whether it shows only where the parking brake works on the linings and pads of the service
 *     brake
 */
public record Link(
        String evidence,
        boolean finding,
        Reach reach,
        String letter,
        double strength,
        boolean firstRunOnly,
        boolean sharedFrictionOnly) {}
