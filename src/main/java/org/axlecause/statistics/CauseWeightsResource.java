package org.axlecause.statistics;

import jakarta.validation.constraints.Positive;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
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
import org.axlecause.shared.Problem;
import org.axlecause.statistics.CauseWeightsViews.ProposalView;
import org.axlecause.statistics.CauseWeightsViews.ProposalWanted;
import org.axlecause.statistics.CauseWeightsViews.PublicationWanted;
import org.axlecause.statistics.CauseWeightsViews.VersionView;
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

/** Weights of causes that are learned from confirmed causes, proposed, and published by somebody. */
@Path("/v1/cause-weights")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "cause weights")
public class CauseWeightsResource {

    private final LearnWeights learn;
    private final PublishWeights publish;
    private final Snapshots snapshots;
    private final CurrentActor actor;

    CauseWeightsResource(LearnWeights learn, PublishWeights publish, Snapshots snapshots, CurrentActor actor) {
        this.learn = learn;
        this.publish = publish;
        this.snapshots = snapshots;
        this.actor = actor;
    }

    /** Lists the proposals. */
    @GET
    @Path("/proposals")
    @Needs({Role.ANALYST, Role.POLICY})
    @Operation(operationId = "listCauseWeightsProposals", summary = "List the proposals, the newest first")
    public List<ProposalView> proposals() {
        return learn.all(actor.get()).stream()
                .map(proposal -> ProposalView.line(proposal, snapshots.leastCell()))
                .toList();
    }

    /** Proposes weights. */
    @POST
    @Path("/proposals")
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs({Role.ANALYST, Role.POLICY})
    @Operation(
            operationId = "proposeCauseWeights",
            summary = "Learn weights of causes from the causes that were confirmed, or propose the book again",
            description =
                    "It is done in the background over the cases that have ended; the proposal shows how far it is."
                            + " Cases of some vehicles are held out and judged anew by both weights. A proposal judges nothing.")
    @APIResponse(responseCode = "202", description = "The proposal is made")
    @APIResponseSchema(value = ProposalView.class, responseCode = "202")
    @APIResponse(
            responseCode = "409",
            description = "Weights are being learned already.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public RestResponse<ProposalView> propose(@Nullable ProposalWanted wanted) {
        Proposal proposal = learn.propose(wanted == null ? null : wanted.weights(), actor.get());
        return ResponseBuilder.<ProposalView>create(RestResponse.Status.ACCEPTED)
                .location(URI.create("/v1/cause-weights/proposals/" + proposal.id()))
                .entity(ProposalView.whole(proposal, snapshots.leastCell()))
                .tag(tag(proposal))
                .build();
    }

    /** Gets a proposal. */
    @GET
    @Path("/proposals/{proposal}")
    @Needs({Role.ANALYST, Role.POLICY})
    @Operation(
            operationId = "getCauseWeightsProposal",
            summary = "Get a proposal: book and learned weights side by side, and how both fit the cases held out")
    @APIResponse(responseCode = "200", description = "The proposal, with its state as ETag")
    @APIResponseSchema(value = ProposalView.class, responseCode = "200")
    @APIResponse(responseCode = "304", description = "The proposal still has the tag of If-None-Match.")
    public RestResponse<ProposalView> proposal(
            @PathParam("proposal") String id, @Parameter(hidden = true) @Context Request request) {
        Proposal proposal = learn.find(id, actor.get());
        return request.evaluatePreconditions(tag(proposal)) == null
                ? view(proposal)
                : ResponseBuilder.<ProposalView>notModified().tag(tag(proposal)).build();
    }

    /** Withdraws a proposal. */
    @DELETE
    @Path("/proposals/{proposal}")
    @Needs({Role.ANALYST, Role.POLICY})
    @Operation(
            operationId = "withdrawCauseWeightsProposal",
            summary = "Withdraw a proposal",
            description = "It stays in the list with what it has found so far, and can't be published any more.")
    @APIResponse(responseCode = "200", description = "The proposal as it stands now, with its state as ETag")
    @APIResponseSchema(value = ProposalView.class, responseCode = "200")
    @APIResponse(
            responseCode = "409",
            description = "The proposal was published.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public RestResponse<ProposalView> withdraw(@PathParam("proposal") String id) {
        return view(learn.withdraw(id, actor.get()));
    }

    /** Lists the versions. */
    @GET
    @Path("/versions")
    @Needs({Role.ANALYST, Role.POLICY})
    @Operation(
            operationId = "listCauseWeightsVersions",
            summary = "List the published weights of causes, the newest first, with who published them when and why")
    public List<VersionView> versions() {
        return publish.all(actor.get());
    }

    /** Publishes a proposal. */
    @POST
    @Path("/versions")
    @Consumes(MediaType.APPLICATION_JSON)
    @Needs(Role.POLICY)
    @Operation(
            operationId = "publishCauseWeights",
            summary = "Publish a proposal as the next version",
            description = "A version never changes and judges the cases of all sites that are presented from its first"
                    + " moment on. Where a policy wants two persons, the one who proposed it can't publish it.")
    @APIResponse(responseCode = "201", description = "The version")
    @APIResponseSchema(value = VersionView.class, responseCode = "201")
    @APIResponse(
            responseCode = "409",
            description = "The proposal isn't one that can be published.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    @APIResponse(
            responseCode = "412",
            description = "The proposal has changed since the state of If-Match.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    @APIResponse(
            responseCode = "428",
            description = "If-Match is missing.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public RestResponse<VersionView> publish(
            @Parameter(description = "ETag of the proposal, or *.") @HeaderParam(HttpHeaders.IF_MATCH) @Nullable
                    String expected,
            @Nullable PublicationWanted wanted) {
        VersionView version = publish.publish(expected, wanted, actor.get());
        return ResponseBuilder.<VersionView>created(URI.create("/v1/cause-weights/versions/" + version.version()))
                .entity(version)
                .build();
    }

    /** Gets a version. */
    @GET
    @Path("/versions/{version}")
    @Needs({Role.ANALYST, Role.POLICY})
    @Operation(operationId = "getCauseWeightsVersion", summary = "Get a version with its weights")
    public VersionView version(@PathParam("version") @Positive int version) {
        return publish.find(version, actor.get());
    }

    private RestResponse<ProposalView> view(Proposal proposal) {
        return ResponseBuilder.ok(ProposalView.whole(proposal, snapshots.leastCell()))
                .tag(tag(proposal))
                .build();
    }

    private static EntityTag tag(Proposal proposal) {
        return new EntityTag(proposal.tag());
    }
}
