package org.axlecause.policy;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import org.hibernate.annotations.ColumnTransformer;
import org.hibernate.annotations.TenantId;

/** A row of {@code policy_version}; never changed once it is there. */
@Entity
@Table(name = "policy_version")
@IdClass(PolicyVersionEntity.Key.class)
@SuppressWarnings("NullAway.Init")
class PolicyVersionEntity {

    @Id
    @TenantId
    @Column(name = "tenant_id")
    String tenant;

    @Id
    @Column(name = "name")
    String name;

    @Id
    @Column(name = "version")
    int version;

    @Column(name = "effective_from")
    LocalDate effectiveFrom;

    @Column(name = "document")
    @ColumnTransformer(write = "?::json")
    String document;

    @Column(name = "published_at")
    OffsetDateTime publishedAt;

    @Column(name = "published_by")
    String publishedBy;

    PolicyVersion toPolicyVersion() {
        return new PolicyVersion(name, version, effectiveFrom, document, publishedAt, publishedBy);
    }

    /** The key of a row. */
    record Key(String tenant, String name, int version) implements Serializable {}
}
