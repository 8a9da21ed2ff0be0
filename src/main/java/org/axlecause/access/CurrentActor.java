package org.axlecause.access;

import jakarta.enterprise.context.RequestScoped;
import java.util.Optional;
import org.axlecause.shared.RefusedException;
import org.jspecify.annotations.Nullable;

/** Who acts in the present request; the gate has put them here. */
@RequestScoped
public class CurrentActor {

    private @Nullable Actor actor;
    private String called = "";

    /** The actor of this request; refuses where nobody passed the gate. */
    public Actor get() {
        Actor present = actor;
        if (present == null) {
            throw RefusedException.notAuthenticated("Send Authorization: Bearer with a key of this service.");
        }
        return present;
    }

    /** The actor of this request; empty where nobody passed the gate, as on the page to sign in. */
    public Optional<Actor> known() {
        return Optional.ofNullable(actor);
    }

    /** What people call the bearer; empty where nobody passed the gate. */
    public String called() {
        return called;
    }

    void is(Actor admitted, String name) {
        actor = admitted;
        called = name;
    }
}
