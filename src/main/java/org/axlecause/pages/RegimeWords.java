package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.facts.ImbalanceFormula;
import org.jspecify.annotations.Nullable;

/** Says in words what a regime asks, as its file writes it. */
final class RegimeWords {

    private static final Map<String, String> ABOUT = Map.of(
            "imbalance", "Difference of the two wheels",
            "effort", "Force against weight",
            "road-test", "Road test",
            "masses", "Mass that counts, the first that fits",
            "lenience", "Let off",
            "finding-limits", "Finding",
            "items", "Item of the inspection",
            "rounding", "Rounding");

    private static final Map<String, String> BOUNDS =
            Map.of("minimum", "at least", "maximum", "at most", "above", "above");

    /** Members that hold the number of a limit, with its unit. */
    private static final Map<String, String> UNITS = Map.of(
            "percent", "%",
            "newtons", "N",
            "newtons-per-kilogram", "N/kg",
            "metres", "m",
            "metres-per-second-squared", "m/s²",
            "millimetres", "mm");

    /** Members of a limit that its first words say. */
    private static final Set<String> SUBJECT = Set.of("deficiency", "figure", "brake", "place", "bound", "quantity");

    /** Other members, with the place of their value. */
    private static final Map<String, String> MEMBERS = Map.ofEntries(
            Map.entry("categories", "categories %s"),
            Map.entry("trailers", "%s"),
            Map.entry("axle-brakes", "brakes %s"),
            Map.entry("circuit-split", "circuits split as %s"),
            Map.entry("test-state", "tested %s"),
            Map.entry("first-registered-from", "first registered from %s on"),
            Map.entry("first-registered-before", "first registered before %s"),
            Map.entry("first-used-from", "first used from %s on"),
            Map.entry("type-approved-before", "type approved before %s"),
            Map.entry("from", "for tests from %s on"),
            Map.entry("before", "for tests before %s"),
            Map.entry("maximum-mass-over", "maximum mass over %s kg"),
            Map.entry("maximum-mass-up-to", "maximum mass up to %s kg"),
            Map.entry("maximum-over-unladen-below", "maximum mass below %s times the unladen mass"),
            Map.entry("or-percent-of-combination", "or %s % of the whole combination"),
            Map.entry("class", "classed %s"),
            Map.entry("item", "item %s"),
            Map.entry("grades", "%s"),
            Map.entry("share", "below %s of the limit"),
            Map.entry("name", "%s"),
            Map.entry("basis", "from %s"),
            Map.entry("add-kilograms", "%s kg are added"),
            Map.entry("per-seat-kilograms", "%s kg are added for each passenger seat"),
            Map.entry("formula", "%s"),
            Map.entry("below", "below that %s"),
            Map.entry("branch-percent", "branches at %s %"),
            Map.entry("unit", "as %s"),
            Map.entry("gravity", "gravity %s m/s²"),
            Map.entry("front-axle-addition-kilograms", "%s kg are added at the front axle"),
            Map.entry("averaging-begins", "averaged from %s of the starting speed on"),
            Map.entry("averaging-ends", "down to %s of it"),
            Map.entry("stopping-from-metres-per-second", "stopping from %s m/s"),
            Map.entry("stopping-tolerance-percent", "stopping distance within %s %"),
            Map.entry("seconds", "force builds up in %s s"),
            Map.entry("when", "when %s"),
            Map.entry("newtons", "%s N"),
            Map.entry("newtons-per-kilogram", "%s N/kg"),
            Map.entry("millimetres", "%s mm"),
            Map.entry("components", "of %s"),
            Map.entry("conditions", "found %s"),
            Map.entry("deficiency", "%s"),
            Map.entry("figure", "%s"),
            Map.entry("brake", "of the %s brake"),
            Map.entry("quantity", "%s"),
            Map.entry("decimals", "%s decimals"),
            Map.entry("mode", "%s"));

    /** Members that are shares of one, said in percent. */
    private static final Set<String> SHARES = Set.of("averaging-begins", "averaging-ends");

    /** Members that are true or false, in words. */
    private static final Map<String, List<String>> EITHER = Map.of(
            "steered", List.of("steered axles", "axles that are not steered"),
            "antilock", List.of("with an anti-lock system", "without an anti-lock system"),
            "affecting", List.of("where it affects the braking", "where it doesn't affect the braking"),
            "deceleration-counts",
                    List.of("the deceleration counts as efficiency", "the deceleration doesn't count as efficiency"));

    private final PlainWords words;

    RegimeWords(PlainWords words) {
        this.words = words;
    }

    /** What a statement says; null for a limit whose number stands in other statements. */
    @Nullable
    String of(String about, JsonNode says) {
        if (!about.equals("limits")) {
            return ABOUT.getOrDefault(about, PlainWords.sentence(about.replace('-', ' '))) + ": "
                    + String.join(", ", members(says, Set.of()));
        }
        String number = UNITS.keySet().stream().filter(says::has).findFirst().orElse(null);
        if (number == null) {
            return null;
        }
        String place = says.path("place").asText("vehicle");
        String subject = words.word("figures", says.path("figure").asText(), "text")
                + (says.has("brake")
                        ? " of the " + PlainWords.brake(says.path("brake").asText())
                        : "")
                + ", " + (place.equals("vehicle") ? "whole vehicle" : place.replace('-', ' '));
        List<String> conditions = new ArrayList<>(members(says, Set.of(number)));
        return PlainWords.sentence(subject) + ": "
                + BOUNDS.getOrDefault(says.path("bound").asText(), "") + " "
                + says.path(number).asText() + "\u00a0" + UNITS.get(number)
                + (conditions.isEmpty() ? "" : " (" + String.join("; ", conditions) + ")");
    }

    private static List<String> members(JsonNode says, Set<String> without) {
        boolean limit = !without.isEmpty();
        return says.properties().stream()
                .filter(member -> !without.contains(member.getKey()))
                .filter(member -> !limit || !SUBJECT.contains(member.getKey()))
                .map(member -> member(member.getKey(), member.getValue()))
                .toList();
    }

    private static String member(String name, JsonNode value) {
        List<String> either = EITHER.get(name);
        if (either != null && value.isBoolean()) {
            return either.get(value.asBoolean() ? 0 : 1);
        }
        if (name.equals("bound")) {
            return value.asText().equals("maximum") ? "greatest value" : "least value";
        }
        String text = name.equals("formula")
                ? formula(value.asText())
                : SHARES.contains(name)
                        ? PlainWords.measure(value.decimalValue().movePointRight(2), "%")
                        : text(value);
        String words = MEMBERS.get(name);
        return words == null ? name.replace('-', ' ') + " " + text : words.replace("%s", text);
    }

    private static String formula(String code) {
        return Stream.of(ImbalanceFormula.values())
                .filter(formula -> formula.toString().equals(code))
                .map(ImbalanceFormula::words)
                .findFirst()
                .orElse(code.replace('-', ' '));
    }

    private static String text(JsonNode value) {
        if (value.isObject()) {
            return String.join(", ", members(value, Set.of()));
        }
        if (value.isArray()) {
            List<String> items = new ArrayList<>();
            value.forEach(item -> items.add(text(item)));
            return items.stream().collect(Collectors.joining(", "));
        }
        String text = value.asText();
        return text.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}")
                ? NumbersWords.day(text)
                : text.matches("[a-z]+(-[a-z]+)+") ? text.replace('-', ' ') : text;
    }
}
