package org.axlecause.access;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.OffsetDateTime;
import java.util.HexFormat;
import java.util.List;
import org.hibernate.annotations.TenantId;
import org.jspecify.annotations.Nullable;

/** A row of {@code api_key}. */
@Entity
@Table(name = "api_key")
@IdClass(KeyEntity.Key.class)
@SuppressWarnings("NullAway.Init")
class KeyEntity {

    @Id
    @TenantId
    @Column(name = "tenant_id")
    String tenant;

    @Id
    @Column(name = "key_id")
    String id;

    @Column(name = "name")
    String name;

    @Column(name = "key_hash")
    byte[] hash;

    @Column(name = "role")
    String role;

    @Column(name = "sites")
    @Nullable
    List<String> sites;

    @Column(name = "created_at")
    OffsetDateTime createdAt;

    @Column(name = "created_by")
    String createdBy;

    @Column(name = "expires_at")
    @Nullable
    OffsetDateTime expiresAt;

    @Column(name = "revoked_at")
    @Nullable
    OffsetDateTime revokedAt;

    static KeyEntity of(StoredKey key, String name, String createdBy, OffsetDateTime createdAt) {
        KeyEntity entity = new KeyEntity();
        entity.tenant = key.tenant();
        entity.id = key.id();
        entity.name = name;
        entity.hash = HexFormat.of().parseHex(key.hash());
        entity.role = key.role().toString();
        entity.sites = key.sites();
        entity.createdAt = createdAt;
        entity.createdBy = createdBy;
        entity.expiresAt = key.expiresAt();
        entity.revokedAt = key.revokedAt();
        return entity;
    }

    StoredKey toStoredKey() {
        return new StoredKey(
                tenant, id, HexFormat.of().formatHex(hash), Role.of(role).orElseThrow(), sites, expiresAt, revokedAt);
    }

    KeysResource.KeyView toView() {
        return new KeysResource.KeyView(id, name, role, sites, createdAt, createdBy, expiresAt, revokedAt);
    }

    /** The key of a row. */
    record Key(String tenant, String id) implements Serializable {}
}
