package org.axlecause.access;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.eclipse.microprofile.openapi.annotations.Operation;

/** A resource of the tests that goes wrong on demand. */
@Path("/test/faulty")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
public class FaultyResource {

    /** One permit for each request that has begun to wait, and one for each that may go on. */
    static final Semaphore WAITING = new Semaphore(0);

    static final Semaphore GOING_ON = new Semaphore(0);

    private final CurrentActor actor;

    FaultyResource(CurrentActor actor) {
        this.actor = actor;
    }

    /** A body of the tests. */
    public record Body(@Min(1) int count, @NotNull List<@Valid Part> parts) {}

    /** A part of it. */
    public record Part(@NotNull String name) {}

    @GET
    @Operation(hidden = true)
    @Needs
    public String who() {
        return "\"" + actor.get().tenant() + "\"";
    }

    @GET
    @Path("fault")
    @Operation(hidden = true)
    @Needs
    public String fault() {
        throw new IllegalStateException("secret detail");
    }

    @GET
    @Path("refused")
    @Operation(hidden = true)
    @Needs
    public String refused() {
        throw RefusedException.because(
                RefusedException.Reason.INVALID_PAYLOAD,
                "unknown-site",
                "The site is unknown.",
                List.of(new Problem.Cause("/data/site", "\"x\" is no site. Make it first, or correct it.")));
    }

    @POST
    @Operation(hidden = true)
    @Needs
    public Body echo(@Valid Body body) {
        return body;
    }

    @GET
    @Path("desk")
    @Operation(hidden = true)
    @Needs(Role.DESK)
    public String desk() {
        return "\"desk\"";
    }

    @GET
    @Path("wait")
    @Operation(hidden = true)
    @Needs
    public String waiting() throws InterruptedException {
        WAITING.release();
        return GOING_ON.tryAcquire(30, TimeUnit.SECONDS) ? "\"done\"" : "\"given up\"";
    }

    @GET
    @Path("nobody")
    @Operation(hidden = true)
    public String nobody() {
        return "\"never\"";
    }
}
