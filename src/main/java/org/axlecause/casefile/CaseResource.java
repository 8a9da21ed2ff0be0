package org.axlecause.casefile;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
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
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
import org.axlecause.shared.Json;
import org.axlecause.shared.Problem;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.headers.Header;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Cases out. */
@Path("/v1/cases")
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Tag(name = "cases")
public class CaseResource {

    private static final String NEXT =
            "Where there is more: the address of the next page with rel=\"next\" (RFC 8288).";

    private final ReadCases readCases;
    private final JudgeAgain judgeAgain;
    private final CurrentActor current;

    CaseResource(ReadCases readCases, JudgeAgain judgeAgain, CurrentActor current) {
        this.readCases = readCases;
        this.judgeAgain = judgeAgain;
        this.current = current;
    }

    @GET
    @Needs
    @Operation(operationId = "listCases", summary = "Cases, newest first")
    @APIResponse(
            responseCode = "200",
            description = "A page of cases.",
            headers = @Header(name = "Link", description = NEXT, schema = @Schema(type = SchemaType.STRING)),
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(implementation = CaseViews.CaseList.class)))
    @APIResponse(
            responseCode = "422",
            description = "A parameter is wrong.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public Response list(
            @Parameter(description = "Code of a site.") @QueryParam("site") @Nullable String site,
            @Parameter(description = "Status of the case.") @QueryParam("status") @Nullable String status,
            @Parameter(description = "Code of a cause that is not ruled out.") @QueryParam("cause") @Nullable
                    String cause,
            @Parameter(
                            description = "First day of opening, in the time zone of the site.",
                            schema = @Schema(type = SchemaType.STRING, format = "date"))
                    @QueryParam("from")
                    @Nullable
                    String from,
            @Parameter(
                            description = "Day after the last day of opening, in the time zone of the site.",
                            schema = @Schema(type = SchemaType.STRING, format = "date"))
                    @QueryParam("to")
                    @Nullable
                    String to,
            @Parameter(
                            description =
                                    "How the last judging went: none, done, or failed for cases that wait to be judged"
                                            + " again.")
                    @QueryParam("judging")
                    @Nullable
                    String judging,
            @Parameter(description = "Part of reference, make or model.") @QueryParam("q") @Nullable String words,
            @Parameter(description = "Size of a page, 1 to 200; 50 without it.") @QueryParam("limit") @Nullable
                    String limit,
            @Parameter(description = "From a Link header of this list.") @QueryParam("cursor") @Nullable String cursor,
            @Parameter(hidden = true) @Context UriInfo uri) {
        CasePage page = readCases.list(
                new CasesWanted(site, status, cause, from, to, judging, words, limit, cursor), current.get());
        return answer(
                new CaseViews.CaseList(
                        page.cases().stream().map(CaseViews.CaseLine::of).toList()),
                page.next(),
                uri);
    }

    @GET
    @Path("/{reference}")
    @Needs
    @Operation(
            operationId = "getCase",
            summary = "The case document",
            description =
                    "Figures, deficiencies, symptoms, causes with their chains, next checks, scope, plan, cautions,"
                            + " fitness, verification and questions, each with its reasons. Advice for competent persons, never a"
                            + " certificate. A member judging says failed where judging the latest events faulted; the document"
                            + " is the last judgement then.")
    @APIResponse(
            responseCode = "200",
            description = "The case document.",
            headers =
                    @Header(
                            name = "ETag",
                            description = "Strong tag of exactly this document.",
                            schema = @Schema(type = SchemaType.STRING)),
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(implementation = CaseFormat.class)))
    @APIResponse(responseCode = "304", description = "The document still has the tag of If-None-Match.")
    @APIResponse(
            responseCode = "403",
            description = "The case belongs to a site that the key may not see.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    @APIResponse(
            responseCode = "404",
            description = "There is no such case.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public Response find(
            @Parameter(description = "Reference of the case.") @PathParam("reference") String reference,
            @Parameter(hidden = true) @Context Request request) {
        ServedCase served = readCases.find(reference, current.get());
        EntityTag tag = new EntityTag(served.tag());
        Response.ResponseBuilder unchanged = request.evaluatePreconditions(tag);
        return unchanged == null ? document(served) : unchanged.tag(tag).build();
    }

    @GET
    @Path("/{reference}/events")
    @Needs
    @Operation(operationId = "listEventsOfCase", summary = "The history of a case as it was received")
    @APIResponse(
            responseCode = "200",
            description = "A page of events, latest arrival first.",
            headers = @Header(name = "Link", description = NEXT, schema = @Schema(type = SchemaType.STRING)),
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(implementation = CaseViews.EventList.class)))
    @APIResponse(
            responseCode = "404",
            description = "There is no such case.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public Response events(
            @Parameter(description = "Reference of the case.") @PathParam("reference") String reference,
            @Parameter(description = "Size of a page, 1 to 200; 50 without it.") @QueryParam("limit") @Nullable
                    String limit,
            @Parameter(description = "From a Link header of this list.") @QueryParam("cursor") @Nullable String cursor,
            @Parameter(hidden = true) @Context UriInfo uri) {
        CaseQuery query = new CaseQuery();
        int size = query.limit(limit);
        int before = query.before(cursor);
        query.check();
        List<StoredEvent> found = readCases.history(reference, current.get()).stream()
                .filter(event -> event.position() < before)
                .toList();
        List<StoredEvent> page = CaseQuery.page(found, size);
        String next = found.size() > size ? Integer.toString(page.get(size - 1).position()) : null;
        return answer(
                new CaseViews.EventList(
                        page.stream().map(CaseViews.EventLine::of).toList()),
                next,
                uri);
    }

    @GET
    @Path("/{reference}/judgements")
    @Needs
    @Operation(
            operationId = "listJudgementsOfCase",
            summary = "The judgements of a case that people acted on: at decisions and at closing")
    @APIResponse(
            responseCode = "200",
            description = "A page of judgements, latest first.",
            headers = @Header(name = "Link", description = NEXT, schema = @Schema(type = SchemaType.STRING)),
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(implementation = CaseViews.JudgementList.class)))
    @APIResponse(
            responseCode = "404",
            description = "There is no such case.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public Response judgements(
            @Parameter(description = "Reference of the case.") @PathParam("reference") String reference,
            @Parameter(description = "Size of a page, 1 to 200; 50 without it.") @QueryParam("limit") @Nullable
                    String limit,
            @Parameter(description = "From a Link header of this list.") @QueryParam("cursor") @Nullable String cursor,
            @Parameter(hidden = true) @Context UriInfo uri) {
        CaseQuery query = new CaseQuery();
        int size = query.limit(limit);
        int before = query.before(cursor);
        query.check();
        List<PastJudgement> all = readCases.judgements(reference, current.get());
        int first = Math.max(0, all.size() - before);
        List<PastJudgement> found = all.subList(Math.min(first, all.size()), all.size());
        List<PastJudgement> page = CaseQuery.page(found, size);
        String next = found.size() > size ? Integer.toString(found.size() - size) : null;
        return answer(
                new CaseViews.JudgementList(
                        page.stream().map(CaseViews.JudgementLine::of).toList()),
                next,
                uri);
    }

    @POST
    @Path("/{reference}/judgements")
    @Needs(Role.TECHNICIAN)
    @Operation(
            operationId = "judgeCaseAgain",
            summary = "Judge a case again",
            description = "After a fault of judging, or by a newer rule base. The history stays as it is.")
    @APIResponse(
            responseCode = "200",
            description = "The case document.",
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(implementation = CaseFormat.class)))
    @APIResponse(
            responseCode = "404",
            description = "There is no such case.",
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public Response judge(@Parameter(description = "Reference of the case.") @PathParam("reference") String reference) {
        return document(judgeAgain.judge(reference, current.get()));
    }

    private static Response document(ServedCase served) {
        return Response.ok(served.json(), MediaType.APPLICATION_JSON)
                .tag(new EntityTag(served.tag()))
                .header(HttpHeaders.CACHE_CONTROL, "private, no-cache")
                .build();
    }

    private static Response answer(Object body, @Nullable String next, UriInfo uri) {
        Response.ResponseBuilder answer = Response.ok(Json.text(body), MediaType.APPLICATION_JSON);
        if (next != null) {
            String address = uri.getRequestUriBuilder()
                    .replaceQueryParam("cursor", next)
                    .build()
                    .toString();
            answer.header(HttpHeaders.LINK, "<" + address + ">; rel=\"next\"");
        }
        return answer.build();
    }
}
