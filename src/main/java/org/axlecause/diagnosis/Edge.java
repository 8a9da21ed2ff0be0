package org.axlecause.diagnosis;

/**
 * One step of a chain.
 *
 * @param from code of cause or state
 * @param to code of cause, state or symptom
 * @param reach where the effect is, seen from the step before
 */
public record Edge(String from, String to, Reach reach) {}
