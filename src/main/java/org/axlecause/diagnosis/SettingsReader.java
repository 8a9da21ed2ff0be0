package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.shared.YamlNode;

/** Reads how causes are weighed. */
final class SettingsReader {

    private SettingsReader() {}

    static Settings of(YamlNode root) {
        YamlNode strengths = root.member("strengths");
        Map<String, Double> letters = new TreeMap<>();
        for (String letter : strengths.names()) {
            letters.put(letter, ModelNumbers.probability(strengths.member(letter)));
        }
        YamlNode next = root.member("next-checks");
        YamlNode access = next.member("access-minutes");
        List<Integer> minutes = new ArrayList<>();
        for (int level = 1; level <= 4; level++) {
            minutes.add(access.whole(Integer.toString(level)));
        }
        Map<Risk, Integer> risks = new EnumMap<>(Risk.class);
        for (Risk risk : Risk.values()) {
            risks.put(risk, next.member("risk-minutes").whole(risk.toString()));
        }
        return new Settings(
                root.texts("categories"),
                letters,
                root.member("old-from").whole("drum"),
                root.member("old-from").whole("disc"),
                ModelNumbers.positive(root.member("least-weight")),
                ModelNumbers.positive(root.member("expected-faults")),
                ModelNumbers.probability(root.member("most-prior")),
                ModelNumbers.probability(root.member("finding-leak")),
                ModelNumbers.probability(root.member("explained-away")),
                ModelNumbers.positive(root.member("after-recent-work")),
                ModelNumbers.probability(root.member("without-work")),
                ModelNumbers.probability(root.member("shown-together")),
                ModelNumbers.probability(root.member("shown-from")),
                ModelNumbers.probability(next.member("settled-at")),
                ModelNumbers.probability(next.member("accounts-from")),
                ModelNumbers.probability(next.member("rival-from")),
                ModelNumbers.probability(next.member("same-scope-at")),
                ModelNumbers.probability(next.member("background")),
                ModelNumbers.positive(next.member("least-information")),
                next.whole("most"),
                List.copyOf(minutes),
                risks);
    }
}
