package org.axlecause.outbound;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.CacheControl;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import java.net.URI;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
import org.axlecause.outbound.ManageSubscriptions.WithSecret;
import org.axlecause.outbound.SubscriptionViews.SecretMade;
import org.axlecause.outbound.SubscriptionViews.SubscriptionView;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;
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

/** Who is told what: each subscription names an address that events are posted to by Standard Webhooks 1.0.0. */
@Path("/v1/subscriptions")
@Produces(MediaType.APPLICATION_JSON)
@Needs(Role.ADMIN)
@Tag(name = "administration")
public class SubscriptionsResource {

    private static final String VERSION = "ETag of the version that is changed, or *.";

    private final ManageSubscriptions manage;
    private final CurrentActor actor;

    SubscriptionsResource(ManageSubscriptions manage, CurrentActor actor) {
        this.manage = manage;
        this.actor = actor;
    }

    /** Lists the subscriptions. */
    @GET
    @Operation(operationId = "listSubscriptions", summary = "List the subscriptions, the latest first")
    public List<SubscriptionView> list() {
        return manage.all(actor.get()).stream().map(SubscriptionView::of).toList();
    }

    /** Makes a subscription. */
    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            operationId = "makeSubscription",
            summary = "Make a subscription",
            description = "Events of the types are posted to the address as CloudEvents in JSON, signed by Standard"
                    + " Webhooks 1.0.0 with the secret that is shown here and never again. Those of one case come in"
                    + " their order, each at least once, with the same webhook-id at every attempt. An attempt"
                    + " succeeds with a status of 2xx within the time-out; after that it is repeated for about three"
                    + " days.")
    @APIResponse(responseCode = "201", description = "The subscription's secret, shown once")
    @APIResponseSchema(value = SecretMade.class, responseCode = "201")
    @APIResponse(
            responseCode = "422",
            description = "The address isn't one of the public internet, or a type or site is unknown.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public RestResponse<SecretMade> make(@Nullable SubscriptionWanted wanted) {
        WithSecret made = manage.make(wanted, actor.get());
        String id = made.subscription().id();
        return secret(ResponseBuilder.created(URI.create("/v1/subscriptions/" + id)), made);
    }

    /** Gets a subscription. */
    @GET
    @Path("/{subscription}")
    @Operation(operationId = "getSubscription", summary = "Get a subscription")
    @APIResponse(responseCode = "200", description = "The subscription, with its version as ETag")
    @APIResponseSchema(value = SubscriptionView.class, responseCode = "200")
    @APIResponse(responseCode = "304", description = "The subscription still has the tag of If-None-Match.")
    public RestResponse<SubscriptionView> get(
            @PathParam("subscription") String id, @Parameter(hidden = true) @Context Request request) {
        Subscription found = manage.find(id, actor.get());
        return request.evaluatePreconditions(tag(found)) == null
                ? view(found)
                : ResponseBuilder.<SubscriptionView>notModified()
                        .tag(tag(found))
                        .build();
    }

    /** Changes a subscription. */
    @PUT
    @Path("/{subscription}")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            operationId = "putSubscription",
            summary = "Change a subscription",
            description = "One that was stopped or has failed goes on when its state is set to active; events that"
                    + " happened meanwhile come by a replay.")
    @APIResponse(responseCode = "200", description = "The subscription as it stands now")
    @APIResponseSchema(value = SubscriptionView.class, responseCode = "200")
    @APIResponse(
            responseCode = "412",
            description = "It has changed since the version of If-Match.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    @APIResponse(
            responseCode = "428",
            description = "If-Match is missing.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public RestResponse<SubscriptionView> put(
            @PathParam("subscription") String id,
            @Parameter(description = VERSION) @HeaderParam(HttpHeaders.IF_MATCH) @Nullable String expected,
            @Nullable SubscriptionWanted wanted) {
        return view(manage.change(id, expectedVersion(id, expected), wanted, actor.get()));
    }

    /** Deletes a subscription. */
    @DELETE
    @Path("/{subscription}")
    @Operation(operationId = "deleteSubscription", summary = "Delete a subscription and its deliveries")
    @APIResponse(responseCode = "204", description = "The subscription is gone")
    @APIResponse(
            responseCode = "412",
            description = "It has changed since the version of If-Match.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    @APIResponse(
            responseCode = "428",
            description = "If-Match is missing.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public void delete(
            @PathParam("subscription") String id,
            @Parameter(description = VERSION) @HeaderParam(HttpHeaders.IF_MATCH) @Nullable String expected) {
        manage.remove(id, expectedVersion(id, expected), actor.get());
    }

    /** Makes a new secret. */
    @POST
    @Path("/{subscription}/secrets")
    @Operation(
            operationId = "rotateSecret",
            summary = "Make a new secret for a subscription",
            description = "For 24 hours messages are signed with both, so that the receiver can change without a gap.")
    @APIResponse(responseCode = "201", description = "The new secret, shown once")
    @APIResponseSchema(value = SecretMade.class, responseCode = "201")
    public RestResponse<SecretMade> rotate(@PathParam("subscription") String id) {
        return secret(ResponseBuilder.create(RestResponse.Status.CREATED), manage.rotate(id, actor.get()));
    }

    private int expectedVersion(String id, @Nullable String expected) {
        Subscription present = manage.find(id, actor.get());
        if (expected == null) {
            throw RefusedException.because(
                    Reason.PRECONDITION_REQUIRED,
                    "Send If-Match with the ETag of the version that you change; GET shows it.");
        }
        String tag = "\"" + present.version() + "\"";
        if (Arrays.stream(expected.split(",", -1)).map(String::strip).noneMatch(Set.of("*", tag)::contains)) {
            throw RefusedException.because(
                    Reason.PRECONDITION_FAILED,
                    "If-Match is " + expected + ", but the version is " + present.version()
                            + " now. Get the subscription again and repeat the change.");
        }
        return present.version();
    }

    private static EntityTag tag(Subscription subscription) {
        return new EntityTag(Integer.toString(subscription.version()));
    }

    private static RestResponse<SubscriptionView> view(Subscription subscription) {
        return ResponseBuilder.ok(SubscriptionView.of(subscription))
                .tag(tag(subscription))
                .build();
    }

    private static RestResponse<SecretMade> secret(ResponseBuilder<SecretMade> answer, WithSecret made) {
        CacheControl never = new CacheControl();
        never.setNoStore(true);
        return answer.entity(
                        new SecretMade(made.subscription().id(), made.secret().text()))
                .tag(tag(made.subscription()))
                .cacheControl(never)
                .build();
    }
}
