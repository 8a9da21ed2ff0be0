package org.axlecause.pages;

import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** The words of the numbers pages for parameters and their values. */
final class NumbersWords {

    private static final Map<String, String> LABELS = Map.ofEntries(
            Map.entry("category", "Category"),
            Map.entry("make", "Make"),
            Map.entry("model", "Model"),
            Map.entry("layout", "Brake layout"),
            Map.entry("ageBand", "Age in years"),
            Map.entry("odometerBand", "Distance in km"),
            Map.entry("from", "Presented from"),
            Map.entry("to", "Presented before"),
            Map.entry("season", "Season"),
            Map.entry("month", "Month"),
            Map.entry("region", "Region"),
            Map.entry("site", "Site"),
            Map.entry("regime", "Regime"),
            Map.entry("cause", "Cause"),
            Map.entry("axle", "Axle from the front"),
            Map.entry("side", "Side"),
            Map.entry("role", "Role in its chain"),
            Map.entry("item", "Item of work"),
            Map.entry("check", "Check"),
            Map.entry("measure", "What the sites are compared by"),
            Map.entry("moment", "When the probabilities were told"),
            Map.entry("by", "Told apart by"),
            Map.entry("compare", "Groups by"),
            Map.entry("period", "This period and an earlier one"),
            Map.entry("earlierFrom", "Earlier period from"),
            Map.entry("earlierTo", "Earlier period before"));

    /** Names that people gave, and days, stay as they were written. */
    private static final Set<String> AS_WRITTEN = Set.of(
            "category", "make", "model", "region", "site", "regime", "from", "to", "earlierFrom", "earlierTo", "month");

    private NumbersWords() {}

    static String label(String name) {
        return LABELS.getOrDefault(name, name);
    }

    /** Words for no value. */
    static String none(String name) {
        return switch (name) {
            case "by" -> "nothing";
            case "compare" -> "choose one";
            case "measure" -> "not cured first time";
            case "moment" -> "both moments";
            default -> "all";
        };
    }

    static String value(String name, String value) {
        if (name.equals("by") || name.equals("compare")) {
            return label(value).toLowerCase(Locale.ROOT);
        }
        return AS_WRITTEN.contains(name) ? value : value.replace('-', ' ');
    }
}
