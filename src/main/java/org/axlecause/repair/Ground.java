package org.axlecause.repair;

import java.util.List;

/**
 * A ground as it is shown.
 *
 * @param rule id of the rule
 * @param says one sentence
 * @param source document and section
 * @param facts facts behind it, in words
 */
public record Ground(String rule, String says, String source, List<String> facts) {

    public Ground {
        facts = List.copyOf(facts);
    }
}
