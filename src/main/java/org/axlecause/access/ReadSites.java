package org.axlecause.access;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.axlecause.shared.TenantTransaction;

/** Reads the sites of a tenant for those who may touch them. */
@ApplicationScoped
public class ReadSites {

    private final SiteStore sites;
    private final TenantTransaction transaction;

    ReadSites(SiteStore sites, TenantTransaction transaction) {
        this.sites = sites;
        this.transaction = transaction;
    }

    /** The sites that the actor may touch, by code. */
    public List<Site> visible(Actor actor) {
        return transaction.call(
                actor.tenant(),
                () -> sites.all().stream()
                        .filter(site -> actor.maySee(site.site()))
                        .toList());
    }
}
