package org.axlecause.catalogue;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.axlecause.access.Needs;
import org.axlecause.shared.Json;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.Sha256;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.headers.Header;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The trade knowledge of the service, read only. */
@Path("/v1/catalogue")
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Tag(name = "catalogue")
public class CatalogueResource {

    private static final String TAG = "Changes with the knowledge itself.";
    private static final String UNCHANGED = "The list still has the tag of If-None-Match.";

    private final Catalogue catalogue;

    CatalogueResource(Catalogue catalogue) {
        this.catalogue = catalogue;
    }

    @GET
    @Path("/components")
    @Needs
    @Operation(
            operationId = "listComponentsOfCatalogue",
            summary = "Parts that findings, obstacles and checks speak about")
    @APIResponse(
            responseCode = "200",
            description = "All entries.",
            headers = @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema =
                                    @Schema(
                                            type = SchemaType.ARRAY,
                                            implementation = Entries.CatalogueComponent.class)))
    @APIResponse(responseCode = "304", description = UNCHANGED)
    public Response components(@Parameter(hidden = true) @Context Request request) {
        return answer(catalogue.all(CatalogueKind.COMPONENTS), request);
    }

    @GET
    @Path("/conditions")
    @Needs
    @Operation(operationId = "listConditionsOfCatalogue", summary = "States in which parts are found")
    @APIResponse(
            responseCode = "200",
            description = "All entries.",
            headers = @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema =
                                    @Schema(
                                            type = SchemaType.ARRAY,
                                            implementation = Entries.CatalogueCondition.class)))
    @APIResponse(responseCode = "304", description = UNCHANGED)
    public Response conditions(@Parameter(hidden = true) @Context Request request) {
        return answer(catalogue.all(CatalogueKind.CONDITIONS), request);
    }

    @GET
    @Path("/checks")
    @Needs
    @Operation(operationId = "listChecksOfCatalogue", summary = "Looks and measurements, with their possible answers")
    @APIResponse(
            responseCode = "200",
            description = "All entries.",
            headers = @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(type = SchemaType.ARRAY, implementation = Entries.CatalogueCheck.class)))
    @APIResponse(responseCode = "304", description = UNCHANGED)
    public Response checks(@Parameter(hidden = true) @Context Request request) {
        return answer(catalogue.all(CatalogueKind.CHECKS), request);
    }

    @GET
    @Path("/causes")
    @Needs
    @Operation(
            operationId = "listCausesOfCatalogue",
            summary = "Causes, where they apply, what tells them and what they make the scope")
    @APIResponse(
            responseCode = "200",
            description = "All entries.",
            headers = @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(type = SchemaType.ARRAY, implementation = Entries.CatalogueCause.class)))
    @APIResponse(responseCode = "304", description = UNCHANGED)
    public Response causes(@Parameter(hidden = true) @Context Request request) {
        return answer(catalogue.all(CatalogueKind.CAUSES), request);
    }

    @GET
    @Path("/symptoms")
    @Needs
    @Operation(operationId = "listSymptomsOfCatalogue", summary = "Symptoms, and the causes that show them")
    @APIResponse(
            responseCode = "200",
            description = "All entries.",
            headers = @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(type = SchemaType.ARRAY, implementation = Entries.CatalogueSymptom.class)))
    @APIResponse(responseCode = "304", description = UNCHANGED)
    public Response symptoms(@Parameter(hidden = true) @Context Request request) {
        return answer(catalogue.all(CatalogueKind.SYMPTOMS), request);
    }

    @GET
    @Path("/regimes")
    @Needs
    @Operation(operationId = "listRegimesOfCatalogue", summary = "Inspection regimes with their dated, sourced values")
    @APIResponse(
            responseCode = "200",
            description = "All entries.",
            headers = @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(type = SchemaType.ARRAY, implementation = Entries.CatalogueRegime.class)))
    @APIResponse(responseCode = "304", description = UNCHANGED)
    public Response regimes(@Parameter(hidden = true) @Context Request request) {
        return answer(catalogue.all(CatalogueKind.REGIMES), request);
    }

    @GET
    @Path("/rules")
    @Needs
    @Operation(operationId = "listRulesOfCatalogue", summary = "Rules of the rule base")
    @APIResponse(
            responseCode = "200",
            description = "All entries.",
            headers = @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(type = SchemaType.ARRAY, implementation = Entries.CatalogueRule.class)))
    @APIResponse(responseCode = "304", description = UNCHANGED)
    public Response rules(@Parameter(hidden = true) @Context Request request) {
        return answer(catalogue.all(CatalogueKind.RULES), request);
    }

    @GET
    @Path("/cautions")
    @Needs
    @Operation(operationId = "listCautionsOfCatalogue", summary = "Cautions and the steps that they belong before")
    @APIResponse(
            responseCode = "200",
            description = "All entries.",
            headers = @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(type = SchemaType.ARRAY, implementation = Entries.CatalogueCaution.class)))
    @APIResponse(responseCode = "304", description = UNCHANGED)
    public Response cautions(@Parameter(hidden = true) @Context Request request) {
        return answer(catalogue.all(CatalogueKind.CAUTIONS), request);
    }

    @GET
    @Path("/steps")
    @Needs
    @Operation(operationId = "listStepsOfCatalogue", summary = "Steps of work")
    @APIResponse(
            responseCode = "200",
            description = "All entries.",
            headers = @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(type = SchemaType.ARRAY, implementation = Entries.CatalogueStep.class)))
    @APIResponse(responseCode = "304", description = UNCHANGED)
    public Response steps(@Parameter(hidden = true) @Context Request request) {
        return answer(catalogue.all(CatalogueKind.STEPS), request);
    }

    @GET
    @Path("/settings")
    @Needs
    @Operation(
            operationId = "listSettingsOfCatalogue",
            summary = "Values that belong to no single code: weighing, reading of figures, baseline policy")
    @APIResponse(
            responseCode = "200",
            description = "All entries.",
            headers = @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(type = SchemaType.ARRAY, implementation = Entries.CatalogueSetting.class)))
    @APIResponse(responseCode = "304", description = UNCHANGED)
    public Response settings(@Parameter(hidden = true) @Context Request request) {
        return answer(catalogue.all(CatalogueKind.SETTINGS), request);
    }

    @GET
    @Path("/{kind}/{code}")
    @Needs
    @Operation(operationId = "getEntryOfCatalogue", summary = "One entry of a list of the catalogue")
    @APIResponse(
            responseCode = "200",
            description = "The entry, as in its list.",
            headers = @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema =
                                    @Schema(
                                            oneOf = {
                                                Entries.CatalogueComponent.class,
                                                Entries.CatalogueCondition.class,
                                                Entries.CatalogueCheck.class,
                                                Entries.CatalogueCause.class,
                                                Entries.CatalogueSymptom.class,
                                                Entries.CatalogueRegime.class,
                                                Entries.CatalogueRule.class,
                                                Entries.CatalogueCaution.class,
                                                Entries.CatalogueStep.class,
                                                Entries.CatalogueSetting.class,
                                            })))
    @APIResponse(responseCode = "304", description = "The entry still has the tag of If-None-Match.")
    @APIResponse(
            responseCode = "404",
            description = "There is no such list or no such code in it.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public Response entry(
            @Parameter(description = "Name of the list, such as causes.") @PathParam("kind") String kind,
            @Parameter(description = "Code of the entry; of a rule, its id.") @PathParam("code") String code,
            @Parameter(hidden = true) @Context Request request) {
        CatalogueKind list = CatalogueKind.of(kind)
                .orElseThrow(() -> RefusedException.notFound("The catalogue has no list '" + kind
                        + "'; it has "
                        + Arrays.stream(CatalogueKind.values())
                                .map(CatalogueKind::toString)
                                .collect(Collectors.joining(", "))
                        + "."));
        return answer(
                catalogue
                        .find(list, code)
                        .orElseThrow(() -> RefusedException.notFound("There is no '" + code + "' among the " + kind
                                + "; /v1/catalogue/" + kind + " lists them.")),
                request);
    }

    private static Response answer(Object body, Request request) {
        String json = Json.text(body);
        EntityTag tag = new EntityTag(Sha256.tagOf(json));
        Response.ResponseBuilder unchanged = request.evaluatePreconditions(tag);
        Response.ResponseBuilder answer = unchanged == null ? Response.ok(json, MediaType.APPLICATION_JSON) : unchanged;
        return answer.tag(tag)
                .header(HttpHeaders.CACHE_CONTROL, "private, no-cache")
                .build();
    }
}
