package org.axlecause.outbound;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
import org.axlecause.outbound.SubscriptionViews.DeliveryLine;
import org.axlecause.outbound.SubscriptionViews.DeliveryList;
import org.axlecause.outbound.SubscriptionViews.ReplayBegun;
import org.axlecause.outbound.SubscriptionViews.ReplayWanted;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.jboss.resteasy.reactive.RestResponse.ResponseBuilder;
import org.jspecify.annotations.Nullable;

/** What was sent to a subscription, what wasn't, and sending it once more. */
@Path("/v1/subscriptions/{subscription}")
@Produces(MediaType.APPLICATION_JSON)
@Needs(Role.ADMIN)
@Tag(name = "administration")
public class DeliveriesResource {

    private static final int USUAL_LIMIT = 50;
    private static final int MOST = 200;
    private static final int FIRST_YEAR = 1970;
    private static final int LAST_YEAR = 9999;

    private final ManageSubscriptions manage;
    private final CurrentActor actor;

    DeliveriesResource(ManageSubscriptions manage, CurrentActor actor) {
        this.manage = manage;
        this.actor = actor;
    }

    /** Lists deliveries. */
    @GET
    @Path("/deliveries")
    @Operation(operationId = "listDeliveries", summary = "List the deliveries to a subscription, newest event first")
    @APIResponse(responseCode = "200", description = "A page; the Link header leads to the next")
    @APIResponseSchema(value = DeliveryList.class, responseCode = "200")
    public RestResponse<DeliveryList> list(
            @PathParam("subscription") String id,
            @Parameter(description = "pending, delivered or failed; all without it.") @QueryParam("state") @Nullable
                    String state,
            @Parameter(description = "Size of a page, 1 to 200; 50 without it.") @QueryParam("limit") @Nullable
                    String limit,
            @Parameter(description = "From a Link header of this list.") @QueryParam("cursor") @Nullable String cursor,
            @Parameter(hidden = true) @Context UriInfo uri) {
        List<Problem.Cause> causes = new ArrayList<>();
        DeliveryState wanted = state(state, causes);
        int size = (int) number("limit", limit, USUAL_LIMIT, MOST, causes);
        long before = number("cursor", cursor, Long.MAX_VALUE, Long.MAX_VALUE, causes);
        if (!causes.isEmpty()) {
            throw RefusedException.invalidPayload(causes);
        }
        List<DeliveryStore.Listed> found = manage.deliveries(id, wanted, before, size + 1, actor.get());
        List<DeliveryStore.Listed> page = found.subList(0, Math.min(size, found.size()));
        ResponseBuilder<DeliveryList> answer = ResponseBuilder.ok(
                new DeliveryList(page.stream().map(DeliveryLine::of).toList()));
        if (found.size() > size) {
            String next = uri.getRequestUriBuilder()
                    .replaceQueryParam("cursor", page.get(size - 1).position())
                    .build()
                    .toString();
            answer.header(HttpHeaders.LINK, "<" + next + ">; rel=\"next\"");
        }
        return answer.build();
    }

    /** Sends events once more. */
    @POST
    @Path("/replays")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            operationId = "replayEvents",
            summary = "Send events once more to a subscription",
            description = "One event, or all of a time range that the subscription asks for, whether they were"
                    + " delivered, have failed, or happened before it was made. At most 10 000 at once.")
    @APIResponse(responseCode = "202", description = "They are due now")
    @APIResponseSchema(value = ReplayBegun.class, responseCode = "202")
    public RestResponse<ReplayBegun> replay(@PathParam("subscription") String id, @Nullable ReplayWanted wanted) {
        manage.find(id, actor.get());
        int count = manage.replay(id, checked(wanted), actor.get());
        return ResponseBuilder.<ReplayBegun>accepted(new ReplayBegun(count)).build();
    }

    private static Replay checked(@Nullable ReplayWanted wanted) {
        UUID event = wanted == null ? null : wanted.event();
        OffsetDateTime from = wanted == null ? null : wanted.from();
        OffsetDateTime to = wanted == null ? null : wanted.to();
        if (event != null && from == null && to == null) {
            return Replay.of(event);
        }
        if (event == null && from != null && to != null && isStorable(from) && isStorable(to) && from.isBefore(to)) {
            return Replay.between(from, to);
        }
        throw RefusedException.invalidPayload(List.of(new Problem.Cause(
                "",
                "Send either `event` alone, or `from` and a later `to` within the years 1970 to 9999; this says neither, or"
                        + " both.")));
    }

    private static boolean isStorable(OffsetDateTime sent) {
        return sent.getYear() >= FIRST_YEAR && sent.getYear() <= LAST_YEAR;
    }

    private static @Nullable DeliveryState state(@Nullable String text, List<Problem.Cause> causes) {
        DeliveryState state = text == null ? null : DeliveryState.of(text).orElse(null);
        if (text != null && state == null) {
            causes.add(new Problem.Cause(
                    "/state", "'" + text + "' is no state of a delivery; expected is pending, delivered or failed."));
        }
        return state;
    }

    private static long number(String name, @Nullable String text, long usual, long most, List<Problem.Cause> causes) {
        if (text == null) {
            return usual;
        }
        if (text.matches("\\d{1,18}") && Long.parseLong(text) >= 1 && Long.parseLong(text) <= most) {
            return Long.parseLong(text);
        }
        causes.add(new Problem.Cause(
                "/" + name, "'" + text + "' is no number from 1 to " + most + "; correct it or leave it out."));
        return usual;
    }
}
