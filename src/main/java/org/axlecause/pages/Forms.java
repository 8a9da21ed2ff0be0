package org.axlecause.pages;

import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.axlecause.access.Actor;
import org.axlecause.access.CurrentActor;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.Seal;
import org.axlecause.shared.Visit;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Ties each form to the browser and the person that it was made for: a digest of the browser's random text and of who is
 * signed in (signed double submit by OWASP's cheat sheet on cross-site request forgery).
 */
@ApplicationScoped
class Forms {

    private static final String TOKEN = "token";
    private static final String STRANGER = "nobody";

    private final Visit visit;
    private final CurrentActor current;
    private final Seal seal;

    Forms(
            Visit visit,
            CurrentActor current,
            @ConfigProperty(name = "axlecause.identity-key") Optional<String> identityKey) {
        this.visit = visit;
        this.current = current;
        this.seal = Seal.of(identityKey, "forms");
    }

    /** What a form of this page must carry. */
    String token() {
        String who = current.known().map(Actor::name).orElse(STRANGER);
        return HexFormat.of().formatHex(seal.digest(visit.nonce() + " " + who));
    }

    /** The fields of a form that was sent; refuses one that was not made here for this browser and person. */
    Form received(Map<String, List<String>> fields) {
        Form form = new Form(fields);
        byte[] sent = form.text(TOKEN).getBytes(StandardCharsets.UTF_8);
        if (visit.nonce().isEmpty() || !MessageDigest.isEqual(sent, token().getBytes(StandardCharsets.UTF_8))) {
            throw RefusedException.notAllowed("This form belongs to another session of this browser, or was not made"
                    + " here. Open the page again and send it from there.");
        }
        return form;
    }
}
