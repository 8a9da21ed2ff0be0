package org.axlecause.facts;

import java.util.List;

/**
 * Ground of a conclusion: the rule and the facts a person should be shown, in reading order.
 *
 * @param rule id of the rule, such as SYM-010
 * @param facts the facts in words
 */
public record Because(String rule, List<String> facts) implements Comparable<Because> {

    public Because {
        facts = List.copyOf(facts);
    }

    /** The ground made of a rule's id and the facts it shows. */
    public static Because because(String rule, Shown... facts) {
        String[] words = new String[facts.length];
        for (int i = 0; i < words.length; i++) {
            words[i] = facts[i].shown();
        }
        return new Because(rule, List.of(words));
    }

    @Override
    public int compareTo(Because other) {
        int byRule = rule.compareTo(other.rule);
        return byRule != 0 ? byRule : byFacts(other);
    }

    /** As the lists read in words; the words are only joined where one begins with the other. */
    private int byFacts(Because other) {
        for (int i = 0; i < Math.min(facts.size(), other.facts.size()); i++) {
            String one = facts.get(i);
            String two = other.facts.get(i);
            if (!one.equals(two)) {
                return one.startsWith(two) || two.startsWith(one)
                        ? facts.toString().compareTo(other.facts.toString())
                        : one.compareTo(two);
            }
        }
        return facts.size() == other.facts.size() ? 0 : facts.toString().compareTo(other.facts.toString());
    }
}
