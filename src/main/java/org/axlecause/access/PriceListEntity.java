package org.axlecause.access;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.OffsetDateTime;
import org.hibernate.annotations.ColumnTransformer;
import org.hibernate.annotations.TenantId;

/** A row of {@code price_list}; never changed once it is there. */
@Entity
@Table(name = "price_list")
@IdClass(PriceListEntity.Key.class)
@SuppressWarnings("NullAway.Init")
class PriceListEntity {

    @Id
    @TenantId
    @Column(name = "tenant_id")
    String tenant;

    @Id
    @Column(name = "site")
    String site;

    @Id
    @Column(name = "version")
    int version;

    @Column(name = "document")
    @ColumnTransformer(write = "?::json")
    String document;

    @Column(name = "created_at")
    OffsetDateTime createdAt;

    @Column(name = "created_by")
    String createdBy;

    /** The key of a row. */
    record Key(String tenant, String site, int version) implements Serializable {}
}
