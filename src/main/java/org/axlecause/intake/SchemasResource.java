package org.axlecause.intake;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.access.Needs;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The schemas that event data is checked against. */
@Path("/v1/schemas")
@Tag(name = "events")
public class SchemasResource {

    private static final String SCHEMA_JSON = "application/schema+json";

    private final Map<String, String> schemas = new TreeMap<>();

    SchemasResource() {
        new SchemaWords().documents().forEach((file, schema) -> schemas.put(file, schema.toPrettyString()));
    }

    @GET
    @Path("/{type}")
    @Produces({SCHEMA_JSON, MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
    @Needs
    @Operation(
            operationId = "getSchema",
            summary = "The schema of one type of event",
            description =
                    "JSON Schema 2020-12 of the data of an event. The keyword measure names the kind of a quantity"
                            + " and, in SI units, the plausible range beyond which a number must be a slip; it is no limit of the"
                            + " trade or the law.")
    @APIResponse(
            responseCode = "200",
            description = "The schema.",
            content = @Content(mediaType = SCHEMA_JSON, schema = @Schema(type = SchemaType.OBJECT)))
    @APIResponse(
            responseCode = "404",
            description = "There is no such type of event.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public Response schema(
            @Parameter(
                            description =
                                    "Type without org.axlecause., such as roller-test.recorded.v1; common.json and"
                                            + " codes.json are what the schemas share, policy.json is that of a policy.",
                            example = "roller-test.recorded.v1")
                    @PathParam("type")
                    String type) {
        String schema = schemas.get(type.endsWith(".json") ? type : type + ".json");
        if (schema == null) {
            throw RefusedException.notFound(
                    "There is no schema " + type + "; there are " + String.join(", ", schemas.keySet()) + ".");
        }
        return Response.ok(schema, SCHEMA_JSON).build();
    }
}
