package org.axlecause.pages;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.Set;
import org.axlecause.access.Actor;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Role;
import org.axlecause.access.Sessions;
import org.axlecause.shared.Sha256;
import org.jspecify.annotations.Nullable;

/** Makes the frame of a page for whoever asks for it. */
@ApplicationScoped
class Frames {

    /** Those who may send events by the API. */
    private static final Set<Role> SENDERS = Set.of(Role.SENDER, Role.TECHNICIAN, Role.DESK);

    private final CurrentActor current;
    private final Sessions sessions;
    private final Forms forms;
    private final String style = versioned("/look/axlecause.css");
    private final String script = versioned("/look/axlecause.js");

    Frames(CurrentActor current, Sessions sessions, Forms forms) {
        this.current = current;
        this.sessions = sessions;
        this.forms = forms;
    }

    Frame of(String section) {
        return of(section, null);
    }

    /** The frame of a problem, which may have come before anybody was let in. */
    Frame ofProblem(String session) {
        return of(
                "",
                sessions.areNeeded() && current.known().isEmpty()
                        ? sessions.called(session).orElse(null)
                        : null);
    }

    private Frame of(String section, @Nullable String greeted) {
        Actor actor = current.known().orElse(null);
        Actor signedIn = sessions.areNeeded() ? actor : null;
        return new Frame(
                section,
                signedIn == null ? null : signedIn.name(),
                signedIn == null ? greeted : current.called(),
                !sessions.areNeeded() || signedIn != null || greeted != null,
                actor != null && actor.hasAny(SENDERS),
                forms.token(),
                style,
                script);
    }

    /** The address of a file of the look; another one whenever its content is another, so that browsers may keep it. */
    private static String versioned(String address) {
        String file = "META-INF/resources" + address;
        try (InputStream in = Thread.currentThread().getContextClassLoader().getResourceAsStream(file)) {
            byte[] content = Objects.requireNonNull(in, file).readAllBytes();
            return address + "?v="
                    + Sha256.tagOf(new String(content, StandardCharsets.UTF_8)).substring(0, 12);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
