package org.axlecause.access;

import jakarta.enterprise.context.ApplicationScoped;
import java.lang.reflect.Method;
import java.util.List;
import java.util.Locale;
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

    private final AccessMode mode;
    private final Bearers bearers;
    private final Sessions sessions;
    private final CurrentActor current;
    private final RequestLimit limit;

    KeyGate(
            @ConfigProperty(name = "axlecause.access") AccessMode mode,
            Bearers bearers,
            Sessions sessions,
            CurrentActor current,
            RequestLimit limit) {
        this.mode = mode;
        this.bearers = bearers;
        this.sessions = sessions;
        this.current = current;
        this.limit = limit;
    }

    @Override
    public @Nullable Quota admit(
            @Nullable String authorization, @Nullable String session, Class<?> resource, Method method) {
        Sessions.Bearer bearer = mode == AccessMode.OPEN
                ? new Sessions.Bearer(EVERYBODY, EVERYBODY.name())
                : bearer(authorization, session);
        Actor actor = bearer.actor();
        Quota quota = mode == AccessMode.OPEN ? null : limit.take(actor.name());
        if (quota != null && quota.exceeded()) {
            return quota;
        }
        Needs needs = needs(resource, method);
        if (needs == null) {
            throw RefusedException.notAllowed("This route is open to nobody.");
        }
        if (!actor.hasAny(Set.of(needs.value()))) {
            current.is(actor, bearer.called());
            List<String> roles =
                    Set.of(needs.value()).stream().map(Role::toString).sorted().toList();
            throw RefusedException.notAllowed("Your key or token needs "
                    + (roles.size() == 1 ? "the role " : "one of these roles here: ") + String.join(", ", roles)
                    + (roles.size() == 1 ? " here" : "") + ". Ask whoever manages them for one that has it.");
        }
        current.is(actor, bearer.called());
        return quota;
    }

    static @Nullable Needs needs(Class<?> resource, Method method) {
        Needs ofMethod = method.getAnnotation(Needs.class);
        return ofMethod != null ? ofMethod : resource.getAnnotation(Needs.class);
    }

    private Sessions.Bearer bearer(@Nullable String authorization, @Nullable String session) {
        if (authorization == null && session != null) {
            return sessions.bearer(session);
        }
        if (authorization == null || !authorization.toLowerCase(Locale.ROOT).startsWith(SCHEME)) {
            throw RefusedException.notAuthenticated("Send Authorization: Bearer with a key of this service.");
        }
        Actor actor = bearers.known(authorization.substring(SCHEME.length()).trim());
        return new Sessions.Bearer(actor, actor.name());
    }
}
