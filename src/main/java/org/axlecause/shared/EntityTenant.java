package org.axlecause.shared;

import io.quarkus.hibernate.orm.PersistenceUnitExtension;
import io.quarkus.hibernate.orm.runtime.tenant.TenantResolver;
import jakarta.enterprise.context.ApplicationScoped;

/** Tells the entities' side whose transaction is open: the second wall beside row-level security. */
@PersistenceUnitExtension
@ApplicationScoped
class EntityTenant implements TenantResolver {

    /** No row carries it. */
    private static final String NOBODY = "";

    private final TenantTransaction transaction;

    EntityTenant(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    @Override
    public String getDefaultTenantId() {
        return NOBODY;
    }

    @Override
    public String resolveTenantId() {
        return transaction.tenant();
    }
}
