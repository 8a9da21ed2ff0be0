package org.axlecause.intake;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
import org.axlecause.casefile.CaseFormat;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Judging without storing. */
@Path("/v1/assessments")
@Tag(name = "assessments")
public class AssessmentsResource {

    private final Reception reception;
    private final AssessEvents assessEvents;
    private final CurrentActor current;

    AssessmentsResource(Reception reception, AssessEvents assessEvents, CurrentActor current) {
        this.reception = reception;
        this.assessEvents = assessEvents;
        this.current = current;
    }

    @POST
    @Consumes(MediaType.WILDCARD)
    @Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
    @Needs({Role.SENDER, Role.TECHNICIAN, Role.DESK, Role.POLICY, Role.ANALYST})
    @Operation(
            operationId = "postAssessment",
            summary = "Judge the events of one case and store nothing",
            description = "The same judgement as for stored events. Any bad event refuses the whole; pointers in the"
                    + " problem begin with the event's place in the batch.")
    @RequestBody(
            required = true,
            content = {
                @Content(
                        mediaType = "application/cloudevents-batch+json",
                        schema =
                                @Schema(
                                        type = SchemaType.ARRAY,
                                        implementation = EventFormat.class,
                                        minItems = 1,
                                        maxItems = Reception.MOST_EVENTS)),
                @Content(
                        mediaType = "application/cloudevents+json",
                        schema = @Schema(implementation = EventFormat.class))
            })
    @APIResponse(
            responseCode = "200",
            description = "The case document.",
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(implementation = CaseFormat.class)))
    @APIResponse(
            responseCode = "400",
            description = "The JSON can't be read, or an envelope is wrong.",
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
            responseCode = "422",
            description = "An event is wrong, or the events are of several cases.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public Response post(
            @Parameter(hidden = true) @Context HttpHeaders headers,
            @Parameter(
                            description = "Day of policy and limits; without it the day of the presentation.",
                            schema = @Schema(type = SchemaType.STRING, format = "date"))
                    @QueryParam("asOf")
                    @Nullable
                    String asOf,
            byte @Nullable [] body) {
        Reception.Message message = reception.message(
                headers.getHeaderString(HttpHeaders.CONTENT_TYPE),
                headers.getRequestHeaders(),
                body == null ? new byte[0] : body);
        String document = assessEvents.assess(message.attempts(), day(asOf), current.get());
        return Response.ok(document, MediaType.APPLICATION_JSON).build();
    }

    private static @Nullable LocalDate day(@Nullable String text) {
        if (text == null || text.isBlank()) {
            return null;
        }
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException e) {
            throw RefusedException.invalidPayload(List.of(new Problem.Cause(
                    "/asOf", "`asOf` is \"" + text + "\"; expected is a day such as 2026-03-02. Correct it.")));
        }
    }
}
