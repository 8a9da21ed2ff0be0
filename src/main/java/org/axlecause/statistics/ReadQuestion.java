package org.axlecause.statistics;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.access.Site;
import org.axlecause.casefile.StatisticsTerms;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.jspecify.annotations.Nullable;

/**
 * Reads the parameters of a question, holds each value against the words that are known, and says at once what is wrong
 * with them and which valid words come nearest.
 */
final class ReadQuestion {

    static final int USUAL_LIMIT = 200;
    static final int MOST = 1000;
    private static final int LONGEST = 100;
    private static final int FIRST_YEAR = 1900;
    private static final int LAST_YEAR = 9998;

    private static final List<String> COHORT = List.of(
            "from",
            "to",
            "season",
            "site",
            "region",
            "make",
            "model",
            "category",
            "layout",
            "ageBand",
            "odometerBand",
            "regime");

    private final Asked asked;
    private final Actor actor;
    private final List<Site> sites;
    private final StatisticsTerms terms;
    private final CountStore counts;
    private final Collection<String> regimes;
    private final List<Problem.Cause> wrong = new ArrayList<>();

    /**
     * @param sites sites of the tenant
     * @param regimes codes of the regimes
     */
    ReadQuestion(
            Asked asked,
            Actor actor,
            List<Site> sites,
            StatisticsTerms terms,
            CountStore counts,
            Collection<String> regimes) {
        this.asked = asked;
        this.actor = actor;
        this.sites = sites.stream().filter(site -> actor.maySee(site.site())).toList();
        this.terms = terms;
        this.counts = counts;
        this.regimes = regimes;
    }

    /** Reads other values by the same words. */
    ReadQuestion again(Asked other) {
        return new ReadQuestion(other, actor, sites, terms, counts, regimes);
    }

    /** Refuses parameters of other names than the usual ones and these. */
    ReadQuestion takes(String... others) {
        List<String> names = Stream.concat(COHORT.stream(), Stream.of(others)).toList();
        asked.values().keySet().stream()
                .filter(name -> !names.contains(name))
                .forEach(name -> wrong.add(new Problem.Cause(
                        "/" + name.replace("~", "~0").replace("/", "~1"),
                        "There is no parameter `" + shown(name) + "` here; the nearest are "
                                + String.join(", ", NearestWords.to(name, names)) + ". Correct it or leave it out.")));
        return this;
    }

    /** The cases that are asked about, within the sites that the actor may see. */
    Cohort cohort() {
        Map<Dimension, List<String>> values = new EnumMap<>(Dimension.class);
        sites(values);
        choose(values, Dimension.MAKE, "make", () -> counts.words(Dimension.MAKE));
        choose(values, Dimension.MODEL, "model", () -> counts.words(Dimension.MODEL));
        choose(values, Dimension.CATEGORY, "category", () -> counts.words(Dimension.CATEGORY));
        layouts(values);
        choose(values, Dimension.AGE_BAND, "ageBand", () -> bands(terms.ages()));
        choose(values, Dimension.ODOMETER_BAND, "odometerBand", () -> bands(terms.odometers()));
        choose(values, Dimension.REGIME, "regime", () -> List.copyOf(regimes));
        LocalDate from = day("from");
        LocalDate to = day("to");
        if (from != null && to != null && !from.isBefore(to)) {
            wrong("to", to.toString(), "a day after `from`, because it is not included itself");
        }
        List<Integer> months =
                words(
                                "season",
                                terms.seasons().stream()
                                        .map(StatisticsTerms.Season::code)
                                        .toList())
                        .stream()
                        .flatMap(code -> terms.seasons().stream()
                                .filter(season -> season.code().equals(code)))
                        .flatMap(season -> season.months().stream())
                        .map(month -> month.getValue())
                        .sorted()
                        .toList();
        return new Cohort(from, to, months, values);
    }

    /** The words that the cases of the actor's sites may be chosen by, by the names of the parameters. */
    Map<String, List<String>> known() {
        Map<String, List<String>> known = new LinkedHashMap<>();
        known.put("category", counts.words(Dimension.CATEGORY));
        known.put("make", counts.words(Dimension.MAKE));
        known.put("model", counts.words(Dimension.MODEL));
        known.put("layout", List.copyOf(layoutsAndBrakes(counts.words(Dimension.LAYOUT))));
        known.put("ageBand", bands(terms.ages()));
        known.put("odometerBand", bands(terms.odometers()));
        known.put(
                "season",
                terms.seasons().stream().map(StatisticsTerms.Season::code).toList());
        known.put("region", List.copyOf(new TreeSet<>(regions().values())));
        known.put("site", sites.stream().map(Site::site).sorted().toList());
        known.put("regime", regimes.stream().sorted().toList());
        return known;
    }

    /** The values of a parameter, each one of the valid words. */
    List<String> words(String name, Collection<String> valid) {
        List<String> given = asked.all(name);
        given.stream().filter(word -> !valid.contains(word)).forEach(word -> unknown(name, word, valid));
        return given.stream().filter(valid::contains).toList();
    }

    /** The only value of a parameter, one of the valid words; null where none is given. */
    @Nullable
    String word(String name, Collection<String> valid) {
        List<String> given = words(name, valid);
        if (asked.all(name).size() > 1) {
            wrong(name, String.join(", ", asked.all(name)), "one value alone");
        }
        return given.isEmpty() ? null : given.get(0);
    }

    /** What the answer is told apart by: at most this many of these. */
    List<GroupBy> by(int most, List<GroupBy> possible) {
        List<GroupBy> by = words("by", possible.stream().map(GroupBy::toString).toList()).stream()
                .flatMap(word -> GroupBy.of(word).stream())
                .toList();
        if (by.size() > most) {
            wrong("by", String.join(", ", asked.all("by")), "at most " + most + " values");
            return List.copyOf(by.subList(0, most));
        }
        return by;
    }

    /** The row where a page begins. */
    int position() {
        String given = asked.one("cursor");
        int position = given == null ? 0 : Cursors.position(given).orElse(-1);
        if (position < 0) {
            wrong("cursor", given == null ? "" : given, "the cursor of a Link header of this answer");
        }
        return Math.max(0, position);
    }

    /** A whole number of a parameter, or the usual one where none is given. */
    int whole(String name, int least, int most, int usual) {
        String given = asked.one(name);
        if (given == null) {
            return usual;
        }
        if (given.matches("[0-9]{1,4}")) {
            int number = Integer.parseInt(given);
            if (number >= least && number <= most) {
                return number;
            }
        }
        wrong(name, given, "a number from " + least + " to " + most);
        return usual;
    }

    /** Says that a value is wrong. */
    void wrong(String name, String value, String expected) {
        wrong.add(new Problem.Cause(
                "/" + name,
                "`" + name + "` is \"" + shown(value) + "\"; expected is " + expected
                        + ". Correct it or leave it out."));
    }

    /** Refuses with everything that was wrong. */
    void check() {
        if (!wrong.isEmpty()) {
            throw RefusedException.invalidPayload(wrong);
        }
    }

    /** What an answer is told apart by, with the words of this tenant. */
    Grouping grouping(List<GroupBy> by) {
        return new Grouping(by, regions(), terms);
    }

    /** The region of each site that the actor may see; unknown where it has none. */
    private Map<String, String> regions() {
        Map<String, String> regions = new HashMap<>();
        sites.forEach(
                site -> regions.put(site.site(), Objects.requireNonNullElse(site.region(), StatisticsTerms.UNKNOWN)));
        return regions;
    }

    private void sites(Map<Dimension, List<String>> values) {
        List<String> chosen = words("site", sites.stream().map(Site::site).toList());
        List<String> regions = words("region", new TreeSet<>(regions().values()));
        boolean limited = actor.sites() != null;
        if (!limited && asked.all("site").isEmpty() && asked.all("region").isEmpty()) {
            return;
        }
        values.put(
                Dimension.SITE,
                sites.stream()
                        .filter(site -> asked.all("site").isEmpty() || chosen.contains(site.site()))
                        .filter(site -> asked.all("region").isEmpty()
                                || regions.contains(Objects.requireNonNullElse(site.region(), StatisticsTerms.UNKNOWN)))
                        .map(Site::site)
                        .sorted()
                        .toList());
    }

    /** A layout of the whole vehicle, or the brake of one of its axles. */
    private void layouts(Map<Dimension, List<String>> values) {
        if (asked.all("layout").isEmpty()) {
            return;
        }
        List<String> known = counts.words(Dimension.LAYOUT);
        List<String> wanted = words("layout", layoutsAndBrakes(known));
        values.put(
                Dimension.LAYOUT,
                known.stream()
                        .filter(layout -> wanted.contains(layout)
                                || wanted.stream().anyMatch(List.of(layout.split("\\+", -1))::contains))
                        .toList());
    }

    private static Set<String> layoutsAndBrakes(List<String> layouts) {
        TreeSet<String> words = new TreeSet<>(layouts);
        layouts.forEach(layout -> words.addAll(List.of(layout.split("\\+", -1))));
        return words;
    }

    private void choose(
            Map<Dimension, List<String>> values, Dimension dimension, String name, Supplier<List<String>> valid) {
        if (!asked.all(name).isEmpty()) {
            values.put(dimension, words(name, valid.get()));
        }
    }

    private static List<String> bands(List<StatisticsTerms.Band> bands) {
        return Stream.concat(bands.stream().map(StatisticsTerms.Band::code), Stream.of(StatisticsTerms.UNKNOWN))
                .toList();
    }

    private void unknown(String name, String value, Collection<String> valid) {
        List<String> nearest = NearestWords.to(value, valid);
        wrong(
                name,
                value,
                nearest.isEmpty()
                        ? "a value that a counted case bears; there is none yet"
                        : "a known value, such as " + String.join(", ", nearest));
    }

    /** The day of a parameter; null where none is given. */
    @Nullable
    LocalDate day(String name) {
        String given = asked.one(name);
        if (given == null) {
            return null;
        }
        LocalDate day = parsed(given);
        if (day == null || day.getYear() < FIRST_YEAR || day.getYear() > LAST_YEAR) {
            wrong(name, given, "a day such as 2026-03-02");
            return null;
        }
        return day;
    }

    private static @Nullable LocalDate parsed(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException e) {
            return null;
        }
    }

    private static String shown(String value) {
        String plain = value.replaceAll("\\p{Cntrl}", "?");
        return plain.length() <= LONGEST ? plain : plain.substring(0, LONGEST) + "…";
    }
}
