package org.axlecause.access;

import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.Optional;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.Seal;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/**
 * Sessions of the pages: a sealed text that names a key by its id and its name, or holds a person's token, and says
 * until when it is good. Key and token are asked about with every request, so that a revoked key ends its sessions at
 * once; nothing is stored, so that every replica knows every session.
 */
@ApplicationScoped
public class Sessions {

    private static final byte[] CONTEXT = "session of the pages".getBytes(StandardCharsets.UTF_8);
    private static final String KEY = "key";
    private static final String PERSON = "person";
    private static final String OVER = "The session is over. Sign in again.";
    private static final int PARTS = 3;

    private final AccessMode mode;
    private final Bearers bearers;
    private final KeyNames keyNames;
    private final Clock clock;
    private final Duration length;
    private final Seal seal;

    Sessions(
            @ConfigProperty(name = "axlecause.access") AccessMode mode,
            Bearers bearers,
            KeyNames keyNames,
            Clock clock,
            @ConfigProperty(name = "axlecause.pages.session") Duration length,
            @ConfigProperty(name = "axlecause.identity-key") Optional<String> identityKey) {
        this.mode = mode;
        this.bearers = bearers;
        this.keyNames = keyNames;
        this.clock = clock;
        this.length = length;
        this.seal = Seal.of(identityKey, "session");
    }

    /** How long a session lasts. */
    public Duration length() {
        return length;
    }

    /** Whether anybody needs one. */
    public boolean areNeeded() {
        return mode != AccessMode.OPEN;
    }

    /** A session of the bearer of this key or token; refuses one that opens nothing. */
    public String begin(String bearer) {
        String text = bearer.strip();
        Actor actor = bearers.known(text);
        String holder = bearers.isPerson(text)
                ? PERSON + " " + text
                : KEY + " " + actor.name() + " " + keyNames.of(actor).getOrDefault(actor.name(), "");
        long until = clock.instant().plus(length).getEpochSecond();
        byte[] sealed = seal.close((until + " " + holder).getBytes(StandardCharsets.UTF_8), CONTEXT);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(sealed);
    }

    /**
     * The bearer of a session.
     *
     * @param actor who acts
     * @param called what people call the bearer
     */
    record Bearer(Actor actor, String called) {}

    /** Whose session it is; refuses one that is over or was not made here. */
    Bearer bearer(String session) {
        String[] parts = parts(session);
        if (parts.length != PARTS) {
            throw RefusedException.notAuthenticated(OVER);
        }
        if (!parts[1].equals(KEY)) {
            Actor person = bearers.known(parts[2]);
            return new Bearer(person, person.name());
        }
        String[] key = parts[2].split(" ", 2);
        return new Bearer(bearers.ofKey(key[0]), key[key.length - 1]);
    }

    /** What people call the bearer of a session, to greet them where no gate was passed; it opens nothing. */
    public Optional<String> called(String session) {
        String[] parts = parts(session);
        if (parts.length != PARTS) {
            return Optional.empty();
        }
        String[] key = parts[2].split(" ", 2);
        return Optional.of(parts[1].equals(KEY) ? key[key.length - 1] : "signed in");
    }

    /** End, kind and bearer of a session; fewer where it is over or was not made here. */
    private String[] parts(String session) {
        @Nullable String opened = opened(session);
        String[] parts = opened == null ? new String[0] : opened.split(" ", PARTS);
        return parts.length == PARTS && clock.instant().isBefore(Instant.ofEpochSecond(Long.parseLong(parts[0])))
                ? parts
                : new String[0];
    }

    private @Nullable String opened(String session) {
        try {
            return seal.tryOpen(Base64.getUrlDecoder().decode(session), CONTEXT)
                    .map(text -> new String(text, StandardCharsets.UTF_8))
                    .orElse(null);
        } catch (IllegalArgumentException noBase64) {
            return null;
        }
    }
}
