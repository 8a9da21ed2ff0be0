package org.axlecause.access;

import java.time.Clock;
import org.axlecause.shared.TenantTransaction;

/** Tenants of another database, for tests. */
public final class Tenants {

    private Tenants() {}

    public static TenantStore storeOn(TenantTransaction transaction) {
        return new TenantStore(transaction, Clock.systemUTC());
    }
}
