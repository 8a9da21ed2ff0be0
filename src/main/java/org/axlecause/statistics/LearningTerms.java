package org.axlecause.statistics;

import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;

/**
 * How much confirmed cases count against the book.
 *
 * @param priorStrength cases that the book is worth, above 0
 * @param leastCases cases of a group below which it keeps the weights of the book
 * @param heldOutShare share of the cases that is kept out of learning, above 0 and below 1
 */
public record LearningTerms(double priorStrength, int leastCases, double heldOutShare) {

    public LearningTerms {
        if (!(priorStrength > 0 && heldOutShare > 0 && heldOutShare < 1) || leastCases < 0) {
            throw new IllegalArgumentException(
                    "A book worth %s cases, %d cases at least and %s held out: expected are a number above 0, none or more, "
                                    .formatted(priorStrength, leastCases, heldOutShare)
                            + "and a share between 0 and 1");
        }
    }

    /** The terms that the release carries in {@code rules/statistics/learning.yaml}. */
    public static LearningTerms released() {
        return of(YamlFile.onClassPath("rules/statistics/learning.yaml"));
    }

    /** The terms of a file; throws where one is missing, unknown or wrong. */
    static LearningTerms of(YamlFile file) {
        YamlNode root = file.root().only("prior-strength", "least-cases", "held-out-share");
        return new LearningTerms(
                value(root, "prior-strength").decimal().doubleValue(),
                value(root, "least-cases").whole(),
                value(root, "held-out-share").decimal().doubleValue());
    }

    private static YamlNode value(YamlNode root, String name) {
        YamlNode node = root.member(name).only("value", "verified", "source");
        node.code("verified", Verified.class);
        node.text("source");
        return node.member("value");
    }
}
