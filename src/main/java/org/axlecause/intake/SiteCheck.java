package org.axlecause.intake;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import org.axlecause.access.Actor;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.facts.EntryType;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.jspecify.annotations.Nullable;

/** Checks that the site of a presentation exists and that the actor may touch the site of a case. */
@ApplicationScoped
class SiteCheck {

    private static final int SHOWN_SITES = 20;

    private final SiteStore sites;

    SiteCheck(SiteStore sites) {
        this.sites = sites;
    }

    /** What is wrong with the event's site for this actor; empty where nothing is. */
    Optional<Problem> whatIsWrong(IncomingEvent event, @Nullable String siteOfCase, Actor actor) {
        String site = event.type() == EntryType.VEHICLE_PRESENTED
                ? event.data().path("site").asText()
                : siteOfCase;
        if (site == null) {
            return Optional.empty();
        }
        if (!actor.maySee(site)) {
            return Optional.of(RefusedException.notAllowed("The key " + actor.name() + " may not touch the site " + site
                            + ". Send it with a key of that site.")
                    .problem());
        }
        if (event.type() == EntryType.VEHICLE_PRESENTED && sites.find(site).isEmpty()) {
            return Optional.of(unknown(site, actor));
        }
        return Optional.empty();
    }

    private Problem unknown(String site, Actor actor) {
        List<String> known = sites.all().stream()
                .map(Site::site)
                .filter(actor::maySee)
                .limit(SHOWN_SITES)
                .toList();
        return RefusedException.because(
                        RefusedException.Reason.INVALID_PAYLOAD,
                        "unknown-site",
                        "The site is unknown; see the causes.",
                        List.of(new Problem.Cause(
                                "/data/site",
                                "`site` is \"" + site + "\", which is unknown; expected is one of "
                                        + String.join(", ", known)
                                        + ". Correct it, or let an admin make the site.")))
                .problem();
    }
}
