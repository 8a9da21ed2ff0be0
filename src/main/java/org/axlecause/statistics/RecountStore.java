package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import javax.sql.DataSource;
import org.axlecause.shared.DatabaseException;
import org.axlecause.shared.TenantTransaction;

/**
 * Counts all cases anew and puts cells right that differ. Folding and judging go on meanwhile: both leave the sum of cells
 * and waiting deltas as far from the cases as they found it, so that a difference stays right until it is added.
 */
@ApplicationScoped
class RecountStore {

    private static final String DUE = "SELECT tenant_id FROM tenants_not_recounted_since(?)";

    private static final String TURN = """
            SELECT pg_try_advisory_xact_lock(hashtextextended('recount of statistics ' || f.tenant_id, 0))
              FROM statistics_fold f
             WHERE f.tenant_id = ? AND (f.recounted_at IS NULL OR f.recounted_at < ?)
            """;

    private static final String PUT_RIGHT = """
            WITH different AS MATERIALIZED (
              SELECT %1$s, sum(n) AS n, sum(amount) AS amount FROM (
                SELECT %1$s, n, amount FROM statistics_cell WHERE tenant_id = ?
                UNION ALL (
                %2$s)
                UNION ALL (
                %3$s)) counted
               GROUP BY %1$s HAVING sum(n) <> 0 OR sum(amount) <> 0),
                 put AS (
              INSERT INTO statistics_cell (tenant_id, %1$s, n, amount)
              SELECT ?, %1$s, -n, -amount FROM different ORDER BY %1$s
              ON CONFLICT (tenant_id, %1$s)
              DO UPDATE SET n = statistics_cell.n + excluded.n, amount = statistics_cell.amount + excluded.amount)
            SELECT count(*) FROM different
            """.formatted(
            CellStore.KEY, CellStore.cells("statistics_delta", "c.sign"), CellStore.cells("statistics_case", "-1"));

    private static final String NOTE = """
            UPDATE statistics_fold SET recounted_at = ?, differences = ?, folded = folded + ? WHERE tenant_id = ?
            """;

    private final DataSource dataSource;
    private final TenantTransaction transaction;

    RecountStore(DataSource dataSource, TenantTransaction transaction) {
        this.dataSource = dataSource;
        this.transaction = transaction;
    }

    /** Tenants that were last counted before a moment; looks across tenants, outside any tenant's transaction. */
    List<String> due(OffsetDateTime moment) {
        try (Connection connection = dataSource.getConnection();
                PreparedStatement query = connection.prepareStatement(DUE)) {
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

    /**
     * Counts anew, however long it takes, and puts cells right; how many differed. Empty where another replica is at it or
     * has done it since that moment.
     */
    OptionalLong recount(OffsetDateTime moment, OffsetDateTime now) {
        return transaction.jdbc((connection, tenant) -> {
            if (!hasTurn(connection, tenant, moment)) {
                return OptionalLong.empty();
            }
            try (Statement patient = connection.createStatement();
                    PreparedStatement putRight = connection.prepareStatement(PUT_RIGHT);
                    PreparedStatement note = connection.prepareStatement(NOTE)) {
                patient.execute("SET LOCAL statement_timeout = 0");
                for (int index = 1; index <= 4; index++) {
                    putRight.setString(index, tenant);
                }
                long differences;
                try (ResultSet row = putRight.executeQuery()) {
                    row.next();
                    differences = row.getLong(1);
                }
                note.setObject(1, now);
                note.setLong(2, differences);
                note.setLong(3, differences);
                note.setString(4, tenant);
                note.executeUpdate();
                return OptionalLong.of(differences);
            }
        });
    }

    private static boolean hasTurn(Connection connection, String tenant, OffsetDateTime moment) throws SQLException {
        try (PreparedStatement turn = connection.prepareStatement(TURN)) {
            turn.setString(1, tenant);
            turn.setObject(2, moment);
            try (ResultSet row = turn.executeQuery()) {
                return row.next() && row.getBoolean(1);
            }
        }
    }
}
