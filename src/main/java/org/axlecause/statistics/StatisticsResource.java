package org.axlecause.statistics;

import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.EntityTag;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import jakarta.ws.rs.core.Variant;
import java.util.List;
import org.axlecause.access.Actor;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
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

/** Questions over many cases. */
@Path("/v1/statistics")
@Produces({MediaType.APPLICATION_JSON, StatisticsResource.CSV, Problem.MEDIA_TYPE})
@Needs(Role.ANALYST)
@Tag(name = "statistics")
public class StatisticsResource {

    static final String CSV = "text/csv";
    static final String SVG = "image/svg+xml";

    private static final MediaType CSV_TYPE = new MediaType("text", "csv").withCharset("UTF-8");
    private static final MediaType SVG_TYPE = new MediaType("image", "svg+xml");

    /** A chart brings all that it shows and runs nothing. */
    private static final String NOTHING_FROM_ELSEWHERE = "default-src 'none'";

    private static final String TAG = "Weak tag of the data behind the answer.";
    private static final String NEXT =
            "Where there is more: the address of the next page with rel=\"next\" (RFC 8288).";
    private static final String UNCHANGED = "The data behind the answer still has the tag of If-None-Match.";
    private static final String WRONG = "A parameter is wrong; the nearest valid words are told.";

    private final AskStatistics statistics;
    private final Snapshots snapshots;
    private final CurrentActor current;

    StatisticsResource(AskStatistics statistics, Snapshots snapshots, CurrentActor current) {
        this.statistics = statistics;
        this.snapshots = snapshots;
        this.current = current;
    }

    /** Which cases are asked about. */
    public static class CohortParameters {
        @Parameter(
                description = "First day of presentation, in the time zone of the site.",
                schema = @Schema(type = SchemaType.STRING, format = "date"))
        @QueryParam("from")
        @Nullable
        String from;

        @Parameter(
                description = "Day after the last day of presentation, in the time zone of the site.",
                schema = @Schema(type = SchemaType.STRING, format = "date"))
        @QueryParam("to")
        @Nullable
        String to;

        @Parameter(description = "Seasons of the presentation, such as december-to-february.")
        @QueryParam("season")
        @Nullable
        List<String> season;

        @Parameter(description = "Codes of sites.")
        @QueryParam("site")
        @Nullable
        List<String> site;

        @Parameter(description = "Regions of sites.")
        @QueryParam("region")
        @Nullable
        List<String> region;

        @Parameter(description = "Makes, as senders write them.")
        @QueryParam("make")
        @Nullable
        List<String> make;

        @Parameter(description = "Models, as senders write them.")
        @QueryParam("model")
        @Nullable
        List<String> model;

        @Parameter(description = "Categories of vehicles, such as M1.")
        @QueryParam("category")
        @Nullable
        List<String> category;

        @Parameter(description = "Layouts of the wheel brakes, of the axles from the front joined by + or of one axle.")
        @QueryParam("layout")
        @Nullable
        List<String> layout;

        @Parameter(description = "Bands of age, such as 8-to-11.")
        @QueryParam("ageBand")
        @Nullable
        List<String> ageBand;

        @Parameter(description = "Bands of distance, such as 100000-to-149999.")
        @QueryParam("odometerBand")
        @Nullable
        List<String> odometerBand;

        @Parameter(description = "Codes of regimes.")
        @QueryParam("regime")
        @Nullable
        List<String> regime;
    }

    /** Causes. */
    @GET
    @Path("/causes")
    @Produces({MediaType.APPLICATION_JSON, CSV, SVG, Problem.MEDIA_TYPE})
    @Operation(
            operationId = "getCauseStatistics",
            summary = "Why brakes fail: causes of the cases that have ended",
            description =
                    "Each number with how many cases stand behind it; cases without a confirmed cause are a row of"
                            + " their own.")
    @APIResponse(
            responseCode = "200",
            description = "The answer, as of a stated moment.",
            headers = {
                @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
                @Header(name = "Link", description = NEXT, schema = @Schema(type = SchemaType.STRING))
            },
            content = {
                @Content(
                        mediaType = MediaType.APPLICATION_JSON,
                        schema = @Schema(implementation = StatisticsViews.CauseAnswer.class)),
                @Content(mediaType = CSV, schema = @Schema(type = SchemaType.STRING)),
                @Content(mediaType = SVG, schema = @Schema(type = SchemaType.STRING))
            })
    @APIResponse(responseCode = "304", description = UNCHANGED)
    @APIResponse(
            responseCode = "422",
            description = WRONG,
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public Response causes(
            @BeanParam CohortParameters cohort,
            @Parameter(description = "Codes of the only causes to be told.") @QueryParam("cause") @Nullable
                    List<String> cause,
            @Parameter(description = "Axle of the cause.") @QueryParam("axle") @Nullable String axle,
            @Parameter(description = "Side of the cause: left or right.") @QueryParam("side") @Nullable String side,
            @Parameter(description = "Role of the cause: root or contributing.") @QueryParam("role") @Nullable
                    String role,
            @Parameter(description = "What the shares are told apart by, two members at most.")
                    @QueryParam("by")
                    @Nullable
                    List<String> by,
            @Parameter(description = "shares, which it is without it, trend, comparison, pareto or co-occurrence.")
                    @QueryParam("part")
                    @Nullable
                    String part,
            @Parameter(
                            description =
                                    "With part=comparison: the member whose two values, or whose one value and all others,"
                                            + " are compared; or period, for this period and an earlier one.")
                    @QueryParam("compare")
                    @Nullable
                    String compare,
            @Parameter(
                            description = "With compare=period: first day of the earlier period; without it the earlier"
                                    + " one is as long and ends where this one begins.",
                            schema = @Schema(type = SchemaType.STRING, format = "date"))
                    @QueryParam("earlierFrom")
                    @Nullable
                    String earlierFrom,
            @Parameter(
                            description = "With compare=period: day after the last day of the earlier period.",
                            schema = @Schema(type = SchemaType.STRING, format = "date"))
                    @QueryParam("earlierTo")
                    @Nullable
                    String earlierTo,
            @Parameter(description = "Size of a page, 1 to 1000; 200 without it.") @QueryParam("limit") @Nullable
                    String limit,
            @Parameter(description = "From a Link header of this answer.") @QueryParam("cursor") @Nullable
                    String cursor,
            @Parameter(hidden = true) @Context Request request,
            @Parameter(hidden = true) @Context UriInfo uri) {
        return answer(Subject.CAUSES, request, uri);
    }

    /** Repairs. */
    @GET
    @Path("/repairs")
    @Operation(
            operationId = "getRepairStatistics",
            summary = "Scope lines with decisions and money, and what the tests after the work showed")
    @APIResponse(
            responseCode = "200",
            description = "The answer, as of a stated moment.",
            headers = {
                @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
                @Header(name = "Link", description = NEXT, schema = @Schema(type = SchemaType.STRING))
            },
            content = {
                @Content(
                        mediaType = MediaType.APPLICATION_JSON,
                        schema = @Schema(implementation = MoreViews.RepairAnswer.class)),
                @Content(mediaType = CSV, schema = @Schema(type = SchemaType.STRING))
            })
    @APIResponse(responseCode = "304", description = UNCHANGED)
    @APIResponse(
            responseCode = "422",
            description = WRONG,
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public Response repairs(
            @BeanParam CohortParameters cohort,
            @Parameter(description = "Codes of the only items to be told.") @QueryParam("item") @Nullable
                    List<String> item,
            @Parameter(description = "What the numbers are told apart by.") @QueryParam("by") @Nullable String by,
            @Parameter(description = "Size of a page, 1 to 1000; 200 without it.") @QueryParam("limit") @Nullable
                    String limit,
            @Parameter(description = "From a Link header of this answer.") @QueryParam("cursor") @Nullable
                    String cursor,
            @Parameter(hidden = true) @Context Request request,
            @Parameter(hidden = true) @Context UriInfo uri) {
        return answer(Subject.REPAIRS, request, uri);
    }

    /** Returns. */
    @GET
    @Path("/returns")
    @Produces({MediaType.APPLICATION_JSON, CSV, SVG, Problem.MEDIA_TYPE})
    @Operation(
            operationId = "getReturnStatistics",
            summary = "Which repairs come back: curves of Kaplan and Meier, by item, site or vehicle")
    @APIResponse(
            responseCode = "200",
            description = "The answer, as of a stated moment.",
            headers = @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
            content = {
                @Content(
                        mediaType = MediaType.APPLICATION_JSON,
                        schema = @Schema(implementation = MoreViews.ReturnAnswer.class)),
                @Content(mediaType = CSV, schema = @Schema(type = SchemaType.STRING)),
                @Content(mediaType = SVG, schema = @Schema(type = SchemaType.STRING))
            })
    @APIResponse(responseCode = "304", description = UNCHANGED)
    @APIResponse(
            responseCode = "422",
            description = WRONG,
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public Response returns(
            @BeanParam CohortParameters cohort,
            @Parameter(description = "Codes of items, one of which was worked on.") @QueryParam("item") @Nullable
                    List<String> item,
            @Parameter(description = "What the curves are told apart by: item, or a member of the cases.")
                    @QueryParam("by")
                    @Nullable
                    String by,
            @Parameter(description = "The whole curves, as without it, or the end of each alone: whole or end.")
                    @QueryParam("curve")
                    @Nullable
                    String curve,
            @Parameter(hidden = true) @Context Request request,
            @Parameter(hidden = true) @Context UriInfo uri) {
        return answer(Subject.RETURNS, request, uri);
    }

    /** Sites. */
    @GET
    @Path("/sites")
    @Produces({MediaType.APPLICATION_JSON, CSV, SVG, Problem.MEDIA_TYPE})
    @Operation(
            operationId = "getSiteStatistics",
            summary = "A funnel of the sites against what age, distance and layout of their vehicles lead to expect")
    @APIResponse(
            responseCode = "200",
            description = "The answer, as of a stated moment.",
            headers = @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
            content = {
                @Content(
                        mediaType = MediaType.APPLICATION_JSON,
                        schema = @Schema(implementation = MoreViews.SiteAnswer.class)),
                @Content(mediaType = CSV, schema = @Schema(type = SchemaType.STRING)),
                @Content(mediaType = SVG, schema = @Schema(type = SchemaType.STRING))
            })
    @APIResponse(responseCode = "304", description = UNCHANGED)
    @APIResponse(
            responseCode = "422",
            description = WRONG,
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public Response sites(
            @BeanParam CohortParameters cohort,
            @Parameter(
                            description = "not-cured-first-time, which it is without it, undetermined,"
                                    + " failed-official-test, returned or confirmed-cause.")
                    @QueryParam("measure")
                    @Nullable
                    String measure,
            @Parameter(description = "With measure=confirmed-cause: its code.") @QueryParam("cause") @Nullable
                    String cause,
            @Parameter(hidden = true) @Context Request request,
            @Parameter(hidden = true) @Context UriInfo uri) {
        return answer(Subject.SITES, request, uri);
    }

    /** Checks. */
    @GET
    @Path("/checks")
    @Produces({MediaType.APPLICATION_JSON, CSV, SVG, Problem.MEDIA_TYPE})
    @Operation(
            operationId = "getCheckStatistics",
            summary = "How often checks were made and how much they told, and how far probabilities came true")
    @APIResponse(
            responseCode = "200",
            description = "The answer, as of a stated moment.",
            headers = @Header(name = "ETag", description = TAG, schema = @Schema(type = SchemaType.STRING)),
            content = {
                @Content(
                        mediaType = MediaType.APPLICATION_JSON,
                        schema = @Schema(implementation = MoreViews.CheckAnswer.class)),
                @Content(mediaType = CSV, schema = @Schema(type = SchemaType.STRING)),
                @Content(mediaType = SVG, schema = @Schema(type = SchemaType.STRING))
            })
    @APIResponse(responseCode = "304", description = UNCHANGED)
    @APIResponse(
            responseCode = "422",
            description = WRONG,
            content = @Content(mediaType = Problem.MEDIA_TYPE, schema = @Schema(implementation = Problem.class)))
    public Response checks(
            @BeanParam CohortParameters cohort,
            @Parameter(description = "Codes of the only checks to be told.") @QueryParam("check") @Nullable
                    List<String> check,
            @Parameter(description = "Codes of the only causes whose probabilities are told.")
                    @QueryParam("cause")
                    @Nullable
                    List<String> cause,
            @Parameter(description = "arrival or before-opening: the only moment whose probabilities are told.")
                    @QueryParam("moment")
                    @Nullable
                    String moment,
            @Parameter(description = "What the numbers are told apart by.") @QueryParam("by") @Nullable String by,
            @Parameter(hidden = true) @Context Request request,
            @Parameter(hidden = true) @Context UriInfo uri) {
        return answer(Subject.CHECKS, request, uri);
    }

    private Response answer(Subject subject, Request request, UriInfo uri) {
        Actor actor = current.get();
        Asked asked = new Asked(uri.getQueryParameters());
        MediaType[] forms = subject == Subject.REPAIRS
                ? new MediaType[] {MediaType.APPLICATION_JSON_TYPE, CSV_TYPE}
                : new MediaType[] {MediaType.APPLICATION_JSON_TYPE, CSV_TYPE, SVG_TYPE};
        Variant variant = request.selectVariant(Variant.mediaTypes(forms).build());
        MediaType form = variant == null ? MediaType.APPLICATION_JSON_TYPE : variant.getMediaType();
        EntityTag tag = new EntityTag(snapshots.tag(uri.getPath(), asked, form.toString(), actor), true);
        Response.ResponseBuilder unchanged = request.evaluatePreconditions(tag);
        if (unchanged != null) {
            return unchanged.tag(tag).build();
        }
        Told told = statistics.answer(subject, asked, actor);
        Response.ResponseBuilder response = body(subject, told, form)
                .tag(tag)
                .header(HttpHeaders.VARY, HttpHeaders.ACCEPT)
                .header(HttpHeaders.CACHE_CONTROL, "private, no-cache");
        if (told.next() != null) {
            String address = uri.getRequestUriBuilder()
                    .replaceQueryParam("cursor", told.next())
                    .build()
                    .toString();
            response.header(HttpHeaders.LINK, "<" + address + ">; rel=\"next\"");
        }
        return response.build();
    }

    private Response.ResponseBuilder body(Subject subject, Told told, MediaType form) {
        if (form.isCompatible(SVG_TYPE)) {
            return Response.ok(statistics.svg(subject, told), SVG_TYPE)
                    .header("Content-Security-Policy", NOTHING_FROM_ELSEWHERE);
        }
        return form.isCompatible(CSV_TYPE)
                ? Response.ok(told.csv(), CSV_TYPE)
                : Response.ok(told.json(), MediaType.APPLICATION_JSON_TYPE);
    }
}
