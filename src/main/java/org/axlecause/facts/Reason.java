package org.axlecause.facts;

import java.util.List;

/**
 * A ground of a conclusion as it is shown: the rule's own words beside the facts.
 *
 * @param rule id of the rule
 * @param says one sentence
 * @param source document and section
 * @param facts facts behind it, in words
 */
public record Reason(String rule, String says, String source, List<String> facts) {

    public Reason {
        facts = List.copyOf(facts);
    }
}
