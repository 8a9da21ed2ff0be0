package org.axlecause.pages;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.access.ReadSites;
import org.axlecause.access.Site;
import org.axlecause.casefile.CasePage;
import org.axlecause.casefile.CasesWanted;
import org.axlecause.casefile.ReadCases;
import org.axlecause.casefile.StoredCase;
import org.jspecify.annotations.Nullable;

/** Lists cases by whom they wait for. */
@ApplicationScoped
class ListCases {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
    private static final String SHOWN = "20";
    private static final String SHOWN_ALONE = "100";

    private final ReadCases readCases;
    private final ReadSites readSites;

    ListCases(ReadCases readCases, ReadSites readSites) {
        this.readCases = readCases;
        this.readSites = readSites;
    }

    /** The newest cases of each of these statuses. */
    CaseGroups groups(List<String> statuses, @Nullable String words, Actor actor) {
        Map<String, String> sites = siteNames(actor);
        return new CaseGroups(
                words == null ? "" : words.strip(),
                words != null && !words.isBlank(),
                statuses.stream()
                        .map(status -> group(status, words, SHOWN, null, actor, sites))
                        .toList());
    }

    /** A page of the cases of one status. */
    CaseGroups page(String status, @Nullable String words, @Nullable String cursor, Actor actor) {
        return new CaseGroups(
                words == null ? "" : words.strip(),
                true,
                List.of(group(status, words, SHOWN_ALONE, cursor, actor, siteNames(actor))));
    }

    private Map<String, String> siteNames(Actor actor) {
        return readSites.visible(actor).stream().collect(Collectors.toMap(Site::site, Site::name));
    }

    private CaseGroups.Group group(
            String status,
            @Nullable String words,
            String limit,
            @Nullable String cursor,
            Actor actor,
            Map<String, String> sites) {
        CasePage page = readCases.list(CasesWanted.of(status, words, limit, cursor), actor);
        return new CaseGroups.Group(
                status,
                ShowCase.stateOfMany(status),
                page.cases().stream().map(found -> line(found, sites)).toList(),
                page.next());
    }

    private static CaseGroups.Line line(StoredCase found, Map<String, String> sites) {
        String vehicle = String.join(
                " ",
                Stream.of(found.columns().make(), found.columns().model())
                        .filter(word -> word != null)
                        .toList());
        String site = found.columns().site();
        return new CaseGroups.Line(
                found.reference(),
                vehicle.isEmpty() ? "Vehicle not known yet" : vehicle,
                site == null ? "" : sites.getOrDefault(site, site),
                DAY.format(found.columns().openedDay()));
    }
}
