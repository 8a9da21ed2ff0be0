package org.axlecause.access;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import io.quarkus.panache.common.Sort;
import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.axlecause.shared.DatabaseException;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** The keys of a tenant, and the one look-up that happens before the tenant is known. */
@ApplicationScoped
public class KeyStore implements PanacheRepositoryBase<KeyEntity, KeyEntity.Key> {

    private static final String LOOK_UP =
            "SELECT tenant_id, key_hash, role, sites, expires_at, revoked_at FROM find_api_key(?)";

    private static final String ONE_AT_A_TIME =
            "SELECT pg_advisory_xact_lock(hashtextextended('keys of ' || CAST(? AS text), 0))";

    private final DataSource dataSource;
    private final TenantTransaction transaction;
    private final Clock clock;

    KeyStore(DataSource dataSource, TenantTransaction transaction, Clock clock) {
        this.dataSource = dataSource;
        this.transaction = transaction;
        this.clock = clock;
    }

    /** The key of this id, whichever tenant's it is; reads outside any tenant's transaction. */
    public Optional<StoredKey> lookUp(String id) {
        try (Connection connection = dataSource.getConnection();
                PreparedStatement query = connection.prepareStatement(LOOK_UP)) {
            query.setString(1, id);
            try (ResultSet row = query.executeQuery()) {
                return row.next() ? Optional.of(read(row, id)) : Optional.empty();
            }
        } catch (SQLException e) {
            throw new DatabaseException(e);
        }
    }

    /** Stores a key's hash in the open transaction's tenant. */
    public void add(StoredKey key, String name, String createdBy) {
        persist(KeyEntity.of(key, name, createdBy, OffsetDateTime.now(clock)));
    }

    /** Revokes a key from now on; whether there was one to revoke. */
    public boolean revoke(String tenant, String id) {
        return update(
                        "revokedAt = ?1 where tenant = ?2 and id = ?3 and revokedAt is null",
                        OffsetDateTime.now(clock),
                        tenant,
                        id)
                > 0;
    }

    /** The keys of the open transaction's tenant, by id. */
    public List<StoredKey> all(String tenant) {
        return list("tenant", Sort.by("id"), tenant).stream()
                .map(KeyEntity::toStoredKey)
                .toList();
    }

    /** The keys of the open transaction's tenant as they are listed, the latest first. */
    List<KeysResource.KeyView> views() {
        return list("tenant", Sort.descending("createdAt").and("id"), transaction.tenant()).stream()
                .map(KeyEntity::toView)
                .toList();
    }

    /** The key of this id of the open transaction's tenant, as it is listed. */
    Optional<KeysResource.KeyView> view(String id) {
        return findByIdOptional(new KeyEntity.Key(transaction.tenant(), id)).map(KeyEntity::toView);
    }

    /** Waits until no other transaction makes keys of this tenant, and keeps the others waiting until this one ends. */
    void makeOneAtATime() {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement lock = connection.prepareStatement(ONE_AT_A_TIME)) {
                lock.setString(1, tenant);
                return lock.execute();
            }
        });
    }

    /** How many keys of this name are neither revoked nor expired. */
    long goodOnes(String name, OffsetDateTime now) {
        return count(
                "tenant = ?1 and name = ?2 and revokedAt is null and (expiresAt is null or expiresAt > ?3)",
                transaction.tenant(),
                name,
                now);
    }

    private static StoredKey read(ResultSet row, String id) throws SQLException {
        return new StoredKey(
                row.getString("tenant_id"),
                id,
                HexFormat.of().formatHex(row.getBytes("key_hash")),
                Role.of(row.getString("role")).orElseThrow(),
                sites(row.getArray("sites")),
                row.getObject("expires_at", OffsetDateTime.class),
                row.getObject("revoked_at", OffsetDateTime.class));
    }

    private static @Nullable List<String> sites(@Nullable Array stored) throws SQLException {
        return stored == null ? null : List.of((String[]) stored.getArray());
    }
}
