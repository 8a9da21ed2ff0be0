package org.axlecause.access;

import io.quarkus.oidc.AccessTokenCredential;
import io.quarkus.oidc.TenantIdentityProvider;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.identity.SecurityIdentity;
import io.smallrye.mutiny.TimeoutException;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import java.security.Principal;
import java.time.Duration;
import java.util.Collection;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;
import org.axlecause.shared.Sha256;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.jwt.JsonWebToken;
import org.jspecify.annotations.Nullable;

/**
 * Knows people by the access tokens of an OpenID Connect provider, where one is set; the token's claims name the tenant,
 * the roles and, where a person is limited, the sites.
 */
@ApplicationScoped
class PeopleGate {

    private static final Duration LONGEST_CHECK = Duration.ofSeconds(5);
    private static final int NAME_DIGITS = 16;
    private static final int PARTS_OF_A_TOKEN = 3;

    private final boolean open;
    private final Instance<TenantIdentityProvider> provider;
    private final String tenantClaim;
    private final String rolesClaim;
    private final String sitesClaim;

    PeopleGate(
            @ConfigProperty(name = "quarkus.oidc.tenant-enabled") boolean open,
            Instance<TenantIdentityProvider> provider,
            @ConfigProperty(name = "axlecause.people.tenant-claim") String tenantClaim,
            @ConfigProperty(name = "axlecause.people.roles-claim") String rolesClaim,
            @ConfigProperty(name = "axlecause.people.sites-claim") String sitesClaim) {
        this.open = open;
        this.provider = provider;
        this.tenantClaim = tenantClaim;
        this.rolesClaim = rolesClaim;
        this.sitesClaim = sitesClaim;
    }

    /** Whether the text is for this gate: people are let in, and it has the form of a signed token (RFC 7515). */
    boolean isFor(String bearer) {
        return open && bearer.split("\\.", -1).length == PARTS_OF_A_TOKEN;
    }

    /** Who bears the token; refuses one that the provider didn't sign for this service, or that names no tenant. */
    Actor person(String token) {
        JsonWebToken claims = checked(token);
        String tenant = claims.getClaim(tenantClaim) instanceof String named ? named : "";
        Set<Role> roles = texts(claims.<@Nullable Object>getClaim(rolesClaim))
                .flatMap(code -> Role.of(code).stream())
                .collect(Collectors.toSet());
        if (tenant.isBlank() || roles.isEmpty()) {
            throw RefusedException.notAllowed("The token names no tenant in '" + tenantClaim
                    + "' or none of our roles in '" + rolesClaim + "'. Ask whoever runs the sign-in to add them.");
        }
        Object sites = claims.<@Nullable Object>getClaim(sitesClaim);
        return new Actor(
                tenant,
                "person-"
                        + Sha256.tagOf(claims.getIssuer() + " " + claims.getSubject())
                                .substring(0, NAME_DIGITS),
                roles,
                sites == null ? null : texts(sites).collect(Collectors.toSet()));
    }

    private JsonWebToken checked(String token) {
        try {
            SecurityIdentity identity = provider.get()
                    .authenticate(new AccessTokenCredential(token))
                    .await()
                    .atMost(LONGEST_CHECK);
            Principal principal = identity.getPrincipal();
            if (principal instanceof JsonWebToken claims) {
                return claims;
            }
            throw RefusedException.notAuthenticated("The token is no signed token with claims. Sign in again.");
        } catch (AuthenticationFailedException refused) {
            throw RefusedException.notAuthenticated(
                    "The token is not signed for this service, or has expired. Sign in again.");
        } catch (TimeoutException slow) {
            throw RefusedException.because(
                    Reason.UNAVAILABLE, "The provider of the sign-in doesn't answer just now. Send it again.");
        }
    }

    private static Stream<String> texts(@Nullable Object claim) {
        if (claim instanceof Collection<?> several) {
            return several.stream().map(PeopleGate::text);
        }
        return claim == null ? Stream.of() : Stream.of(text(claim).split(" ", -1));
    }

    /** Claims come as texts or as JSON values, which write texts in quotes. */
    private static String text(Object value) {
        return value instanceof jakarta.json.JsonString json ? json.getString() : Objects.toString(value);
    }
}
