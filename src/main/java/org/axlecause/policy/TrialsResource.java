package org.axlecause.policy;

import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
import org.axlecause.policy.TrialViews.SideBySide;
import org.axlecause.policy.TrialViews.TrialView;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What a draft would have done to past cases. */
@Path("/v1/trials")
@Produces(MediaType.APPLICATION_JSON)
@Needs(Role.POLICY)
@Tag(name = "policies")
public class TrialsResource {

    private final TryPolicies tryPolicies;
    private final CurrentActor actor;

    TrialsResource(TryPolicies tryPolicies, CurrentActor actor) {
        this.tryPolicies = tryPolicies;
        this.actor = actor;
    }

    /** Gets a trial. */
    @GET
    @Path("/{trial}")
    @Operation(operationId = "getPolicyTrial", summary = "Get a trial with its progress and what it has found so far")
    public TrialView get(@PathParam("trial") String id) {
        return TrialView.of(tryPolicies.find(id, actor.get()));
    }

    /** Cancels a trial. */
    @DELETE
    @Path("/{trial}")
    @Operation(
            operationId = "cancelPolicyTrial",
            summary = "Cancel a trial",
            description = "What it has found so far stays; one that has ended is left as it is.")
    public TrialView cancel(@PathParam("trial") String id) {
        return TrialView.of(tryPolicies.cancel(id, actor.get()));
    }

    /** Shows a case side by side. */
    @GET
    @Path("/{trial}/cases/{reference}")
    @Operation(
            operationId = "getPolicyTrialCase",
            summary = "Get a case of a trial as both policies judge it, side by side")
    public SideBySide sideBySide(@PathParam("trial") String id, @PathParam("reference") String reference) {
        return tryPolicies.sideBySide(id, reference, actor.get());
    }
}
