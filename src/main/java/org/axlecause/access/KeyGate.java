package org.axlecause.access;

import jakarta.enterprise.context.ApplicationScoped;
import java.lang.reflect.Method;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.axlecause.shared.Gate;
import org.axlecause.shared.Quota;
import org.axlecause.shared.RefusedException;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/** Knows the bearer of a request by key or by a person's token, or lets the demo tenant in where access is open; then asks for the role. */
@ApplicationScoped
class KeyGate implements Gate {

    static final Actor EVERYBODY = new Actor("demo", "open", Set.of(Role.ADMIN), null);

    private static final String SCHEME = "bearer ";
    private static final String NO_KEY = "0".repeat(64);

    private final AccessMode mode;
    private final KeyStore keys;
    private final CurrentActor current;
    private final RequestLimit limit;
    private final PeopleGate people;
    private final Clock clock;

    KeyGate(
            @ConfigProperty(name = "axlecause.access") AccessMode mode,
            KeyStore keys,
            CurrentActor current,
            RequestLimit limit,
            PeopleGate people,
            Clock clock) {
        this.mode = mode;
        this.keys = keys;
        this.current = current;
        this.limit = limit;
        this.people = people;
        this.clock = clock;
    }

    @Override
    public @Nullable Quota admit(@Nullable String authorization, Class<?> resource, Method method) {
        Actor actor = mode == AccessMode.OPEN ? EVERYBODY : bearer(authorization);
        Quota quota = mode == AccessMode.OPEN ? null : limit.take(actor.name());
        if (quota != null && quota.exceeded()) {
            return quota;
        }
        Needs needs = needs(resource, method);
        if (needs == null) {
            throw RefusedException.notAllowed("This route is open to nobody.");
        }
        if (!actor.hasAny(Set.of(needs.value()))) {
            throw RefusedException.notAllowed("The bearer " + actor.name() + " has none of the roles "
                    + String.join(
                            ", ",
                            Set.of(needs.value()).stream()
                                    .map(Role::toString)
                                    .sorted()
                                    .toList())
                    + ". Ask an admin of the tenant for one that has.");
        }
        current.is(actor);
        return quota;
    }

    static @Nullable Needs needs(Class<?> resource, Method method) {
        Needs ofMethod = method.getAnnotation(Needs.class);
        return ofMethod != null ? ofMethod : resource.getAnnotation(Needs.class);
    }

    private Actor bearer(@Nullable String authorization) {
        if (authorization == null || !authorization.toLowerCase(Locale.ROOT).startsWith(SCHEME)) {
            throw RefusedException.notAuthenticated("Send Authorization: Bearer with a key of this service.");
        }
        String bearer = authorization.substring(SCHEME.length()).trim();
        if (people.isFor(bearer)) {
            return people.person(bearer);
        }
        ApiKey sent = ApiKey.read(bearer)
                .orElseThrow(() -> RefusedException.notAuthenticated(
                        "The key is damaged: form or check sum are wrong. Send it whole, as it was shown."));
        Optional<StoredKey> stored = keys.lookUp(sent.id());
        boolean same = MessageDigest.isEqual(
                bytes(sent.hash()), bytes(stored.map(StoredKey::hash).orElse(NO_KEY)));
        return stored.filter(key -> same && key.isValidAt(OffsetDateTime.now(clock)))
                .map(key -> new Actor(
                        key.tenant(),
                        key.id(),
                        Set.of(key.role()),
                        key.sites() == null ? null : Set.copyOf(key.sites())))
                .orElseThrow(() -> RefusedException.notAuthenticated("The key is unknown, revoked or expired."));
    }

    private static byte[] bytes(String hash) {
        return hash.getBytes(StandardCharsets.US_ASCII);
    }
}
