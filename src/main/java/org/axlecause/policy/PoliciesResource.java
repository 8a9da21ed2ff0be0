package org.axlecause.policy;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Positive;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import java.net.URI;
import java.util.List;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
import org.axlecause.policy.PolicyViews.ComparisonView;
import org.axlecause.policy.PolicyViews.DraftView;
import org.axlecause.policy.PolicyViews.EffectiveView;
import org.axlecause.policy.PolicyViews.PolicyView;
import org.axlecause.policy.PolicyViews.PublicationView;
import org.axlecause.policy.PolicyViews.VersionView;
import org.axlecause.policy.TrialViews.TrialView;
import org.axlecause.policy.TrialViews.TrialWanted;
import org.axlecause.shared.Problem;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.jboss.resteasy.reactive.RestResponse.ResponseBuilder;
import org.jspecify.annotations.Nullable;

/** How a chain repairs: policies with their drafts and versions, and what holds at a site. */
@Path("/v1/policies")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "policies")
public class PoliciesResource {

    private static final String DRAFT_TAG = "ETag of the draft that is changed, or *; left out where there is none.";

    private final EditPolicies edit;
    private final ReadPolicies read;
    private final LayerRights rights;
    private final TryPolicies tryPolicies;
    private final CurrentActor actor;

    PoliciesResource(
            EditPolicies edit, ReadPolicies read, LayerRights rights, TryPolicies tryPolicies, CurrentActor actor) {
        this.edit = edit;
        this.read = read;
        this.rights = rights;
        this.tryPolicies = tryPolicies;
        this.actor = actor;
    }

    /** Lists the policies. */
    @GET
    @Needs
    @Operation(operationId = "listPolicies", summary = "List the policies, by name")
    public List<PolicyView> list() {
        return read.all(actor.get());
    }

    /** Gets the draft of a policy. */
    @GET
    @Path("/{policy}/draft")
    @Needs(Role.POLICY)
    @Operation(operationId = "getPolicyDraft", summary = "Get the draft of a policy")
    @APIResponse(responseCode = "200", description = "The draft, with its state as ETag")
    @APIResponseSchema(value = DraftView.class, responseCode = "200")
    @APIResponse(responseCode = "304", description = "The draft still has the tag of If-None-Match.")
    public RestResponse<DraftView> draft(
            @PathParam("policy") String name, @Parameter(hidden = true) @Context Request request) {
        PolicyDraft draft = read.draft(name, actor.get());
        return request.evaluatePreconditions(tag(draft)) == null
                ? view(draft)
                : ResponseBuilder.<DraftView>notModified().tag(tag(draft)).build();
    }

    /** Writes the draft of a policy. */
    @PUT
    @Path("/{policy}/draft")
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs(Role.POLICY)
    @Operation(
            operationId = "putPolicyDraft",
            summary = "Write the draft of a policy",
            description = "A draft judges nothing. It holds what each layer sets over the layer above; the clauses and"
                    + " what each takes are told by /v1/schemas/policy.json. A clause that is weaker than the law of a"
                    + " regime among the sites is refused, and so is one that a layer above has locked. A key of some"
                    + " sites sets the layers of these sites alone.")
    @APIResponse(responseCode = "200", description = "The draft as it stands now, with its state as ETag")
    @APIResponseSchema(value = DraftView.class, responseCode = "200")
    @APIResponse(
            responseCode = "412",
            description = "It has changed since the state of If-Match.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    @APIResponse(
            responseCode = "428",
            description = "There is a draft and If-Match is missing.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public RestResponse<DraftView> write(
            @PathParam("policy") String name,
            @Parameter(description = DRAFT_TAG) @HeaderParam(HttpHeaders.IF_MATCH) @Nullable String expected,
            @Nullable PolicyDocument document) {
        return view(edit.write(name, expected, document, actor.get()));
    }

    /** Lists the versions of a policy. */
    @GET
    @Path("/{policy}/versions")
    @Needs
    @Operation(
            operationId = "listPolicyVersions",
            summary = "List the versions of a policy, the newest first, with who published them when and why")
    public List<VersionView> versions(@PathParam("policy") String name) {
        return read.versions(name, actor.get());
    }

    /** Publishes the draft. */
    @POST
    @Path("/{policy}/versions")
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs(Role.POLICY)
    @Operation(
            operationId = "publishPolicy",
            summary = "Publish the draft of a policy as its next version",
            description =
                    "A version never changes and judges the cases that are presented from its first day on. A case"
                            + " that was presented before is moved by policy.adopted alone.")
    @APIResponse(responseCode = "201", description = "The version")
    @APIResponseSchema(value = VersionView.class, responseCode = "201")
    @APIResponse(
            responseCode = "409",
            description = "Another policy judges one of its sites from that day on.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    @APIResponse(
            responseCode = "412",
            description = "The draft has changed since the state of If-Match.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    @APIResponse(
            responseCode = "428",
            description = "If-Match is missing.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public RestResponse<VersionView> publish(
            @PathParam("policy") String name,
            @Parameter(description = "ETag of the draft, or *.") @HeaderParam(HttpHeaders.IF_MATCH) @Nullable
                    String expected,
            @Nullable PublicationView publication) {
        PolicyVersion version = edit.publish(name, expected, publication, actor.get());
        return ResponseBuilder.<VersionView>created(
                        URI.create("/v1/policies/" + name + "/versions/" + version.version()))
                .entity(VersionView.of(version, false, rights.shown(version.document(), actor.get())))
                .build();
    }

    /** Gets a version. */
    @GET
    @Path("/{policy}/versions/{version}")
    @Needs
    @Operation(operationId = "getPolicyVersion", summary = "Get a version of a policy")
    public VersionView version(@PathParam("policy") String name, @PathParam("version") @Positive int version) {
        return read.version(name, version, actor.get());
    }

    /** Shows what holds at a site. */
    @GET
    @Path("/{policy}/effective")
    @Needs
    @Operation(
            operationId = "getEffectivePolicy",
            summary = "Get every clause as it holds at a site, with the layer that its value comes from")
    public EffectiveView effective(
            @PathParam("policy") String name,
            @QueryParam("site") @NotNull String site,
            @Parameter(description = "Number of a version; without it the one in effect today.")
                    @QueryParam("version")
                    @Positive
                    @Nullable
                    Integer version) {
        return read.effective(name, site, version, actor.get());
    }

    /** Compares two versions. */
    @GET
    @Path("/{policy}/comparison")
    @Needs
    @Operation(
            operationId = "comparePolicyVersions",
            summary = "Compare two versions of a policy in words and in a table")
    public ComparisonView comparison(
            @PathParam("policy") String name,
            @Parameter(description = "Number of a version, or draft.") @QueryParam("from") @Nullable String from,
            @Parameter(description = "Number of a version, or draft.") @QueryParam("to") @Nullable String to) {
        return read.comparison(name, from, to, actor.get());
    }

    /** Begins a trial. */
    @POST
    @Path("/{policy}/trials")
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs(Role.POLICY)
    @Operation(
            operationId = "beginPolicyTrial",
            summary = "Try the draft of a policy over past cases",
            description =
                    "Each case is judged again by the policy that judges it and by the draft as it is now, both at"
                            + " today's prices and without departures. It is done in the background; the trial shows how far it is.")
    @APIResponse(responseCode = "202", description = "The trial has begun")
    @APIResponseSchema(value = TrialView.class, responseCode = "202")
    public RestResponse<TrialView> begin(@PathParam("policy") String name, @Nullable TrialWanted wanted) {
        Trial trial = tryPolicies.begin(name, wanted, actor.get());
        return ResponseBuilder.<TrialView>create(RestResponse.Status.ACCEPTED)
                .location(URI.create("/v1/trials/" + trial.id()))
                .entity(TrialView.of(trial))
                .build();
    }

    private RestResponse<DraftView> view(PolicyDraft draft) {
        return ResponseBuilder.ok(DraftView.of(draft, rights.shown(draft.document(), actor.get())))
                .tag(tag(draft))
                .build();
    }

    private static EntityTag tag(PolicyDraft draft) {
        return new EntityTag(draft.tag().toString());
    }
}
