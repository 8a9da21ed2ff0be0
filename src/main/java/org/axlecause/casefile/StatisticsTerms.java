package org.axlecause.casefile;

import java.math.BigDecimal;
import java.time.Month;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/**
 * How statistics part the cases, by {@code rules/statistics/terms.yaml}.
 *
 * @param ages bands of age in years, the youngest first
 * @param odometers bands of the odometer in kilometres, the lowest first
 * @param seasons seasons with their months
 * @param returnDays days after the proof of a repair within which a later case is a return
 * @param leastCell cases that must stand behind a cell before it is told
 * @param calibrationBins equal bins of stated probability
 */
public record StatisticsTerms(
        List<Band> ages,
        List<Band> odometers,
        List<Season> seasons,
        int returnDays,
        int leastCell,
        int calibrationBins) {

    /** What stands where something isn't known. */
    public static final String UNKNOWN = "unknown";

    public StatisticsTerms {
        ages = List.copyOf(ages);
        odometers = List.copyOf(odometers);
        seasons = List.copyOf(seasons);
    }

    /** A band from this value, inclusive, to the next one. */
    public record Band(String code, BigDecimal from) {}

    /** A season of whole months. */
    public record Season(String code, List<Month> months) {

        public Season {
            months = List.copyOf(months);
        }
    }

    /** The terms that the release carries. */
    public static StatisticsTerms released() {
        return Released.TERMS;
    }

    /** The terms of a file; throws where something is missing or wrong. */
    static StatisticsTerms of(YamlFile file) {
        YamlNode root = file.root()
                .only("age-bands", "odometer-bands", "seasons", "return-days", "least-cell", "calibration-bins");
        return new StatisticsTerms(
                bands(root.member("age-bands")),
                bands(root.member("odometer-bands")),
                seasons(root.member("seasons")),
                value(root.member("return-days")),
                value(root.member("least-cell")),
                value(root.member("calibration-bins")));
    }

    /** The band of an age in years; unknown where none is known. */
    public String ageBand(@Nullable BigDecimal years) {
        return band(ages, years);
    }

    /** The band of a distance in kilometres; unknown where none is known. */
    public String odometerBand(@Nullable BigDecimal kilometres) {
        return band(odometers, kilometres);
    }

    private static String band(List<Band> bands, @Nullable BigDecimal value) {
        String found = UNKNOWN;
        if (value != null) {
            for (Band band : bands) {
                if (band.from().compareTo(value) <= 0) {
                    found = band.code();
                }
            }
        }
        return found;
    }

    private static List<Band> bands(YamlNode node) {
        standing(node.only("verified", "source", "bands"));
        List<Band> bands = new ArrayList<>();
        for (YamlNode item : node.items("bands")) {
            bands.add(new Band(item.only("code", "from").text("code"), item.decimal("from")));
        }
        if (!bands.equals(
                bands.stream().sorted(Comparator.comparing(Band::from)).toList())) {
            throw node.wrong("the bands of '" + node.name() + "' are out of order", "write the lowest first");
        }
        return bands;
    }

    private static List<Season> seasons(YamlNode node) {
        standing(node.only("verified", "source", "seasons"));
        List<Season> seasons = new ArrayList<>();
        Map<Month, String> taken = new EnumMap<>(Month.class);
        for (YamlNode item : node.items("seasons")) {
            String code = item.only("code", "months").text("code");
            List<Month> months = item.items("months").stream()
                    .map(month -> Month.of(month.whole()))
                    .toList();
            months.forEach(month -> taken.put(month, code));
            seasons.add(new Season(code, months));
        }
        if (!new TreeSet<>(taken.keySet()).equals(new TreeSet<>(List.of(Month.values())))) {
            throw node.wrong("the seasons leave months out", "name each of the twelve months once");
        }
        return seasons;
    }

    private static int value(YamlNode node) {
        return standing(node.only("value", "verified", "source")).whole("value");
    }

    private static YamlNode standing(YamlNode node) {
        node.code("verified", Verified.class);
        node.text("source");
        return node;
    }

    private static final class Released {
        static final StatisticsTerms TERMS = of(YamlFile.onClassPath("rules/statistics/terms.yaml"));
    }
}
