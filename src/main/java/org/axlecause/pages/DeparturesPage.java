package org.axlecause.pages;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.axlecause.access.Site;
import org.axlecause.policy.CountDepartures;
import org.axlecause.policy.CountDepartures.DepartureCountView;

/**
 * Departures from clauses in words.
 *
 * @param rows departures by clause and site, the most first
 * @param sites sites that the bearer may see
 * @param site code of the site that is asked for; empty for all
 * @param from first day, as it was typed
 * @param to day after the last, as it was typed
 */
public record DeparturesPage(List<Row> rows, List<Site> sites, String site, String from, String to) {

    /**
     * Departures from one clause at one site.
     *
     * @param clause what the clause means
     * @param site name of the site
     * @param count how many
     */
    public record Row(String clause, String site, DepartureCountView count) {}

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
