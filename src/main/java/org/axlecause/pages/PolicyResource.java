package org.axlecause.pages;

import jakarta.validation.constraints.Positive;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.ReadSites;
import org.axlecause.access.Role;
import org.axlecause.policy.CountDepartures;
import org.axlecause.policy.ReadPolicies;
import org.axlecause.policy.TryPolicies;
import org.axlecause.shared.Page;
import org.axlecause.shared.RefusedException.Reason;
import org.axlecause.shared.SeeOther;
import org.jspecify.annotations.Nullable;

/** Pages on which policies are read, edited, compared, tried and published. */
@Page
@Path("/policy")
@Produces(MediaType.TEXT_HTML)
public class PolicyResource {

    private static final String SECTION = "policy";
    private static final String NAMED = "/policy/named/";

    private final ReadPolicies readPolicies;
    private final ShowPolicies showPolicies;
    private final EditLayer editLayer;
    private final TryPolicies tryPolicies;
    private final CountDepartures countDepartures;
    private final ReadSites readSites;
    private final Frames frames;
    private final Forms forms;
    private final CurrentActor current;

    PolicyResource(
            ReadPolicies readPolicies,
            ShowPolicies showPolicies,
            EditLayer editLayer,
            TryPolicies tryPolicies,
            CountDepartures countDepartures,
            ReadSites readSites,
            Frames frames,
            Forms forms,
            CurrentActor current) {
        this.readPolicies = readPolicies;
        this.showPolicies = showPolicies;
        this.editLayer = editLayer;
        this.tryPolicies = tryPolicies;
        this.countDepartures = countDepartures;
        this.readSites = readSites;
        this.frames = frames;
        this.forms = forms;
        this.current = current;
    }

    @GET
    @Needs
    public String list() {
        return Pages.policy(
                        frames.of(SECTION),
                        showPolicies.list(current.get()),
                        ShowPolicies.mayEdit(current.get()),
                        current.get().hasAny(CountDepartures.READERS))
                .render();
    }

    /** Leads to the draft of a policy that may be new. */
    @GET
    @Path("/new")
    @Needs(Role.POLICY)
    public Response begin(@QueryParam("name") @Nullable String name) {
        return SeeOther.to(of(name == null ? "" : name.strip()) + "/draft").build();
    }

    @GET
    @Path("/named/{policy}")
    @Needs
    public String home(@PathParam("policy") String name, @QueryParam("saved") @Nullable String saved) {
        return Pages.policyNamed(frames.of(SECTION), showPolicies.home(name, current.get()), saved)
                .render();
    }

    @GET
    @Path("/named/{policy}/effective")
    @Needs
    public String effective(
            @PathParam("policy") String name,
            @QueryParam("site") @Nullable String site,
            @QueryParam("version") @Positive @Nullable Integer version) {
        return Pages.policyEffective(
                        frames.of(SECTION),
                        showPolicies.effective(name, site, version, current.get()),
                        readSites.visible(current.get()))
                .render();
    }

    @GET
    @Path("/named/{policy}/comparison")
    @Needs
    public String comparison(
            @PathParam("policy") String name,
            @QueryParam("from") @Nullable String from,
            @QueryParam("to") @Nullable String to) {
        return Pages.policyComparison(frames.of(SECTION), readPolicies.comparison(name, from, to, current.get()))
                .render();
    }

    @GET
    @Path("/named/{policy}/draft")
    @Needs(Role.POLICY)
    public String draft(
            @PathParam("policy") String name,
            @QueryParam("layer") @Nullable String layer,
            @QueryParam("saved") @Nullable String saved) {
        return Pages.policyDraft(frames.of(SECTION), editLayer.show(name, layer, current.get()), saved)
                .render();
    }

    @POST
    @Path("/named/{policy}/draft")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Needs(Role.POLICY)
    public Response write(@PathParam("policy") String name, MultivaluedMap<String, String> fields) {
        Form form = forms.received(fields);
        LayerForm again = editLayer.save(name, form, current.get());
        return again == null
                ? SeeOther.to(of(name) + "/draft?saved=now&layer=" + encoded(form.text("layer")))
                        .build()
                : Response.status((again.changes().isEmpty() ? Reason.INVALID_PAYLOAD : Reason.PRECONDITION_FAILED)
                                .status())
                        .entity(Pages.policyDraft(frames.of(SECTION), again, null)
                                .render())
                        .build();
    }

    @GET
    @Path("/named/{policy}/publication")
    @Needs(Role.POLICY)
    public String publication(@PathParam("policy") String name) {
        return Pages.policyPublication(frames.of(SECTION), showPolicies.publication(name, current.get()))
                .render();
    }

    @POST
    @Path("/named/{policy}/publication")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Needs(Role.POLICY)
    public Response publish(@PathParam("policy") String name, MultivaluedMap<String, String> fields) {
        PublicationForm again = showPolicies.publish(name, forms.received(fields), current.get());
        return again == null
                ? SeeOther.to(of(name) + "?saved=published").build()
                : Response.status(Reason.INVALID_PAYLOAD.status())
                        .entity(Pages.policyPublication(frames.of(SECTION), again)
                                .render())
                        .build();
    }

    @POST
    @Path("/named/{policy}/trials")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Needs(Role.POLICY)
    public Response tryOut(@PathParam("policy") String name, MultivaluedMap<String, String> fields) {
        String trial = showPolicies.begin(name, forms.received(fields), current.get());
        return SeeOther.to("/policy/trials/" + trial).build();
    }

    @GET
    @Path("/trials/{trial}")
    @Needs(Role.POLICY)
    public String trial(@PathParam("trial") String id) {
        return Pages.policyTrial(frames.of(SECTION), showPolicies.trial(id, current.get()))
                .render();
    }

    @POST
    @Path("/trials/{trial}/end")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Needs(Role.POLICY)
    public Response cancel(@PathParam("trial") String id, MultivaluedMap<String, String> fields) {
        forms.received(fields);
        return SeeOther.to("/policy/trials/"
                        + tryPolicies.cancel(id, current.get()).id())
                .build();
    }

    @GET
    @Path("/trials/{trial}/cases/{reference}")
    @Needs(Role.POLICY)
    public String sideBySide(@PathParam("trial") String id, @PathParam("reference") String reference) {
        return Pages.policyTrialCase(frames.of(SECTION), showPolicies.sideBySide(id, reference, current.get()))
                .render();
    }

    @GET
    @Path("/departures")
    @Needs({Role.POLICY, Role.ANALYST, Role.DESK})
    public String departures(
            @QueryParam("site") @Nullable String site,
            @QueryParam("from") @Nullable String from,
            @QueryParam("to") @Nullable String to) {
        return Pages.policyDepartures(
                        frames.of(SECTION),
                        DeparturesPage.of(
                                countDepartures.count(null, named(site), named(from), named(to), current.get()),
                                readSites.visible(current.get()),
                                Objects.requireNonNullElse(site, ""),
                                Objects.requireNonNullElse(from, ""),
                                Objects.requireNonNullElse(to, "")))
                .render();
    }

    /** A parameter; null where a form sent it empty. */
    private static @Nullable String named(@Nullable String parameter) {
        return parameter == null || parameter.isEmpty() ? null : parameter;
    }

    private static String of(String name) {
        return NAMED + encoded(name);
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
