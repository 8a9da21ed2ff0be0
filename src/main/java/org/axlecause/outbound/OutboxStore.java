package org.axlecause.outbound;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.axlecause.shared.TenantTransaction;

/** What is to be told to others, kept in the transaction that made it true. */
@ApplicationScoped
class OutboxStore {

    /** One statement, so that judging waits for the database once. */
    private static final String ADD = """
            WITH event AS (
              INSERT INTO outbox (tenant_id, id, aggregatetype, aggregateid, type, site, payload, created_at)
              VALUES (?, ?, ?, ?, ?, ?, ?::json, ?)
              RETURNING tenant_id, id, position, aggregateid, type, site, created_at)
            INSERT INTO delivery (tenant_id, subscription, event, position, aggregateid, state, attempts, due_at)
            SELECT e.tenant_id, s.subscription, e.id, e.position, e.aggregateid, 'pending', 0, e.created_at
              FROM event e JOIN subscription s ON s.tenant_id = e.tenant_id
             WHERE s.tenant_id = ? AND s.state = 'active' AND e.type = ANY (s.types)
               AND (s.sites IS NULL OR e.site = ANY (s.sites))
            """;

    private static final String REMOVE =
            "DELETE FROM outbox WHERE tenant_id = ? AND created_at < ? AND (published_at IS NOT NULL OR NOT ?)";

    /** The first unpublished event of each case alone, so that a case's events are sent in their order. */
    private static final String CLAIM = """
            WITH first AS MATERIALIZED (
              SELECT o.id FROM outbox o
               WHERE o.tenant_id = ? AND o.published_at IS NULL AND (o.claimed_until IS NULL OR o.claimed_until <= ?)
                 AND NOT EXISTS (SELECT 1 FROM outbox e
                                  WHERE e.tenant_id = o.tenant_id AND e.aggregateid = o.aggregateid
                                    AND e.published_at IS NULL AND e.position < o.position)
               ORDER BY o.position LIMIT ? FOR UPDATE OF o SKIP LOCKED)
            UPDATE outbox o SET claimed_until = ? FROM first WHERE o.tenant_id = ? AND o.id = first.id
            RETURNING o.id, o.aggregateid, o.payload
            """;

    private static final String PUBLISHED = "UPDATE outbox SET published_at = ? WHERE tenant_id = ? AND id = ANY (?)";

    private static final String RELEASE = "UPDATE outbox SET claimed_until = NULL WHERE tenant_id = ? AND id = ANY (?)";

    private static final String AGED = "SELECT tenant_id FROM tenants_with_events_before(?)";

    private final TenantTransaction transaction;

    OutboxStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** Adds an event to the open transaction, with a delivery to each active subscription that asks for it. */
    void add(OutgoingEvent event) {
        String tenant = transaction.tenant();
        transaction.later(
                ADD,
                TenantTransaction.ANY_ROWS,
                tenant,
                event.id(),
                event.type().aggregate(),
                event.reference(),
                event.type().toString(),
                event.site(),
                event.body(),
                event.createdAt(),
                tenant);
    }

    /** An event that Kafka hasn't got yet. */
    record Unpublished(UUID id, String reference, String body) {}

    /** Takes up to so many unpublished events, at most one of each case; others leave them alone until then. */
    List<Unpublished> claim(OffsetDateTime now, OffsetDateTime until, int most) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement claim = connection.prepareStatement(CLAIM)) {
                claim.setString(1, tenant);
                claim.setObject(2, now);
                claim.setInt(3, most);
                claim.setObject(4, until);
                claim.setString(5, tenant);
                List<Unpublished> claimed = new ArrayList<>();
                try (ResultSet row = claim.executeQuery()) {
                    while (row.next()) {
                        claimed.add(new Unpublished(row.getObject(1, UUID.class), row.getString(2), row.getString(3)));
                    }
                }
                return claimed;
            }
        });
    }

    /** Marks events as published. */
    void published(Collection<UUID> events, OffsetDateTime now) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement update = connection.prepareStatement(PUBLISHED)) {
                update.setObject(1, now);
                update.setString(2, tenant);
                update.setArray(3, connection.createArrayOf("uuid", events.toArray()));
                return update.executeUpdate();
            }
        });
    }

    /** Gives up the claim on events, which anybody may send at once. */
    void release(Collection<UUID> events) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement update = connection.prepareStatement(RELEASE)) {
                update.setString(1, tenant);
                update.setArray(2, connection.createArrayOf("uuid", events.toArray()));
                return update.executeUpdate();
            }
        });
    }

    /** Removes events from before this moment with their deliveries, unpublished ones unless they are kept; how many. */
    int removeBefore(OffsetDateTime moment, boolean keepUnpublished) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement delete = connection.prepareStatement(REMOVE)) {
                delete.setString(1, tenant);
                delete.setObject(2, moment);
                delete.setBoolean(3, keepUnpublished);
                return delete.executeUpdate();
            }
        });
    }

    /** The tenants that have events from before this moment; reads outside any tenant's transaction. */
    List<String> tenantsWithEventsBefore(OffsetDateTime moment) {
        return transaction.acrossTenants(AGED, row -> row.getString(1), moment);
    }
}
