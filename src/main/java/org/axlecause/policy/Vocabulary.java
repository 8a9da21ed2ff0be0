package org.axlecause.policy;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.facts.Verified;
import org.axlecause.shared.Dimension;
import org.axlecause.shared.Units;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** The clauses that a policy may set, read off the baseline, which says of each what it means and in which unit. */
final class Vocabulary {

    static final String YEARS = "a";
    static final String HOURS = "h";

    private static final Set<String> BOUND = Set.of("value", "unit");
    private static final Map<ClauseCode, Set<String>> REPEATED = Map.of(
            ClauseCode.WORKSHOP_LIMIT, Set.of("figure", "brake", "axle", "build", "value", "unit"),
            ClauseCode.NEEDED_MEASUREMENT, Set.of("action", "item", "quantity"),
            ClauseCode.NEEDED_PHOTO, Set.of("action", "item"),
            ClauseCode.CONSENT, Set.of("action", "item", "by"),
            ClauseCode.LABOUR_CAP, Set.of("action", "item", "value", "unit"));
    private static final Set<String> OPTIONAL = Set.of("axle", "build");

    private static final Vocabulary RELEASED = new Vocabulary();

    private final Map<String, ClauseWord> words = new TreeMap<>();

    private Vocabulary() {
        YamlNode root = YamlFile.onClassPath(PolicyFile.BASELINE).root();
        for (YamlNode node : root.items("thresholds")) {
            ThresholdCode code = node.code("code", ThresholdCode.class);
            words.put(code.toString(), word(node, null, code, BOUND));
        }
        for (YamlNode node : root.items("clauses")) {
            ClauseCode code = node.code("code", ClauseCode.class);
            words.put(code.toString(), word(node, code, null, REPEATED.getOrDefault(code, members(node))));
        }
        for (ClauseCode code : ClauseCode.values()) {
            if (!words.containsKey(code.toString())) {
                throw root.member("clauses").wrong("the clause '" + code + "' is missing", "add it with its meaning");
            }
        }
    }

    /** The vocabulary of this release. */
    static Vocabulary released() {
        return RELEASED;
    }

    @Nullable
    ClauseWord find(@Nullable String code) {
        return code == null ? null : words.get(code);
    }

    /** All clauses, by code. */
    Map<String, ClauseWord> all() {
        return new TreeMap<>(words);
    }

    private static Set<String> members(YamlNode node) {
        Set<String> members = new TreeSet<>();
        if (node.has("unit")) {
            members.addAll(BOUND);
        }
        if (node.has("extent")) {
            members.add("extent");
        }
        if (node.has("necessity") || members.isEmpty()) {
            members.add("necessity");
        }
        return members;
    }

    private static ClauseWord word(
            YamlNode node, @Nullable ClauseCode clause, @Nullable ThresholdCode threshold, Set<String> takes) {
        String unit = node.optionalText("unit");
        BigDecimal value = node.optionalDecimal("value");
        return new ClauseWord(
                node.text("code"),
                clause,
                threshold,
                node.text("means"),
                takes,
                clause == ClauseCode.WORKSHOP_LIMIT ? OPTIONAL : Set.of(),
                unit == null || unit.equals(YEARS) ? null : dimension(unit),
                clause == ClauseCode.LABOUR_CAP ? HOURS : unit,
                value,
                takes.contains("necessity") && !node.has("necessity") ? "none" : node.optionalText("necessity"),
                node.optionalText("extent"),
                node.code("verified", Verified.class),
                node.text("source"));
    }

    private static Dimension dimension(String unit) {
        return Arrays.stream(Dimension.values())
                .filter(dimension -> Units.whatIsWrong(unit, dimension).isEmpty())
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("The baseline uses the unit " + unit));
    }
}
