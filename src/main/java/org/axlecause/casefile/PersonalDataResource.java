package org.axlecause.casefile;

import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.CacheControl;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import org.axlecause.access.Act;
import org.axlecause.access.ActStore;
import org.axlecause.access.Actor;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
import org.axlecause.shared.Problem;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What tokens stand for in a case: shown to those who need it, and erased for good on demand; both are noted. */
@Path("/v1/cases/{reference}/personal-data")
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Tag(name = "cases")
public class PersonalDataResource {

    private final ReadCases readCases;
    private final VehicleIdentityStore identities;
    private final ActStore acts;
    private final CurrentActor current;
    private final TenantTransaction transaction;

    PersonalDataResource(
            ReadCases readCases,
            VehicleIdentityStore identities,
            ActStore acts,
            CurrentActor current,
            TenantTransaction transaction) {
        this.readCases = readCases;
        this.identities = identities;
        this.acts = acts;
        this.current = current;
        this.transaction = transaction;
    }

    @Schema(name = "PersonalDatum", description = "A personal datum that a token stands for in the case's events.")
    record PersonalDatum(
            @Schema(description = "Member of the event: registration, vin or by.")
            String kind,

            @Schema(description = "What stands in the events.")
            String token,

            @Schema(description = "As it was first sent.") String value) {}

    /** Lists what the tokens of a case stand for; those that were erased are left out. */
    @GET
    @Needs({Role.TECHNICIAN, Role.DESK})
    @Operation(operationId = "getPersonalData", summary = "The personal data behind the tokens of a case")
    @APIResponse(
            responseCode = "200",
            description = "What has not been erased.",
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(type = SchemaType.ARRAY, implementation = PersonalDatum.class)))
    public Response get(@PathParam("reference") String reference) {
        Actor actor = current.get();
        readCases.find(reference, actor);
        List<PersonalDatum> data = transaction.call(actor.tenant(), () -> {
            acts.note(actor.name(), Act.PERSONAL_DATA_READ, reference, Map.of());
            return identities.namedBy(reference).stream()
                    .flatMap(token -> identities.original(token).stream()
                            .map(value -> new PersonalDatum(value.kind(), token, value.text())))
                    .toList();
        });
        CacheControl never = new CacheControl();
        never.setNoStore(true);
        return Response.ok(data).cacheControl(never).build();
    }

    /** Erases them, in this case and in every other that has the same; events and their chain stay as they are. */
    @DELETE
    @Needs(Role.ADMIN)
    @Operation(
            operationId = "erasePersonalData",
            summary = "Erase the personal data behind the tokens of a case",
            description = "In every case that has the same. The events and their chain stay as they are.")
    @APIResponse(responseCode = "204", description = "Nothing is left behind the tokens.")
    public void erase(@PathParam("reference") String reference) {
        Actor actor = current.get();
        readCases.find(reference, actor);
        transaction.run(actor.tenant(), () -> {
            List<String> tokens = identities.namedBy(reference);
            tokens.forEach(identities::erase);
            acts.note(actor.name(), Act.PERSONAL_DATA_ERASED, reference, Map.of("tokens", String.join(" ", tokens)));
        });
    }
}
