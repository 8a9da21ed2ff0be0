package org.axlecause.policy;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
import org.axlecause.facts.ClauseCode;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Which clauses the sites depart from, and how often. */
@Path("/v1/departures")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "policies")
public class DeparturesResource {

    private final DepartureStore departures;
    private final CurrentActor actor;
    private final TenantTransaction transaction;

    DeparturesResource(DepartureStore departures, CurrentActor actor, TenantTransaction transaction) {
        this.departures = departures;
        this.actor = actor;
        this.transaction = transaction;
    }

    /** Departures from one clause at one site. */
    @Schema(name = "DepartureCount", description = "Departures from one clause at one site.")
    record DepartureCountView(
            String clause,
            String site,

            @Schema(description = "Cases with such departures.")
            int cases,

            @Schema(description = "Departures that act.") int acting,

            @Schema(description = "Departures from a clause that is locked, or that decides no line.")
            int withoutEffect) {

        static DepartureCountView of(DepartureStore.Count count) {
            return new DepartureCountView(
                    count.clause(), count.site(), count.cases(), count.acting(), count.withoutEffect());
        }
    }

    /** Counts departures. */
    @GET
    @Needs({Role.POLICY, Role.ANALYST, Role.DESK})
    @Operation(
            operationId = "countDepartures",
            summary = "Count the departures from clauses of the policy by clause and site, the most first")
    public List<DepartureCountView> count(
            @Parameter(description = "Code of a clause.") @QueryParam("clause") @Nullable String clause,
            @QueryParam("site") @Nullable String site,
            @Parameter(description = "First day of presentation.") @QueryParam("from") @Nullable String from,
            @Parameter(description = "First day of presentation that no longer counts.") @QueryParam("to") @Nullable
                    String to) {
        Actor present = actor.get();
        if (site != null && !present.maySee(site)) {
            throw RefusedException.notFound("There is no site '" + site + "'.");
        }
        List<Problem.Cause> causes = new ArrayList<>();
        LocalDate first = day("/from", from, causes);
        LocalDate after = day("/to", to, causes);
        if (clause != null
                && Stream.of(ClauseCode.values()).map(ClauseCode::toString).noneMatch(clause::equals)) {
            causes.add(new Problem.Cause("/clause", "'" + clause + "' is no code of a clause."));
        }
        if (!causes.isEmpty()) {
            throw RefusedException.invalidPayload(causes);
        }
        return transaction.call(
                present.tenant(),
                () -> departures.count(sites(site, present.sites()), clause, first, after).stream()
                        .map(DepartureCountView::of)
                        .toList());
    }

    private static @Nullable LocalDate day(String pointer, @Nullable String sent, List<Problem.Cause> causes) {
        try {
            return sent == null ? null : LocalDate.parse(sent);
        } catch (DateTimeParseException wrong) {
            causes.add(new Problem.Cause(pointer, "'" + sent + "' is no day; expected is one such as 2026-03-02."));
            return null;
        }
    }

    private static @Nullable List<String> sites(@Nullable String site, @Nullable Set<String> own) {
        return site == null ? (own == null ? null : own.stream().sorted().toList()) : List.of(site);
    }
}
