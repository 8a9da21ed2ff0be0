package org.axlecause.outbound;

import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.axlecause.shared.Seal;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/** The subscriptions of a tenant; their secrets lie encrypted. */
@ApplicationScoped
class SubscriptionStore {

    private static final String ADD = """
            INSERT INTO subscription (tenant_id, subscription, version, address, description, types, sites, state,
                                      state_since, secret, created_at, created_by)
            VALUES (?, ?, 1, ?, ?, ?, ?, ?, ?, ?, ?, ?)
            """;

    private static final String ONE_AT_A_TIME =
            "SELECT pg_advisory_xact_lock(hashtextextended('subscriptions of ' || CAST(? AS text), 0))";

    private static final String COLUMNS = """
            SELECT subscription, version, address, description, types, sites, state, state_since, failing_since,
                   former_until, created_at, created_by
              FROM subscription WHERE tenant_id = ?
            """;

    private static final String ALL = COLUMNS + " ORDER BY created_at DESC, subscription";

    private static final String FIND = COLUMNS + " AND subscription = ?";

    /** A subscription that is made active again starts as if it had never failed. */
    private static final String CHANGE = """
            UPDATE subscription
               SET version = version + 1, address = ?, description = ?, types = ?, sites = ?, state = ?,
                   state_since = CASE WHEN state = ? THEN state_since ELSE ? END,
                   failing_since = CASE WHEN state = ? AND address = ? THEN failing_since END,
                   held_until = CASE WHEN state = ? AND address = ? THEN held_until END
             WHERE tenant_id = ? AND subscription = ? AND version = ?
            """;

    private static final String REMOVE =
            "DELETE FROM subscription WHERE tenant_id = ? AND subscription = ? AND version = ?";

    private static final String ROTATE = """
            UPDATE subscription SET version = version + 1, former_secret = secret, former_until = ?, secret = ?
             WHERE tenant_id = ? AND subscription = ? AND version = ?
            """;

    private static final String SECRETS = """
            SELECT secret, CASE WHEN former_until > ? THEN former_secret END
              FROM subscription WHERE tenant_id = ? AND subscription = ?
            """;

    private static final String WELL = """
            UPDATE subscription SET version = version + 1, failing_since = NULL, held_until = NULL
             WHERE tenant_id = ? AND subscription = ? AND failing_since IS NOT NULL
            """;

    private static final String FAILING = """
            UPDATE subscription SET version = version + 1, failing_since = ?
             WHERE tenant_id = ? AND subscription = ? AND failing_since IS NULL
            """;

    private static final String HOLD = """
            UPDATE subscription SET held_until = ?
             WHERE tenant_id = ? AND subscription = ? AND (held_until IS NULL OR held_until < ?)
            """;

    private static final String DISABLE = """
            UPDATE subscription SET version = version + 1, state = ?, state_since = ?
             WHERE tenant_id = ? AND subscription = ? AND state = 'active'
            """;

    private final TenantTransaction transaction;
    private final Seal seal;

    SubscriptionStore(
            TenantTransaction transaction,
            @ConfigProperty(name = "axlecause.identity-key") Optional<String> identityKey) {
        this.transaction = transaction;
        this.seal = Seal.of(identityKey, "subscription secret");
    }

    /** Waits until no other transaction makes subscriptions of this tenant, and keeps the others waiting. */
    void makeOneAtATime() {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement lock = connection.prepareStatement(ONE_AT_A_TIME)) {
                lock.setString(1, tenant);
                return lock.execute();
            }
        });
    }

    /** Adds a subscription to the open transaction's tenant. */
    void add(String id, SubscriptionTerms terms, Secret secret, String createdBy, OffsetDateTime now) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement insert = connection.prepareStatement(ADD)) {
                insert.setString(1, tenant);
                insert.setString(2, id);
                bind(connection, insert, 3, terms);
                insert.setObject(8, now);
                insert.setBytes(9, sealed(secret, tenant, id));
                insert.setObject(10, now);
                insert.setString(11, createdBy);
                return insert.executeUpdate();
            }
        });
    }

    /** All subscriptions, the latest first. */
    List<Subscription> all() {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(ALL)) {
                query.setString(1, tenant);
                return read(query);
            }
        });
    }

    /** The subscription with this id. */
    Optional<Subscription> find(String id) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(FIND)) {
                query.setString(1, tenant);
                query.setString(2, id);
                return read(query).stream().findFirst();
            }
        });
    }

    /** Changes a subscription unless somebody else has in the meantime; whether it did. */
    boolean change(String id, int version, SubscriptionTerms terms, OffsetDateTime now) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement update = connection.prepareStatement(CHANGE)) {
                String state = terms.state().toString();
                bind(connection, update, 1, terms);
                update.setString(6, state);
                update.setObject(7, now);
                update.setString(8, state);
                update.setString(9, terms.address());
                update.setString(10, state);
                update.setString(11, terms.address());
                update.setString(12, tenant);
                update.setString(13, id);
                update.setInt(14, version);
                return update.executeUpdate() == 1;
            }
        });
    }

    /** Removes a subscription with its deliveries unless somebody has changed it in the meantime; whether it did. */
    boolean remove(String id, int version) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement delete = connection.prepareStatement(REMOVE)) {
                delete.setString(1, tenant);
                delete.setString(2, id);
                delete.setInt(3, version);
                return delete.executeUpdate() == 1;
            }
        });
    }

    /** Gives a subscription a new secret; the one before stays valid until that moment. Whether nobody came between. */
    boolean rotate(String id, int version, Secret secret, OffsetDateTime formerUntil) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement update = connection.prepareStatement(ROTATE)) {
                update.setObject(1, formerUntil);
                update.setBytes(2, sealed(secret, tenant, id));
                update.setString(3, tenant);
                update.setString(4, id);
                update.setInt(5, version);
                return update.executeUpdate() == 1;
            }
        });
    }

    /** The secrets that are valid at this moment, the present one first. */
    List<Secret> secrets(String id, OffsetDateTime now) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(SECRETS)) {
                query.setObject(1, now);
                query.setString(2, tenant);
                query.setString(3, id);
                List<Secret> secrets = new ArrayList<>();
                try (ResultSet row = query.executeQuery()) {
                    if (row.next()) {
                        secrets.add(opened(row.getBytes(1), tenant, id));
                        byte[] former = row.getBytes(2);
                        if (former != null) {
                            secrets.add(opened(former, tenant, id));
                        }
                    }
                }
                return secrets;
            }
        });
    }

    /** A delivery has succeeded. */
    void well(String id) {
        mark(WELL, id, List.of());
    }

    /** A delivery has failed. */
    void failing(String id, OffsetDateTime now) {
        mark(FAILING, id, List.of(now));
    }

    /** Nothing is sent before this moment. */
    void hold(String id, OffsetDateTime until) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement update = connection.prepareStatement(HOLD)) {
                update.setObject(1, until);
                update.setString(2, tenant);
                update.setString(3, id);
                update.setObject(4, until);
                return update.executeUpdate();
            }
        });
    }

    /** Nothing is sent any more; whether it was active before. */
    boolean disable(String id, SubscriptionState state, OffsetDateTime now) {
        return mark(DISABLE, id, List.of(state.toString(), now)) == 1;
    }

    private int mark(String sql, String id, List<Object> values) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement update = connection.prepareStatement(sql)) {
                int index = 1;
                for (Object value : values) {
                    update.setObject(index++, value);
                }
                update.setString(index++, tenant);
                update.setString(index, id);
                return update.executeUpdate();
            }
        });
    }

    private static void bind(Connection connection, PreparedStatement statement, int first, SubscriptionTerms terms)
            throws SQLException {
        int index = first;
        statement.setString(index++, terms.address());
        statement.setString(index++, terms.description());
        statement.setArray(index++, array(connection, terms.types()));
        statement.setArray(index++, terms.sites() == null ? null : array(connection, terms.sites()));
        statement.setString(index, terms.state().toString());
    }

    private static Array array(Connection connection, List<String> texts) throws SQLException {
        return connection.createArrayOf("text", texts.toArray());
    }

    private byte[] sealed(Secret secret, String tenant, String id) {
        return seal.close(secret.bytes(), context(tenant, id));
    }

    private Secret opened(byte[] sealed, String tenant, String id) {
        return Secret.of(seal.open(sealed, context(tenant, id)));
    }

    private static byte[] context(String tenant, String id) {
        return (tenant + '\n' + id).getBytes(StandardCharsets.UTF_8);
    }

    private static List<Subscription> read(PreparedStatement query) throws SQLException {
        List<Subscription> subscriptions = new ArrayList<>();
        try (ResultSet row = query.executeQuery()) {
            while (row.next()) {
                subscriptions.add(new Subscription(
                        row.getString(1),
                        row.getInt(2),
                        new SubscriptionTerms(
                                row.getString(3),
                                row.getString(4),
                                Objects.requireNonNull(texts(row.getArray(5))),
                                texts(row.getArray(6)),
                                SubscriptionState.of(row.getString(7)).orElseThrow()),
                        row.getObject(8, OffsetDateTime.class),
                        row.getObject(9, OffsetDateTime.class),
                        row.getObject(10, OffsetDateTime.class),
                        row.getObject(11, OffsetDateTime.class),
                        row.getString(12)));
            }
        }
        return subscriptions;
    }

    private static @Nullable List<String> texts(@Nullable Array array) throws SQLException {
        return array == null ? null : List.of((String[]) array.getArray());
    }
}
