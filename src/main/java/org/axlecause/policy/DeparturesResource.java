package org.axlecause.policy;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
import org.axlecause.policy.CountDepartures.DepartureCountView;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Which clauses the sites depart from, and how often. */
@Path("/v1/departures")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "policies")
public class DeparturesResource {

    private final CountDepartures countDepartures;
    private final CurrentActor actor;

    DeparturesResource(CountDepartures countDepartures, CurrentActor actor) {
        this.countDepartures = countDepartures;
        this.actor = actor;
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
        return countDepartures.count(clause, site, from, to, actor.get());
    }
}
