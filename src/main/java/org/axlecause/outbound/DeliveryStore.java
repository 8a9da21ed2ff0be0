package org.axlecause.outbound;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** Events on their way to subscriptions. */
@ApplicationScoped
class DeliveryStore {

    private static final String DUE = "SELECT tenant_id, subscription FROM due_subscriptions(?, ?)";

    /** The first pending delivery of each case alone, so that a case's events arrive in their order. */
    private static final String CLAIM = """
            WITH first AS MATERIALIZED (
              SELECT d.event FROM delivery d
               WHERE d.tenant_id = ? AND d.subscription = ? AND d.state = 'pending' AND d.due_at <= ?
                 AND NOT EXISTS (SELECT 1 FROM delivery e
                                  WHERE e.tenant_id = d.tenant_id AND e.subscription = d.subscription
                                    AND e.aggregateid = d.aggregateid AND e.state = 'pending'
                                    AND e.position < d.position)
                 AND EXISTS (SELECT 1 FROM subscription s
                              WHERE s.tenant_id = d.tenant_id AND s.subscription = d.subscription
                                AND s.state = 'active' AND (s.held_until IS NULL OR s.held_until <= ?))
               ORDER BY d.due_at, d.position LIMIT ? FOR UPDATE OF d SKIP LOCKED)
            UPDATE delivery d
               SET claim = ?, due_at = ?, attempts = d.attempts + 1, attempted_at = ?
              FROM first JOIN outbox o ON o.tenant_id = ? AND o.id = first.event
             WHERE d.tenant_id = ? AND d.subscription = ? AND d.event = first.event
            RETURNING d.event, d.claim, d.attempts, o.payload
            """;

    private static final String SETTLE = """
            UPDATE delivery SET state = ?, claim = NULL, due_at = ?, outcome = ?
             WHERE tenant_id = ? AND subscription = ? AND event = ? AND claim = ?
            """;

    private static final String LIST = """
            SELECT d.event, o.type, d.aggregateid, d.state, d.attempts, d.due_at, d.attempted_at, d.outcome,
                   o.created_at, d.position
              FROM delivery d JOIN outbox o ON o.tenant_id = d.tenant_id AND o.id = d.event
             WHERE d.tenant_id = ? AND d.subscription = ? AND d.position < ? AND (?::text IS NULL OR d.state = ?)
             ORDER BY d.position DESC LIMIT ?
            """;

    /** The events that a subscription asks for; whether it did so when they happened doesn't matter. */
    private static final String ASKED_FOR = """
              FROM outbox o JOIN subscription s ON s.tenant_id = o.tenant_id
             WHERE o.tenant_id = ? AND s.subscription = ? AND o.type = ANY (s.types)
               AND (s.sites IS NULL OR o.site = ANY (s.sites))
               AND (?::uuid IS NULL OR o.id = ?) AND o.created_at >= ? AND o.created_at < ?
            """;

    private static final String COUNT = "SELECT count(*) " + ASKED_FOR;

    private static final String REPLAY = """
            INSERT INTO delivery (tenant_id, subscription, event, position, aggregateid, state, attempts, due_at)
            SELECT o.tenant_id, s.subscription, o.id, o.position, o.aggregateid, 'pending', 0, ?
            """ + ASKED_FOR + """
            ON CONFLICT (tenant_id, subscription, event) DO UPDATE
               SET state = 'pending', attempts = 0, due_at = excluded.due_at, claim = NULL, outcome = NULL
             WHERE delivery.state <> 'pending'
            """;

    private final TenantTransaction transaction;

    DeliveryStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** A subscription whose turn it is. */
    record Due(String tenant, String subscription) {}

    /** A delivery as it is listed. */
    record Listed(
            UUID event,
            String type,
            String reference,
            DeliveryState state,
            int attempts,
            OffsetDateTime dueAt,
            @Nullable OffsetDateTime attemptedAt,
            @Nullable String outcome,
            OffsetDateTime createdAt,
            long position) {}

    /** The subscriptions with something due, either the failing or the others; reads outside any tenant's transaction. */
    List<Due> due(OffsetDateTime now, boolean failing) {
        return transaction.acrossTenants(DUE, row -> new Due(row.getString(1), row.getString(2)), now, failing);
    }

    /** Takes up to so many due deliveries, at most one of each case; others leave them alone until the claim runs out. */
    List<Delivery> claim(String subscription, OffsetDateTime now, OffsetDateTime until, int most) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement claim = connection.prepareStatement(CLAIM)) {
                claim.setString(1, tenant);
                claim.setString(2, subscription);
                claim.setObject(3, now);
                claim.setObject(4, now);
                claim.setInt(5, most);
                claim.setObject(6, UUID.randomUUID());
                claim.setObject(7, until);
                claim.setObject(8, now);
                claim.setString(9, tenant);
                claim.setString(10, tenant);
                claim.setString(11, subscription);
                List<Delivery> claimed = new ArrayList<>();
                try (ResultSet rows = claim.executeQuery()) {
                    while (rows.next()) {
                        claimed.add(new Delivery(
                                rows.getObject(1, UUID.class),
                                rows.getObject(2, UUID.class),
                                rows.getInt(3),
                                rows.getString(4)));
                    }
                }
                return claimed;
            }
        });
    }

    /** Records how an attempt went, unless its claim has run out and somebody else has taken it since. */
    void settle(String subscription, Delivery delivery, DeliveryState state, OffsetDateTime dueAt, String outcome) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement update = connection.prepareStatement(SETTLE)) {
                update.setString(1, state.toString());
                update.setObject(2, dueAt);
                update.setString(3, outcome);
                update.setString(4, tenant);
                update.setString(5, subscription);
                update.setObject(6, delivery.event());
                update.setObject(7, delivery.claim());
                return update.executeUpdate();
            }
        });
    }

    /** A page of a subscription's deliveries, newest event first, below this position. */
    List<Listed> list(String subscription, @Nullable DeliveryState state, long before, int limit) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(LIST)) {
                String code = state == null ? null : state.toString();
                query.setString(1, tenant);
                query.setString(2, subscription);
                query.setLong(3, before);
                query.setString(4, code);
                query.setString(5, code);
                query.setInt(6, limit);
                List<Listed> deliveries = new ArrayList<>();
                try (ResultSet row = query.executeQuery()) {
                    while (row.next()) {
                        deliveries.add(listed(row));
                    }
                }
                return deliveries;
            }
        });
    }

    /** How many events of a time range, or whether the one event, the subscription asks for. */
    int count(String subscription, Replay replay) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(COUNT)) {
                bind(query, 1, tenant, subscription, replay);
                try (ResultSet row = query.executeQuery()) {
                    row.next();
                    return row.getInt(1);
                }
            }
        });
    }

    /** Makes the events due again from their first attempt on, but for those that are on their way already. */
    int replay(String subscription, Replay replay, OffsetDateTime now) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement insert = connection.prepareStatement(REPLAY)) {
                insert.setObject(1, now);
                bind(insert, 2, tenant, subscription, replay);
                return insert.executeUpdate();
            }
        });
    }

    private static void bind(PreparedStatement query, int first, String tenant, String subscription, Replay replay)
            throws SQLException {
        int index = first;
        query.setString(index++, tenant);
        query.setString(index++, subscription);
        query.setObject(index++, replay.event());
        query.setObject(index++, replay.event());
        query.setObject(index++, replay.from());
        query.setObject(index, replay.to());
    }

    private static Listed listed(ResultSet row) throws SQLException {
        return new Listed(
                row.getObject(1, UUID.class),
                row.getString(2),
                row.getString(3),
                DeliveryState.of(row.getString(4)).orElseThrow(),
                row.getInt(5),
                Objects.requireNonNull(row.getObject(6, OffsetDateTime.class)),
                row.getObject(7, OffsetDateTime.class),
                row.getString(8),
                Objects.requireNonNull(row.getObject(9, OffsetDateTime.class)),
                row.getLong(10));
    }
}
