package org.axlecause.access;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.axlecause.shared.TenantTransaction;

/** The sites of a tenant. */
@ApplicationScoped
public class SiteStore implements PanacheRepositoryBase<SiteEntity, SiteEntity.Key> {

    /** The columns of a row named s that {@link #site} reads. */
    public static final String COLUMNS = "s.site, s.name, s.region, s.time_zone, s.currency, s.regime, s.version";

    private static final String FIND = "SELECT " + COLUMNS + " FROM site s WHERE s.tenant_id = ? AND s.site = ?";

    private static final String ALL = "SELECT " + COLUMNS + " FROM site s WHERE s.tenant_id = ? ORDER BY s.site";

    private final TenantTransaction transaction;

    SiteStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** The site with this code. */
    public Optional<Site> find(String site) {
        return transaction.ask(
                FIND,
                results -> {
                    try (ResultSet row = results.next()) {
                        return row.next() ? Optional.of(site(row)) : Optional.empty();
                    }
                },
                transaction.tenant(),
                site);
    }

    /** The site of a row. */
    public static Site site(ResultSet row) throws SQLException {
        return SiteEntity.site(
                row.getString("site"),
                row.getString("name"),
                row.getString("region"),
                row.getString("time_zone"),
                row.getString("currency"),
                row.getString("regime"),
                row.getInt("version"));
    }

    /** Every site of the tenant, by code. */
    public List<Site> all() {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(ALL)) {
                query.setString(1, tenant);
                List<Site> sites = new ArrayList<>();
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        sites.add(site(rows));
                    }
                }
                return List.copyOf(sites);
            }
        });
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
