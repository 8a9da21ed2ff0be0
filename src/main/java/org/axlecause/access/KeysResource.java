package org.axlecause.access;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.CacheControl;
import jakarta.ws.rs.core.MediaType;
import java.net.URI;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.jspecify.annotations.Nullable;

/** The keys of a tenant. One name may have two that are good at a time, so that a key can be changed without a gap. */
@Path("/v1/keys")
@Produces(MediaType.APPLICATION_JSON)
@Needs(Role.ADMIN)
@Tag(name = "administration")
public class KeysResource {

    private static final int LONGEST_NAME = 100;
    private static final int AT_A_TIME = 2;

    private final KeyStore keys;
    private final SiteStore sites;
    private final MakeKey makeKey;
    private final ActStore acts;
    private final CurrentActor actor;
    private final TenantTransaction transaction;
    private final Clock clock;

    KeysResource(
            KeyStore keys,
            SiteStore sites,
            MakeKey makeKey,
            ActStore acts,
            CurrentActor actor,
            TenantTransaction transaction,
            Clock clock) {
        this.keys = keys;
        this.sites = sites;
        this.makeKey = makeKey;
        this.acts = acts;
        this.actor = actor;
        this.transaction = transaction;
        this.clock = clock;
    }

    /**
     * A key that is asked for.
     *
     * @param name what it is for, such as the system that sends with it
     * @param role code of the role that its bearer has
     * @param sites codes of the only sites that its bearer may touch; left out for all
     * @param expiresAt from when on it is refused; left out for never
     */
    public record KeyWanted(
            @Nullable String name,
            @Schema(implementation = Role.class) @Nullable String role,
            @Nullable List<String> sites,
            @Nullable OffsetDateTime expiresAt) {}

    /**
     * A new key; its text is shown here and never again.
     *
     * @param key the part that may be shown, by which it is listed and revoked
     * @param text the whole key, to be sent as {@code Authorization: Bearer}
     */
    public record KeyMade(String key, String text) {}

    /**
     * A key as it is listed.
     *
     * @param key the part that may be shown
     * @param name what it is for
     * @param role code of the role
     * @param sites codes of the only sites; left out for all
     * @param createdAt when it was made
     * @param createdBy id of the key that made it, or the command
     * @param expiresAt from when on it is refused
     * @param revokedAt when it was revoked
     */
    public record KeyView(
            String key,
            String name,
            @Schema(implementation = Role.class) String role,
            @Nullable List<String> sites,
            OffsetDateTime createdAt,
            String createdBy,
            @Nullable OffsetDateTime expiresAt,
            @Nullable OffsetDateTime revokedAt) {}

    /** Lists the keys; an admin of some sites sees those that touch no other. */
    @GET
    @Operation(operationId = "listKeys", summary = "List the keys")
    public List<KeyView> list() {
        return transaction.call(
                actor.get().tenant(),
                () -> keys.views().stream().filter(key -> isWithin(key.sites())).toList());
    }

    /** Makes a key. */
    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(operationId = "makeKey", summary = "Make a key")
    @APIResponse(responseCode = "201", description = "The key, shown once")
    @APIResponseSchema(value = KeyMade.class, responseCode = "201")
    public RestResponse<KeyMade> make(@Nullable KeyWanted wanted) {
        Actor admin = actor.get();
        ApiKey made = transaction.call(admin.tenant(), () -> {
            KeyTerms terms = checked(wanted);
            keys.makeOneAtATime();
            if (keys.goodOnes(terms.name(), OffsetDateTime.now(clock)) >= AT_A_TIME) {
                throw RefusedException.because(
                        RefusedException.Reason.CONFLICT,
                        "Two keys named '" + terms.name() + "' are good already. Revoke the older one first.");
            }
            return makeKey.in(admin.tenant(), terms, admin.name());
        });
        CacheControl never = new CacheControl();
        never.setNoStore(true);
        return RestResponse.ResponseBuilder.<KeyMade>created(URI.create("/v1/keys/" + made.id()))
                .entity(new KeyMade(made.id(), made.text()))
                .cacheControl(never)
                .build();
    }

    /** Revokes a key; from now on it opens nothing. */
    @DELETE
    @Path("/{key}")
    @Operation(operationId = "revokeKey", summary = "Revoke a key")
    @APIResponse(responseCode = "204", description = "The key is revoked")
    public void revoke(@PathParam("key") String id) {
        String tenant = actor.get().tenant();
        transaction.run(tenant, () -> {
            if (keys.view(id).filter(key -> isWithin(key.sites())).isEmpty()) {
                throw RefusedException.notFound("There is no key '" + id + "'.");
            }
            if (keys.revoke(tenant, id)) {
                acts.note(actor.get().name(), Act.KEY_REVOKED, id, Map.of());
            }
        });
    }

    private boolean isWithin(@Nullable List<String> touched) {
        Set<String> own = actor.get().sites();
        return own == null || (touched != null && own.containsAll(touched));
    }

    private KeyTerms checked(@Nullable KeyWanted wanted) {
        if (wanted == null) {
            throw RefusedException.invalidPayload(
                    List.of(new Problem.Cause("", "The body is empty; send name and role.")));
        }
        List<Problem.Cause> causes = new ArrayList<>();
        String name = wanted.name() == null ? "" : wanted.name().strip();
        if (name.isEmpty() || name.length() > LONGEST_NAME) {
            causes.add(new Problem.Cause("/name", "A name of 1 to " + LONGEST_NAME + " characters is expected."));
        }
        Role role = Role.of(wanted.role() == null ? "" : wanted.role()).orElse(null);
        if (role == null) {
            causes.add(new Problem.Cause(
                    "/role",
                    "'" + wanted.role() + "' is no role; expected is one of "
                            + String.join(
                                    ", ",
                                    Stream.of(Role.values()).map(Role::toString).toList())
                            + "."));
        }
        OffsetDateTime expiresAt = wanted.expiresAt();
        if (expiresAt != null && !expiresAt.isAfter(OffsetDateTime.now(clock))) {
            causes.add(new Problem.Cause("/expiresAt", "'" + expiresAt + "' is over; name a later moment."));
        }
        List<String> limitedTo = limit(wanted.sites(), causes);
        if (!causes.isEmpty() || role == null) {
            throw RefusedException.invalidPayload(causes);
        }
        return new KeyTerms(name, role, limitedTo, expiresAt);
    }

    /** The sites of the new key: known ones, and none that the admin may not touch. */
    private @Nullable List<String> limit(@Nullable List<String> wanted, List<Problem.Cause> causes) {
        Set<String> own = actor.get().sites();
        if (wanted == null) {
            return own == null ? null : List.copyOf(new TreeSet<>(own));
        }
        if (wanted.isEmpty()) {
            causes.add(new Problem.Cause("/sites", "The list is empty; name a site, or leave it out for all sites."));
        }
        for (int index = 0; index < wanted.size(); index++) {
            String site = wanted.get(index);
            if (site == null || !actor.get().maySee(site) || sites.find(site).isEmpty()) {
                causes.add(new Problem.Cause("/sites/" + index, "There is no site '" + site + "'."));
            }
        }
        return causes.isEmpty() ? List.copyOf(new TreeSet<>(wanted)) : null;
    }
}
