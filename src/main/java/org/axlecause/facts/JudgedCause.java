package org.axlecause.facts;

/**
 * A cause as a technician judged it.
 *
 * @param code the cause
 * @param place where
 */
public record JudgedCause(CauseCode code, Place place) {}
