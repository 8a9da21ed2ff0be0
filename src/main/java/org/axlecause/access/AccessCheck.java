package org.axlecause.access;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.regex.Pattern;
import org.axlecause.shared.CannotStart;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Refuses to serve without keys where others could reach the service; opens the demo tenant where they can't. */
@ApplicationScoped
class AccessCheck {

    private static final int AFTER_THE_ROLE = 10;
    private static final Pattern LOOPBACK = Pattern.compile("localhost|127(\\.\\d{1,3}){3}|\\[?::1]?");

    private final AccessMode mode;
    private final String host;
    private final TenantStore tenants;

    AccessCheck(
            @ConfigProperty(name = "axlecause.access") AccessMode mode,
            @ConfigProperty(name = "quarkus.http.host") String host,
            TenantStore tenants) {
        this.mode = mode;
        this.host = host;
        this.tenants = tenants;
    }

    void atStart(@Observes @Priority(AFTER_THE_ROLE) StartupEvent event) {
        check(mode, host);
        if (mode == AccessMode.OPEN) {
            tenants.open(KeyGate.EVERYBODY.tenant(), "Demo");
        }
    }

    static void check(AccessMode mode, String host) {
        if (mode == AccessMode.OPEN && !LOOPBACK.matcher(host).matches()) {
            throw CannotStart.because("Access is open, so that anybody who reaches " + host
                    + " could read and write everything. Set AXLECAUSE_ACCESS=keys and make a key (make-key), or"
                    + " QUARKUS_HTTP_HOST=127.0.0.1.");
        }
    }
}
