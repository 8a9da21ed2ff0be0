package org.axlecause.outbound;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.axlecause.shared.DatabaseException;
import org.axlecause.shared.TenantTransaction;

/** What is to be told to others, kept in the transaction that made it true. */
@ApplicationScoped
class OutboxStore {

    /** One statement, so that judging waits for the database once. */
    private static final String ADD = """
            WITH event AS (
              INSERT INTO outbox (tenant_id, id, aggregatetype, aggregateid, type, site, payload, created_at)
              VALUES (?, ?, 'case', ?, ?, ?, ?::json, ?)
              RETURNING tenant_id, id, position, aggregateid, type, site, created_at)
            INSERT INTO delivery (tenant_id, subscription, event, position, aggregateid, state, attempts, due_at)
            SELECT e.tenant_id, s.subscription, e.id, e.position, e.aggregateid, 'pending', 0, e.created_at
              FROM event e JOIN subscription s ON s.tenant_id = e.tenant_id
             WHERE s.tenant_id = ? AND s.state = 'active' AND e.type = ANY (s.types)
               AND (s.sites IS NULL OR e.site = ANY (s.sites))
            """;

    private static final String REMOVE = "DELETE FROM outbox WHERE tenant_id = ? AND created_at < ?";

    private static final String AGED = "SELECT tenant_id FROM tenants_with_events_before(?)";

    private final DataSource dataSource;
    private final TenantTransaction transaction;

    OutboxStore(DataSource dataSource, TenantTransaction transaction) {
        this.dataSource = dataSource;
        this.transaction = transaction;
    }

    /** Adds an event to the open transaction, with a delivery to each active subscription that asks for it. */
    void add(OutgoingEvent event) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement insert = connection.prepareStatement(ADD)) {
                insert.setString(1, tenant);
                insert.setObject(2, event.id());
                insert.setString(3, event.reference());
                insert.setString(4, event.type().toString());
                insert.setString(5, event.site());
                insert.setString(6, event.body());
                insert.setObject(7, event.createdAt());
                insert.setString(8, tenant);
                return insert.executeUpdate();
            }
        });
    }

    /** Removes the events from before this moment, with their deliveries, and says how many there were. */
    int removeBefore(OffsetDateTime moment) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement delete = connection.prepareStatement(REMOVE)) {
                delete.setString(1, tenant);
                delete.setObject(2, moment);
                return delete.executeUpdate();
            }
        });
    }

    /** The tenants that have events from before this moment; reads outside any tenant's transaction. */
    List<String> tenantsWithEventsBefore(OffsetDateTime moment) {
        try (Connection connection = dataSource.getConnection();
                PreparedStatement query = connection.prepareStatement(AGED)) {
            query.setObject(1, moment);
            List<String> tenants = new ArrayList<>();
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    tenants.add(rows.getString(1));
                }
            }
            return tenants;
        } catch (SQLException e) {
            throw new DatabaseException(e);
        }
    }
}
