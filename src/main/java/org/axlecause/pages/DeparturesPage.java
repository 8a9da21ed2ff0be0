package org.axlecause.pages;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.access.Site;
import org.axlecause.policy.CountDepartures;
import org.axlecause.policy.CountDepartures.DepartureCountView;

/**
 * Departures from clauses in words.
 *
 * @param rows departures by clause and site, the most frequent first
 * @param sites sites that the bearer may see
 * @param site code of the site that is asked for; empty for all
 * @param from first day, as it was typed
 * @param to day after the last, as it was typed
 */
public record DeparturesPage(List<Row> rows, List<Site> sites, String site, String from, String to) {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    /**
     * Departures from one clause at one site.
     *
     * @param clause what the clause means
     * @param site name of the site
     * @param count how many
     */
    public record Row(String clause, String site, DepartureCountView count) {}

    /** Whether less than all is asked for. */
    public boolean narrowed() {
        return !site.isEmpty() || !from.isEmpty() || !to.isEmpty();
    }

    /** Which cases are asked for, in words. */
    public String asked() {
        String days = Stream.of(day("from", from), day("before", to))
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(" and "));
        String where = sites.stream()
                .filter(each -> each.site().equals(site))
                .map(Site::name)
                .findFirst()
                .orElse(site);
        return "cases at " + (site.isEmpty() ? "all sites" : where) + (days.isEmpty() ? "" : ", presented " + days);
    }

    private static String day(String word, String day) {
        return day.isEmpty() ? "" : word + " " + DAY.format(LocalDate.parse(day));
    }

    static DeparturesPage of(List<DepartureCountView> counts, List<Site> sites, String site, String from, String to) {
        Map<String, String> names = sites.stream().collect(Collectors.toMap(Site::site, Site::name));
        return new DeparturesPage(
                counts.stream()
                        .map(count -> new Row(
                                PlainWords.sentence(CountDepartures.meaning(count.clause())),
                                names.getOrDefault(count.site(), count.site()),
                                count))
                        .toList(),
                sites,
                site,
                from,
                to);
    }
}
