package org.axlecause.audit;

import com.fasterxml.jackson.annotation.JsonRawValue;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.OffsetDateTime;
import java.util.List;
import org.axlecause.access.Actor;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Who did what when, and the signed heads of the chain that holds it. */
@Path("/v1/audit")
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Needs(Role.ADMIN)
@Tag(name = "administration")
public class AuditResource {

    private static final int MOST = 200;

    private final AuditStore store;
    private final CurrentActor current;
    private final TenantTransaction transaction;

    AuditResource(AuditStore store, CurrentActor current, TenantTransaction transaction) {
        this.store = store;
        this.current = current;
        this.transaction = transaction;
    }

    @Schema(name = "AuditLine", description = "A link of the tenant's chain.")
    record AuditLine(
            @Schema(description = "Place in the chain, from 1.")
            long position,

            @Schema(description = "When it was done; of a case head, when it was tied in.")
            OffsetDateTime notedAt,

            @Schema(description = "Id of a key, a command, or the service.")
            String actor,

            @Schema(
                    description =
                            "What was done, such as key-made; case-head says how far a case's own chain had come.")
            String action,

            @Schema(description = "What it was done to.") String object,

            @JsonRawValue @Schema(description = "What else matters.", type = SchemaType.OBJECT)
            String content,

            @Schema(description = "SHA-256 of this link behind the one before it, in hex.")
            String hash) {

        static AuditLine of(AuditStore.Stored stored) {
            AuditEntry entry = stored.entry();
            return new AuditLine(
                    entry.position(),
                    entry.notedAt(),
                    entry.actor(),
                    entry.action(),
                    entry.object(),
                    entry.content(),
                    stored.hash());
        }
    }

    @Schema(name = "AuditHead", description = "A head of the tenant's chain under a signature by Ed25519 (RFC 8032).")
    record AuditHead(
            String tenant,

            @Schema(description = "Place of the link that was the last.")
            long position,

            @Schema(description = "Its hash in hex.") String hash,

            OffsetDateTime signedAt,

            @Schema(description = "The first 16 hex digits of the SHA-256 of the public key in base64.")
            String keyId,

            @Schema(description = "In base64.") String signature) {

        static AuditHead of(SignedHead head) {
            return new AuditHead(
                    head.tenant(), head.position(), head.hash(), head.signedAt(), head.keyId(), head.signature());
        }
    }

    /** Lists the chain, the latest link first. */
    @GET
    @Operation(
            operationId = "listAudit",
            summary = "List who did what when",
            description =
                    "The latest first; the Link header leads on. What was done seconds ago may not be tied in yet."
                            + " A key that is limited to sites may not read it.")
    @APIResponse(
            responseCode = "200",
            description = "A page of the chain.",
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(type = SchemaType.ARRAY, implementation = AuditLine.class)))
    public Response list(
            @Parameter(description = "Only links before this place.") @QueryParam("before") @Nullable Long before,
            @Parameter(description = "At most 200.") @QueryParam("limit") @DefaultValue("50") int limit) {
        if (limit < 1 || limit > MOST) {
            throw RefusedException.invalidPayload(List.of(new Problem.Cause(
                    "/limit", "`limit` is " + limit + "; expected is 1 to " + MOST + ". Correct it.")));
        }
        List<AuditLine> lines =
                transaction.call(tenant(), () -> store.before(before == null ? Long.MAX_VALUE : before, limit)).stream()
                        .map(AuditLine::of)
                        .toList();
        Response.ResponseBuilder answer = Response.ok(lines);
        if (lines.size() == limit) {
            answer.header(
                    "Link",
                    "</v1/audit?before=" + lines.get(limit - 1).position() + "&limit=" + limit + ">; rel=\"next\"");
        }
        return answer.build();
    }

    /** Lists the signed heads, the latest first. */
    @GET
    @Path("/heads")
    @Operation(
            operationId = "listAuditHeads",
            summary = "List the signed heads of the chain",
            description = "The latest 200. Keep them elsewhere: with them the verify command finds what was cut off.")
    public List<AuditHead> heads() {
        return transaction.call(tenant(), () -> store.heads(MOST)).stream()
                .map(AuditHead::of)
                .toList();
    }

    private String tenant() {
        Actor actor = current.get();
        if (actor.sites() != null) {
            throw RefusedException.notAllowed("The audit covers all sites and the key " + actor.name()
                    + " only some. Ask an admin of the whole tenant.");
        }
        return actor.tenant();
    }
}
