package org.axlecause.diagnosis;

import java.util.List;

/**
 * A state between a cause and a symptom.
 *
 * @param code its code
 * @param text what is so
 * @param seenBy findings that make it seen
 */
public record State(String code, String text, List<String> seenBy) {}
