package org.axlecause.access;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.io.Serializable;
import java.time.ZoneId;
import org.hibernate.annotations.TenantId;
import org.jspecify.annotations.Nullable;

/** A row of {@code site}. */
@Entity
@Table(name = "site")
@IdClass(SiteEntity.Key.class)
@SuppressWarnings("NullAway.Init")
class SiteEntity {

    @Id
    @TenantId
    @Column(name = "tenant_id")
    String tenant;

    @Id
    @Column(name = "site")
    String site;

    @Column(name = "name")
    String name;

    @Column(name = "region")
    @Nullable
    String region;

    @Column(name = "time_zone")
    String timeZone;

    @Column(name = "currency")
    String currency;

    @Column(name = "regime")
    String regime;

    @Version
    @Column(name = "version")
    int version;

    static SiteEntity of(String tenant, Site site) {
        SiteEntity entity = new SiteEntity();
        entity.tenant = tenant;
        entity.site = site.site();
        entity.take(site);
        return entity;
    }

    void take(Site changed) {
        name = changed.name();
        region = changed.region();
        timeZone = changed.zone().getId();
        currency = changed.currency();
        regime = changed.regime();
    }

    Site toSite() {
        return site(site, name, region, timeZone, currency, regime, version);
    }

    /** A site of the columns of its row, whose versions count from 0. */
    static Site site(
            String site,
            String name,
            @Nullable String region,
            String timeZone,
            String currency,
            String regime,
            int version) {
        return new Site(site, name, region, ZoneId.of(timeZone), currency, regime, version + 1);
    }

    /** The key of a row. */
    record Key(String tenant, String site) implements Serializable {}
}
