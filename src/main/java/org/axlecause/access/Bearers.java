package org.axlecause.access;

import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.Set;
import org.axlecause.shared.RefusedException;

/** Knows who bears a key or a person's token. */
@ApplicationScoped
class Bearers {

    private static final String NO_KEY = "0".repeat(64);

    private final KeyStore keys;
    private final PeopleGate people;
    private final Clock clock;

    Bearers(KeyStore keys, PeopleGate people, Clock clock) {
        this.keys = keys;
        this.people = people;
        this.clock = clock;
    }

    /** Who bears this key or token; refuses one that is damaged, unknown, revoked or expired. */
    Actor known(String bearer) {
        if (isPerson(bearer)) {
            return people.person(bearer);
        }
        ApiKey sent = ApiKey.read(bearer)
                .orElseThrow(
                        () -> RefusedException.notAuthenticated(
                                "The key is damaged or not whole. Give all of it, as it was shown when it was made, or ask for a new one."));
        Optional<StoredKey> stored = keys.lookUp(sent.id());
        boolean same = MessageDigest.isEqual(
                bytes(sent.hash()), bytes(stored.map(StoredKey::hash).orElse(NO_KEY)));
        return actor(stored.filter(key -> same));
    }

    /** Whether the text is a person's token rather than a key. */
    boolean isPerson(String bearer) {
        return people.isFor(bearer);
    }

    /** Who bears the key of this id, which was shown whole before; refuses one that was revoked or has expired since. */
    Actor ofKey(String id) {
        return actor(keys.lookUp(id));
    }

    private Actor actor(Optional<StoredKey> stored) {
        return stored.filter(key -> key.isValidAt(OffsetDateTime.now(clock)))
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
