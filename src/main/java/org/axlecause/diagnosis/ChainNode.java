package org.axlecause.diagnosis;

import org.axlecause.facts.Place;

/**
 * One step of a chain.
 *
 * @param code code of a cause, a state in between or a symptom
 * @param text the step in words
 * @param place where
 * @param seen whether it was seen; inferred otherwise
 */
public record ChainNode(String code, String text, Place place, boolean seen) {}
