package org.axlecause.pages;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * The words of the numbers pages for parameters and their values.
 *
 * @param names the names that people gave to codes, by parameter and code
 */
record NumbersWords(Map<String, Map<String, String>> names) {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM uuuu", Locale.ENGLISH);

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
            Map.entry("by", "Split by"),
            Map.entry("compare", "Groups by"),
            Map.entry("period", "This period and an earlier one"),
            Map.entry("earlierFrom", "Earlier period from"),
            Map.entry("earlierTo", "Earlier period before"));

    /** Names that people gave stay as they were written. */
    private static final Set<String> AS_WRITTEN =
            Set.of("category", "make", "model", "region", "site", "regime", "month");

    private static final Set<String> DAYS = Set.of("from", "to", "earlierFrom", "earlierTo");

    static String label(String name) {
        return LABELS.getOrDefault(name, name);
    }

    /** A word of an answer; what has no other word is told as it is. */
    static String word(String word) {
        return switch (word) {
            case "firstTimeCure" -> "proved by the first final test";
            case "adjusted" -> "p, adjusted";
            case "pValue" -> "p";
            case "unasked" -> "made unasked";
            case "answered" -> "could be got at";
            case "notMade" -> "asked and not made";
            case "brier" -> "Brier score";
            case "expectedCalibrationError" -> "expected calibration error";
            default -> LABELS.containsKey(word) ? named(word) : word.replace('-', ' ');
        };
    }

    /** The label inside a sentence. */
    static String named(String name) {
        return label(name).substring(0, 1).toLowerCase(Locale.ROOT)
                + label(name).substring(1);
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

    /** What is counted where sites are compared by a measure or a cause; not cured first time where none is chosen. */
    static String counted(String measure) {
        return switch (measure) {
            case "", "not-cured-first-time" -> "cases not cured first time";
            case "undetermined" -> "cases without a confirmed cause";
            case "failed-official-test" -> "cases that failed the official test";
            case "returned" -> "repaired axles that came back";
            default -> "cases with " + measure.replace('-', ' ');
        };
    }

    String value(String name, String value) {
        if (name.equals("by") || name.equals("compare")) {
            return named(value);
        }
        if (DAYS.contains(name)) {
            return day(value);
        }
        String given = names.getOrDefault(name, Map.of()).get(value);
        if (given != null) {
            return given;
        }
        return AS_WRITTEN.contains(name) ? value : value.replace('-', ' ');
    }

    /** A day as people write it; what is no day stays as it is. */
    static String day(String day) {
        try {
            return DAY.format(LocalDate.parse(day));
        } catch (DateTimeException none) {
            return day;
        }
    }

    /** A month as people write it. */
    static String month(String month) {
        try {
            return MONTH.format(YearMonth.parse(month));
        } catch (DateTimeException none) {
            return month;
        }
    }
}
