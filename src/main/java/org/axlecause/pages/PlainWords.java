package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.qute.TemplateExtension;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.EntryType;
import org.axlecause.facts.FitnessLevel;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.shared.PlainMeasure;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** The words of the sheets for codes, places and numbers; read from the rules folder once. */
@Singleton
final class PlainWords {

    /** What stands for a figure that there is none of. */
    static final String NOT_MEASURED = "not measured";

    /** A space at which no line is broken. */
    static final String NO_BREAK = "\u00a0";

    private static final Pattern BEFORE_UNIT = Pattern.compile(
            "(?<=[0-9]) (?=(?:%|°C|N|kN|mm|m|km|miles|mL|L|ms|s|min|h|years|kg|bar|V)(?![\\p{L}\\p{N}]))");

    private static final Pattern FIGURE_OF_TWO_TESTS =
            Pattern.compile("^([a-z-]+) (?=of the (?:service|parking|secondary) brake at )");
    private static final Pattern FRACTION_OF_PERCENT = Pattern.compile("-?[0-9]+\\.[0-9]+(?= %)");

    private final YamlNode root;
    private final Map<String, Map<String, YamlNode>> lists = new LinkedHashMap<>();
    private final Map<String, String> clauseGroups = new LinkedHashMap<>();
    private final List<WayBlocked> obstacles;

    /**
     * Something that may stand in the way of work.
     *
     * @param component part that it is met at
     * @param condition how the part is found
     * @param brake first word of the brakes that have it, such as drum; null for all
     * @param text its words
     */
    record WayBlocked(
            Component component,
            Condition condition,
            @Nullable String brake,
            String text) {}

    @Inject
    PlainWords() {
        this(YamlFile.onClassPath("rules/catalogue/plain-words.yaml"));
    }

    /** The words in a file; a code without its words is named with what to add. */
    PlainWords(YamlFile file) {
        root = file.root()
                .only(
                        "verified",
                        "actions",
                        "items",
                        "figures",
                        "glossary",
                        "deficiencies",
                        "fitness",
                        "obstacles",
                        "entries",
                        "questions",
                        "settings",
                        "setting-members",
                        "compounds",
                        "weights",
                        "clause-groups");
        read("actions", ScopeAction.values());
        read("items", ScopeItem.values());
        read("figures");
        read("glossary");
        read("deficiencies", DeficiencyCode.values());
        read("fitness", FitnessLevel.values());
        read("entries", EntryType.values());
        read("questions");
        read("settings");
        read("setting-members");
        read("compounds");
        read("weights");
        for (YamlNode group : root.items("clause-groups")) {
            group.texts("clauses").forEach(code -> clauseGroups.put(code, group.text("name")));
        }
        obstacles = root.items("obstacles").stream()
                .map(node -> new WayBlocked(
                        node.code("component", Component.class),
                        node.code("condition", Condition.class),
                        node.optionalText("brake"),
                        node.text("text")))
                .toList();
    }

    /** What may stand in the way of work on a brake of this layout; of every layout where none is known. */
    List<WayBlocked> obstacles(@Nullable String layout) {
        return obstacles.stream()
                .filter(obstacle -> layout == null || obstacle.brake() == null || layout.startsWith(obstacle.brake()))
                .toList();
    }

    /** What clauses of a policy are about, in the order in which they are read. */
    List<String> clauseGroups() {
        return clauseGroups.values().stream().distinct().toList();
    }

    /** What a clause of a policy is about. */
    String clauseGroup(String clause) {
        return clauseGroups.getOrDefault(clause, "Other clauses");
    }

    private void read(String list, Enum<?>... codes) {
        Map<String, YamlNode> words = new LinkedHashMap<>();
        for (YamlNode node : root.items(list)) {
            if (words.put(node.text("code"), node) != null) {
                throw node.wrong("'" + node.text("code") + "' stands twice", "keep one of the two");
            }
        }
        for (Enum<?> code : codes) {
            if (!words.containsKey(code.toString())) {
                throw root.member(list).wrong("'" + code + "' is missing", "add its words");
            }
        }
        lists.put(list, words);
    }

    /** A word of a list; the code itself where a newer judgement knows one that this service doesn't. */
    String word(String list, String code, String member) {
        YamlNode node = lists.getOrDefault(list, Map.of()).get(code);
        return node == null ? code.replace('-', ' ') : node.text(member);
    }

    /** The words of a code: blanks for its hyphens but within compounds. */
    String named(String code) {
        String words = code.replace('-', ' ');
        for (Map.Entry<String, YamlNode> compound :
                lists.getOrDefault("compounds", Map.of()).entrySet()) {
            words = words.replace(
                    compound.getKey().replace('-', ' '), compound.getValue().text("text"));
        }
        return words;
    }

    /** A word of a list, or null where there is none. */
    @Nullable
    String optional(String list, String code, String member) {
        YamlNode node = lists.getOrDefault(list, Map.of()).get(code);
        return node == null ? null : node.optionalText(member);
    }

    /**
     * What a comparison of two tests shows, in the words of its figure and rounded as figures are; any other sentence as it
     * is.
     */
    String compared(String shown) {
        Matcher figure = FIGURE_OF_TWO_TESTS.matcher(shown);
        if (!figure.lookingAt()) {
            return shown;
        }
        return word("figures", figure.group(1), "text") + " "
                + FRACTION_OF_PERCENT
                        .matcher(shown.substring(figure.end()))
                        .replaceAll(percent -> new BigDecimal(percent.group())
                                .setScale(decimals("%"), RoundingMode.HALF_EVEN)
                                .toPlainString());
    }

    /** What a line of the scope does, where. */
    String line(String action, String item, String place) {
        String what = word("actions", action, "text").replace("{item}", word("items", item, "name"));
        return place.isEmpty() ? what : what + ", " + place;
    }

    /** Where something is; empty for the whole vehicle. */
    static String place(JsonNode place, int axles) {
        List<String> words = new ArrayList<>();
        if (place.has("axle")) {
            words.add(axle(place.path("axle").asInt(), axles));
        }
        if (place.has("side")) {
            words.add(place.path("side").asText() + " wheel");
        }
        if (place.has("spot")) {
            words.add(place.path("spot").asText() + " side");
        }
        if (place.has("circuit")) {
            words.add("brake circuit" + NO_BREAK + place.path("circuit").asText());
        }
        return String.join(", ", words);
    }

    static String placeOrVehicle(JsonNode place, int axles) {
        String words = place(place, axles);
        return words.isEmpty() ? "whole vehicle" : words;
    }

    static String sentence(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    /** The text with the full stop that it may lack. */
    static String stopped(String text) {
        return text.isEmpty() || text.endsWith(".") || text.endsWith("?") ? text : text + ".";
    }

    /** A text whose numbers keep the units after them on their line. */
    @TemplateExtension
    static String unparted(String text) {
        return BEFORE_UNIT.matcher(text).replaceAll(NO_BREAK);
    }

    static String brake(String brake) {
        return switch (brake) {
            case "service" -> "foot brake";
            case "parking" -> "parking brake";
            default -> "secondary brake";
        };
    }

    static String axle(int number, int axles) {
        if (number == 1) {
            return "front axle";
        }
        return number == 2 && axles == 2 ? "rear axle" : "axle " + number + " from the front";
    }

    /** Numbers as they are spoken, such as 1, 2 and 3. */
    static String numbers(List<Integer> numbers) {
        String all = String.join(", ", numbers.stream().map(String::valueOf).toList());
        int last = all.lastIndexOf(", ");
        return last < 0 ? all : all.substring(0, last) + " and" + NO_BREAK + all.substring(last + 2);
    }

    /** How much of what, such as 1 × axle set of four shoes. */
    static String quantity(JsonNode quantity, String item) {
        String unit = quantity.path("unit").asText();
        String of = quantity.path("of").asText(item);
        String number = plain(quantity.path("value").decimalValue());
        return (unit.equals("1") ? number + NO_BREAK + "×" + NO_BREAK : number + NO_BREAK + unit + " of ") + of;
    }

    /** A figure with its unit, rounded as far as a reader can use it. */
    static String figure(JsonNode measure) {
        if (measure.isMissingNode() || measure.isNull()) {
            return NOT_MEASURED;
        }
        String unit = measure.path("unit").asText();
        BigDecimal value = measure.path("value").decimalValue();
        return plain(value.setScale(decimals(unit), RoundingMode.HALF_EVEN))
                + (unit.equals("1") ? "" : NO_BREAK + unit);
    }

    /** A figure beside its limit, with a decimal more where the two would look alike. */
    static String against(JsonNode value, JsonNode limit, boolean maximum) {
        return besideLimit(value, limit) + allowed(limit, maximum);
    }

    /** A figure beside the limit that is asked for and the bound of the worse class that it is beyond as well. */
    static String against(JsonNode value, JsonNode required, JsonNode bound, String severity, boolean maximum) {
        return besideLimit(value, bound) + allowed(required, maximum) + ", and " + (maximum ? "more" : "less")
                + " than " + figure(bound) + " counts as " + severity;
    }

    private static String besideLimit(JsonNode value, JsonNode limit) {
        BigDecimal measured = value.path("value").decimalValue();
        BigDecimal allowed = limit.path("value").decimalValue();
        String unit = value.path("unit").asText();
        boolean near = unit.equals("%")
                && unit.equals(limit.path("unit").asText())
                && measured.subtract(allowed).abs().compareTo(BigDecimal.ONE) < 0;
        return near ? plain(measured.setScale(2, RoundingMode.HALF_EVEN)) + NO_BREAK + "%" : figure(value);
    }

    private static String allowed(JsonNode limit, boolean maximum) {
        return "; " + (maximum ? "at most " : "at least ") + figure(limit) + (maximum ? " is allowed" : " is required");
    }

    /** A number with its unit as people write them, never parted; a ratio has no unit. */
    static String measure(BigDecimal value, @Nullable String unit) {
        return PlainMeasure.of(value, unit).replace(" ", NO_BREAK);
    }

    /** A unit as people write it. */
    static String unit(String unit) {
        return PlainMeasure.unit(unit);
    }

    /** How far work goes. */
    static String extent(String extent) {
        return ScopeExtent.words(extent);
    }

    static String plain(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        return (stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString();
    }

    private static int decimals(String unit) {
        return switch (unit) {
            case "N", "%", "ms" -> 0;
            case "s", "mm", "m/s2" -> 2;
            default -> 1;
        };
    }
}
