package org.axlecause.pages;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.Variant;
import java.util.List;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
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
import org.jspecify.annotations.Nullable;

/** Sheets of a case, to be read on a screen or printed. */
@Path("/v1/cases/{reference}/report")
@Tag(name = "cases")
public class ReportResource {

    static final String PDF = "application/pdf";
    private static final MediaType PDF_TYPE = new MediaType("application", "pdf");
    private static final MediaType HTML_TYPE = MediaType.TEXT_HTML_TYPE.withCharset("UTF-8");
    /** A sheet brings all that it shows and runs nothing. */
    private static final String NOTHING_FROM_ELSEWHERE = "default-src 'none'; style-src 'unsafe-inline'";

    private final PrintSheet printSheet;
    private final CurrentActor current;

    ReportResource(PrintSheet printSheet, CurrentActor current) {
        this.printSheet = printSheet;
        this.current = current;
    }

    @GET
    @Produces({MediaType.TEXT_HTML, PDF})
    @Needs({Role.SENDER, Role.TECHNICIAN, Role.DESK})
    @Operation(
            operationId = "getReportOfCase",
            summary = "The customer's sheet or the workshop's sheet",
            description =
                    "HTML or, by Accept, PDF on A4. The customer's sheet says in plain words what is wrong, shows the two"
                            + " wheels before and after, what is required, what is recommended, what it costs and what declining"
                            + " means. The workshop's sheet has the plan with its cautions and tools. Advice for a competent"
                            + " person, never a certificate.")
    @APIResponse(
            responseCode = "200",
            description = "The sheet.",
            headers =
                    @Header(
                            name = "ETag",
                            description = "Strong tag of exactly this sheet.",
                            schema = @Schema(type = SchemaType.STRING)),
            content = {
                @Content(mediaType = MediaType.TEXT_HTML, schema = @Schema(type = SchemaType.STRING)),
                @Content(mediaType = PDF, schema = @Schema(type = SchemaType.STRING, format = "binary"))
            })
    @APIResponse(responseCode = "304", description = "The sheet still has the tag of If-None-Match.")
    @APIResponse(
            responseCode = "404",
            description = "There is no such case.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    @APIResponse(
            responseCode = "406",
            description = "Accept names neither HTML nor PDF.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    @APIResponse(
            responseCode = "422",
            description = "The audience is neither customer nor workshop.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public Response report(
            @Parameter(description = "Reference of the case.") @PathParam("reference") String reference,
            @Parameter(description = "Whom it is for: customer, which it is without it, or workshop.")
                    @QueryParam("audience")
                    @Nullable
                    String audience,
            @Parameter(hidden = true) @Context Request request) {
        Audience whom =
                audience == null ? Audience.CUSTOMER : Audience.of(audience).orElseThrow(() -> unknown(audience));
        Variant variant = request.selectVariant(
                List.of(new Variant(HTML_TYPE, (String) null, null), new Variant(PDF_TYPE, (String) null, null)));
        boolean pdf = variant != null && PDF_TYPE.isCompatible(variant.getMediaType());
        PrintSheet.Printed printed = printSheet.sheet(reference, whom, Medium.FILE, current.get());
        EntityTag tag = new EntityTag(Sha256.tagOf(printed.html()) + (pdf ? "-pdf" : "-html"));
        Response.ResponseBuilder unchanged = request.evaluatePreconditions(tag);
        Response.ResponseBuilder answer = unchanged == null ? sheet(printed, pdf, reference, whom) : unchanged;
        return answer.tag(tag)
                .header(HttpHeaders.CACHE_CONTROL, "private, no-cache")
                .header(HttpHeaders.VARY, HttpHeaders.ACCEPT)
                .build();
    }

    /** The answer that shows a sheet; it takes its own policy along, since a sheet is set by the style that it brings. */
    static Response.ResponseBuilder sheet(PrintSheet.Printed printed, boolean pdf, String reference, Audience whom) {
        Response.ResponseBuilder answer =
                pdf ? Response.ok(printed.pdf(), PDF_TYPE) : Response.ok(printed.html(), HTML_TYPE);
        return answer.header("Content-Security-Policy", NOTHING_FROM_ELSEWHERE)
                .header("X-Content-Type-Options", "nosniff")
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "inline; filename=\"" + reference + "-" + whom + (pdf ? ".pdf" : ".html") + "\"");
    }

    private static RefusedException unknown(String audience) {
        return RefusedException.invalidPayload(List.of(new Problem.Cause(
                "/audience", "'" + audience + "' is no audience; expected is customer or workshop.")));
    }
}
