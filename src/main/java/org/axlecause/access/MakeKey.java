package org.axlecause.access;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.OffsetDateTime;
import java.util.List;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** Makes a key for a tenant; the tenant is opened with its first key. */
@ApplicationScoped
public class MakeKey {

    private final TenantTransaction transaction;
    private final TenantStore tenants;
    private final KeyStore keys;

    MakeKey(TenantTransaction transaction, TenantStore tenants, KeyStore keys) {
        this.transaction = transaction;
        this.tenants = tenants;
        this.keys = keys;
    }

    /** The text of the new key, which is shown here and never again. */
    public String make(
            String tenant,
            Role role,
            @Nullable List<String> sites,
            @Nullable OffsetDateTime expiresAt,
            String name,
            String createdBy) {
        return transaction.call(tenant, () -> {
            tenants.open(tenant, tenant);
            return in(tenant, role, sites, expiresAt, name, createdBy).text();
        });
    }

    /** A new key of a tenant whose transaction is open. */
    ApiKey in(
            String tenant,
            Role role,
            @Nullable List<String> sites,
            @Nullable OffsetDateTime expiresAt,
            String name,
            String createdBy) {
        ApiKey key = ApiKey.made();
        keys.add(new StoredKey(tenant, key.id(), key.hash(), role, sites, expiresAt, null), name, createdBy);
        return key;
    }
}
