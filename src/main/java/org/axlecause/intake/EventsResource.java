package org.axlecause.intake;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.axlecause.access.Actor;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
import org.axlecause.casefile.CaseFormat;
import org.axlecause.casefile.ReadCases;
import org.axlecause.casefile.ServedCase;
import org.axlecause.shared.Json;
import org.axlecause.shared.Problem;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.ExampleObject;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Events in. */
@Path("/v1/events")
@Tag(name = "events")
public class EventsResource {

    private static final int ALL_STORED = 200;
    private static final int SOME_STORED = 207;
    private static final int NONE_STORED = 422;
    private static final int UNAVAILABLE = 503;
    private static final String RETRY_SECONDS = "2";

    private final Reception reception;
    private final AcceptEvents acceptEvents;
    private final ReadCases readCases;
    private final CurrentActor current;

    EventsResource(Reception reception, AcceptEvents acceptEvents, ReadCases readCases, CurrentActor current) {
        this.reception = reception;
        this.acceptEvents = acceptEvents;
        this.readCases = readCases;
        this.current = current;
    }

    @POST
    @Consumes(MediaType.WILDCARD)
    @Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
    @Needs({Role.SENDER, Role.TECHNICIAN, Role.DESK, Role.POLICY})
    @Operation(
            operationId = "postEvents",
            summary = "Take events in",
            description = "CloudEvents 1.0.2 over HTTP: structured, batched (at most 500 events and 1 MiB, 8 MiB where"
                    + " traces are sent) or binary with ce- headers and any JSON content type. The events of one case"
                    + " are stored and judged together. An event that was accepted before is a duplicate; the same"
                    + " source and id with other content is refused by 409. Pointers in problems lead into the event"
                    + " in the JSON format of CloudEvents. Data follows GET /v1/schemas/{type}. policy.adopted is for keys of the"
                    + " role policy, all else for those of the workshop; a departure from a locked clause is refused.")
    @RequestBody(
            required = true,
            content = {
                @Content(
                        mediaType = "application/cloudevents+json",
                        schema = @Schema(implementation = EventFormat.class),
                        examples = @ExampleObject(name = "a finding", value = """
                                                {"specversion": "1.0", "type": "org.axlecause.finding.recorded.v1",
                                                 "source": "/sites/quay-street", "id": "f-77", "subject": "QS-10482",
                                                 "time": "2026-03-02T09:40:00Z", "data": {"stage": "as-found",
                                                 "component": "hub-seal", "condition": "leaking", "axle": 2,
                                                 "side": "right", "agent": "gear-oil"}}""")),
                @Content(
                        mediaType = "application/cloudevents-batch+json",
                        schema =
                                @Schema(
                                        type = SchemaType.ARRAY,
                                        implementation = EventFormat.class,
                                        maxItems = Reception.MOST_EVENTS)),
                @Content(
                        mediaType = MediaType.APPLICATION_JSON,
                        schema =
                                @Schema(
                                        type = SchemaType.OBJECT,
                                        description = "The data of one event; its attributes are ce- headers."))
            })
    @APIResponse(
            responseCode = "200",
            description = "The receipt of a single event, or the list of receipts of a batch in its order, all accepted"
                    + " or duplicates; with Prefer: return=representation the case document.",
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(anyOf = {Receipt.class, Receipt[].class, CaseFormat.class})))
    @APIResponse(
            responseCode = "207",
            description = "The receipts of a batch of which some events were not stored.",
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(type = SchemaType.ARRAY, implementation = Receipt.class)))
    @APIResponse(
            responseCode = "422",
            description = "The problem of a single event whose data is wrong, or the receipts of a batch of which no"
                    + " event was stored.",
            content = {
                @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)),
                @Content(
                        mediaType = MediaType.APPLICATION_JSON,
                        schema = @Schema(type = SchemaType.ARRAY, implementation = Receipt.class))
            })
    @APIResponse(
            responseCode = "400",
            description = "The JSON can't be read, or the envelope of a single event is wrong.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    @APIResponse(
            responseCode = "403",
            description = "The key may not send events, or not for this site.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    @APIResponse(
            responseCode = "409",
            description = "The same source and id was accepted with other content.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    @APIResponse(
            responseCode = "413",
            description = "Too many events or bytes.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    @APIResponse(
            responseCode = "415",
            description = "The content type is none of those above.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    @APIResponse(
            responseCode = "503",
            description = "Nothing was stored; send it again after Retry-After seconds.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public Response post(
            @Parameter(hidden = true) @Context HttpHeaders headers,
            @Parameter(description = "return=representation asks for the case document (RFC 7240).")
                    @HeaderParam("Prefer")
                    @Nullable
                    String prefer,
            byte @Nullable [] body) {
        Actor actor = current.get();
        Reception.Message message = reception.message(
                headers.getHeaderString(HttpHeaders.CONTENT_TYPE),
                headers.getRequestHeaders(),
                body == null ? new byte[0] : body);
        List<Receipt> receipts = acceptEvents.accept(message.attempts(), actor);
        Optional<String> reference = Preference.wantsRepresentation(headers.getRequestHeader("Prefer"))
                ? oneCase(message.attempts(), receipts)
                : Optional.empty();
        if (reference.isPresent()) {
            ServedCase served = readCases.find(reference.get(), actor);
            return Response.ok(served.json(), MediaType.APPLICATION_JSON)
                    .header("Preference-Applied", "return=representation")
                    .header(HttpHeaders.CONTENT_LOCATION, "/v1/cases/" + reference.get())
                    .tag(served.tag())
                    .build();
        }
        return message.batch() ? batch(receipts) : single(receipts.get(0));
    }

    private static Optional<String> oneCase(List<Attempt> attempts, List<Receipt> receipts) {
        if (attempts.isEmpty() || !receipts.stream().allMatch(Receipt::isStored)) {
            return Optional.empty();
        }
        List<String> references = attempts.stream()
                .map(Attempt::event)
                .map(event -> event == null ? "" : event.subject())
                .distinct()
                .collect(Collectors.toList());
        return references.size() == 1 ? Optional.of(references.get(0)) : Optional.empty();
    }

    private static Response batch(List<Receipt> receipts) {
        long stored = receipts.stream().filter(Receipt::isStored).count();
        long refused = receipts.stream()
                .filter(receipt -> receipt.standing() == Standing.REFUSED)
                .count();
        int status = stored == receipts.size()
                ? ALL_STORED
                : refused == receipts.size() ? NONE_STORED : stored == 0 && refused == 0 ? UNAVAILABLE : SOME_STORED;
        Response.ResponseBuilder answer =
                Response.status(status).type(MediaType.APPLICATION_JSON).entity(Json.text(receipts));
        return (stored + refused < receipts.size() ? answer.header(HttpHeaders.RETRY_AFTER, RETRY_SECONDS) : answer)
                .build();
    }

    private static Response single(Receipt receipt) {
        Problem problem = receipt.problem();
        if (problem == null) {
            return Response.ok(Json.text(receipt), MediaType.APPLICATION_JSON).build();
        }
        Response.ResponseBuilder answer = Response.status(problem.status())
                .type(Problem.MEDIA_TYPE)
                .entity(Json.text(problem.about("/v1/events")));
        return (problem.status() == UNAVAILABLE ? answer.header(HttpHeaders.RETRY_AFTER, RETRY_SECONDS) : answer)
                .build();
    }
}
