package org.axlecause.casefile;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Pattern;
import org.axlecause.access.Act;
import org.axlecause.access.ActStore;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.regimes.Regimes;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The sites of a tenant; every presentation names one. */
@Path("/v1/sites")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "administration")
public class SitesResource {

    private static final Pattern CODE = Pattern.compile("[A-Za-z0-9._~-]{1,64}");
    private static final int LONGEST_NAME = 200;

    private final SiteStore sites;
    private final Regimes regimes;
    private final ActStore acts;
    private final CurrentActor actor;
    private final TenantTransaction transaction;

    SitesResource(SiteStore sites, Regimes regimes, ActStore acts, CurrentActor actor, TenantTransaction transaction) {
        this.sites = sites;
        this.regimes = regimes;
        this.acts = acts;
        this.actor = actor;
        this.transaction = transaction;
    }

    /**
     * A site as it is sent and shown.
     *
     * @param site code of the site
     * @param name its name
     * @param region region it belongs to
     * @param timeZone IANA name of its time zone
     * @param currency ISO 4217 code
     * @param regime code of the inspection regime where a presentation names none
     */
    public record SiteView(
            @Nullable String site,
            @Nullable String name,
            @Nullable String region,
            @Nullable String timeZone,
            @Nullable String currency,
            @Nullable String regime) {

        static SiteView of(Site site) {
            return new SiteView(
                    site.site(), site.name(), site.region(), site.zone().getId(), site.currency(), site.regime());
        }
    }

    /** Lists the sites. */
    @GET
    @Needs
    @Operation(operationId = "listSites", summary = "List the sites")
    public List<SiteView> list() {
        return transaction.call(
                actor.get().tenant(),
                () -> sites.all().stream()
                        .filter(site -> actor.get().maySee(site.site()))
                        .map(SiteView::of)
                        .toList());
    }

    /** Gets one site. */
    @GET
    @Path("/{site}")
    @Needs
    @Operation(operationId = "getSite", summary = "Get a site")
    public SiteView get(@PathParam("site") String code) {
        return transaction.call(
                actor.get().tenant(),
                () -> sites.find(code)
                        .filter(site -> actor.get().maySee(site.site()))
                        .map(SiteView::of)
                        .orElseThrow(() -> RefusedException.notFound("There is no site '" + code + "'.")));
    }

    /** Makes or changes a site. */
    @PUT
    @Path("/{site}")
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs(Role.ADMIN)
    @Operation(operationId = "putSite", summary = "Make or change a site")
    public SiteView put(@PathParam("site") String code, SiteView sent) {
        if (!actor.get().maySee(code)) {
            throw RefusedException.notFound("There is no site '" + code + "'.");
        }
        Site site = checked(code, sent);
        return transaction.call(actor.get().tenant(), () -> {
            refuseOtherRegion(site);
            acts.note(
                    actor.get().name(),
                    Act.SITE_SAVED,
                    code,
                    Map.of(
                            "timeZone", site.zone().getId(),
                            "currency", site.currency(),
                            "regime", site.regime()));
            return SiteView.of(sites.save(site));
        });
    }

    /** The region decides which layer of the policy binds a site, so that the site does not choose it. */
    private void refuseOtherRegion(Site site) {
        boolean moves = actor.get().sites() != null
                && sites.find(site.site())
                        .filter(known -> !Objects.equals(known.region(), site.region()))
                        .isPresent();
        if (moves) {
            throw RefusedException.notAllowed(
                    "The region of '" + site.site()
                            + "' is changed by a key of all sites, for it decides which policy binds the site. Leave it as it is.");
        }
    }

    private Site checked(String code, @Nullable SiteView sent) {
        List<Problem.Cause> causes = new ArrayList<>();
        if (sent == null) {
            throw RefusedException.invalidPayload(
                    List.of(new Problem.Cause("", "The body is empty; send name, timeZone, currency and regime.")));
        }
        if (!CODE.matcher(code).matches()) {
            causes.add(new Problem.Cause(
                    "/site", "'" + code + "' is no code of a site; use 1 to 64 of A-Z a-z 0-9 . _ ~ -."));
        }
        if (sent.site() != null && !sent.site().equals(code)) {
            causes.add(new Problem.Cause(
                    "/site", "'" + sent.site() + "' differs from '" + code + "' in the address; leave it out."));
        }
        String name = sent.name() == null ? "" : sent.name().strip();
        if (name.isEmpty() || name.length() > LONGEST_NAME) {
            causes.add(new Problem.Cause("/name", "A name of 1 to " + LONGEST_NAME + " characters is expected."));
        }
        ZoneId zone = zone(sent.timeZone(), causes);
        String currency = currency(sent.currency(), causes);
        String regime = sent.regime();
        if (regime == null || regimes.find(regime) == null) {
            causes.add(new Problem.Cause(
                    "/regime",
                    "'" + regime + "' is no regime; expected is one of " + String.join(", ", regimes.codes()) + "."));
        }
        if (!causes.isEmpty() || zone == null || currency == null || regime == null) {
            throw RefusedException.invalidPayload(causes);
        }
        return new Site(code, name, sent.region(), zone, currency, regime, 0);
    }

    private static @Nullable ZoneId zone(@Nullable String sent, List<Problem.Cause> causes) {
        if (sent != null && ZoneId.getAvailableZoneIds().contains(sent)) {
            return ZoneId.of(sent);
        }
        causes.add(new Problem.Cause(
                "/timeZone", "'" + sent + "' is no IANA time zone; expected is a name such as Europe/London."));
        return null;
    }

    private static @Nullable String currency(@Nullable String sent, List<Problem.Cause> causes) {
        if (sent != null && Currencies.isKnown(sent)) {
            return sent;
        }
        causes.add(new Problem.Cause(
                "/currency", "'" + sent + "' is no ISO 4217 currency; expected is a code such as GBP."));
        return null;
    }
}
