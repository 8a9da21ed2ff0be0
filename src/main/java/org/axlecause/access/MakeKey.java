package org.axlecause.access;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.axlecause.shared.TenantTransaction;

/** Makes a key for a tenant; the tenant is opened with its first key. */
@ApplicationScoped
public class MakeKey {

    private final TenantTransaction transaction;
    private final TenantStore tenants;
    private final KeyStore keys;
    private final ActStore acts;

    MakeKey(TenantTransaction transaction, TenantStore tenants, KeyStore keys, ActStore acts) {
        this.transaction = transaction;
        this.tenants = tenants;
        this.keys = keys;
        this.acts = acts;
    }

    /** The text of the new key, which is shown here and never again. */
    public String make(String tenant, KeyTerms terms, String createdBy) {
        return transaction.call(tenant, () -> {
            tenants.open(tenant, tenant);
            return in(tenant, terms, createdBy).text();
        });
    }

    /** A new key of a tenant whose transaction is open. */
    ApiKey in(String tenant, KeyTerms terms, String createdBy) {
        ApiKey key = ApiKey.made();
        keys.add(
                new StoredKey(tenant, key.id(), key.hash(), terms.role(), terms.sites(), terms.expiresAt(), null),
                terms.name(),
                createdBy);
        acts.note(
                createdBy,
                Act.KEY_MADE,
                key.id(),
                Map.of("name", terms.name(), "role", terms.role().toString()));
        return key;
    }
}
