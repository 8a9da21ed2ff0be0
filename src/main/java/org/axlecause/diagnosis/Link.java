package org.axlecause.diagnosis;

/**
 * A cause shows a symptom or leaves a finding.
 *
 * @param evidence code of the symptom or finding
 * @param finding whether it is a finding
 * @param reach where it shows, seen from the cause
 * @param letter strength as the files write it
 * @param strength how surely it shows, a probability
 */
public record Link(String evidence, boolean finding, Reach reach, String letter, double strength) {}
