package org.axlecause.access;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import io.quarkus.panache.common.Sort;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import org.axlecause.shared.TenantTransaction;

/** The sites of a tenant. */
@ApplicationScoped
public class SiteStore implements PanacheRepositoryBase<SiteEntity, SiteEntity.Key> {

    private final TenantTransaction transaction;

    SiteStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** The site with this code. */
    public Optional<Site> find(String site) {
        return findByIdOptional(new SiteEntity.Key(transaction.tenant(), site)).map(SiteEntity::toSite);
    }

    /** Every site of the tenant, by code. */
    public List<Site> all() {
        return list("tenant", Sort.by("site"), transaction.tenant()).stream()
                .map(SiteEntity::toSite)
                .toList();
    }

    /** Makes the site, or changes it; its version grows by itself. */
    public Site save(Site site) {
        String tenant = transaction.tenant();
        SiteEntity entity = findById(new SiteEntity.Key(tenant, site.site()));
        if (entity == null) {
            entity = SiteEntity.of(tenant, site);
            persist(entity);
        } else {
            entity.take(site);
        }
        flush();
        return entity.toSite();
    }
}
