package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.axlecause.casefile.StatisticsTerms;
import org.axlecause.shared.TenantTransaction;

/**
 * Counts the cases of a month anew and puts cells right that differ. Folding and judging go on meanwhile: both leave the sum
 * of cells and waiting deltas as far from the cases as they found it, so that a difference stays right until it is added.
 */
@ApplicationScoped
public class RecountStore {

    private static final String DUE = "SELECT tenant_id FROM tenants_not_recounted_since(?)";

    private static final String TURN = """
            SELECT pg_try_advisory_xact_lock(hashtextextended('recount of statistics ' || f.tenant_id, 0))
              FROM statistics_fold f
             WHERE f.tenant_id = ? AND (f.recounted_at IS NULL OR f.recounted_at < ?)
            """;

    private static final String MONTHS = """
            WITH RECURSIVE of_cases (month) AS (
              SELECT date_trunc('month', min(day))::date FROM statistics_case WHERE tenant_id = ?
              UNION ALL
              SELECT (SELECT date_trunc('month', min(c.day))::date FROM statistics_case c
                       WHERE c.tenant_id = ? AND c.day >= m.month + INTERVAL '1 month')
                FROM of_cases m WHERE m.month IS NOT NULL)
            SELECT month FROM of_cases WHERE month IS NOT NULL
             UNION SELECT s.month FROM statistics_cell s JOIN statistics_place p USING (tenant_id, place)
                    WHERE p.tenant_id = ? AND p.grain = '%s'
             UNION SELECT date_trunc('month', day)::date FROM statistics_delta WHERE tenant_id = ?
             UNION SELECT month FROM statistics_repair_cell WHERE tenant_id = ?
             ORDER BY 1
            """.formatted(Grain.TOTAL);

    private static final String DELTAS_AND_ROWS = """
            SELECT %1$s, c.sign FROM statistics_delta c WHERE c.tenant_id = ? AND c.day >= ? AND c.day < ?
             UNION ALL
            SELECT %1$s, -1 FROM statistics_case c WHERE c.tenant_id = ? AND c.day >= ? AND c.day < ?
            """.formatted(CellStore.ROW);

    private static final String PLACES = CellStore.places(DELTAS_AND_ROWS);

    /** Rows that came with their deltas since the places were added cancel each other out, with a place or without. */
    private static final String DIFFERENT = """
            SELECT %1$s, sum(n) AS n, sum(amount) AS amount FROM (
              SELECT %1$s, n, amount FROM statistics_cell WHERE tenant_id = ? AND month >= ? AND month < ?
              UNION ALL (
              %2$s)) counted
             GROUP BY %1$s HAVING sum(n) <> 0 OR sum(amount) <> 0
            """.formatted(CellStore.KEY, CellStore.cells(DELTAS_AND_ROWS));

    private static final String PUT_RIGHT =
            putRight("statistics_cell", CellStore.KEY, List.of("n", "amount"), DIFFERENT);

    /** Whether a month has neither cells nor deltas; each of its cells would count cases in the total. */
    private static final String IS_EMPTY = """
            NOT EXISTS (SELECT 1 FROM statistics_cell s JOIN statistics_place p USING (tenant_id, place)
                         WHERE p.tenant_id = ? AND p.grain = '%s' AND s.month >= ? AND s.month < ?)
                AND NOT EXISTS (SELECT 1 FROM statistics_delta WHERE tenant_id = ? AND day >= ? AND day < ?)
            """.formatted(Grain.TOTAL);

    /** Counts the cells of such a month, and none where something came in between. */
    private static final String FILL = """
            WITH put AS (
              INSERT INTO statistics_cell (tenant_id, %1$s, n, amount)
              SELECT ?, counted.* FROM (
              %2$s) counted ORDER BY %1$s
              ON CONFLICT (tenant_id, %1$s)
              DO UPDATE SET n = statistics_cell.n + excluded.n, amount = statistics_cell.amount + excluded.amount
              RETURNING 1)
            UPDATE statistics_fold SET folded = folded + (SELECT count(*) FROM put) WHERE tenant_id = ?
            RETURNING (SELECT count(*) FROM put)
            """.formatted(
                    CellStore.KEY,
                    CellStore.cells("SELECT " + CellStore.ROW + ", 1 AS sign FROM statistics_case c"
                            + " WHERE c.tenant_id = ? AND c.day >= ? AND c.day < ? AND " + IS_EMPTY));

    private static final String DIFFERENT_REPAIRS =
            """
            SELECT %1$s, sum(n) AS n FROM (
              SELECT %1$s, n FROM statistics_repair_cell WHERE tenant_id = ? AND month >= ? AND month < ?
              UNION ALL (
              %2$s)) counted
             GROUP BY %1$s HAVING sum(n) <> 0
            """.formatted(RepairCellStore.KEY, RepairCellStore.cells("""
                    SELECT %1$s, c.sign FROM statistics_repair_delta c WHERE c.tenant_id = ? AND c.day >= ? AND c.day < ?
                     UNION ALL
                    SELECT %1$s, -1 FROM statistics_repair c WHERE c.tenant_id = ? AND c.day >= ? AND c.day < ?
                    """.formatted(RepairCellStore.ROW)));

    private static final String PUT_REPAIRS_RIGHT =
            putRight("statistics_repair_cell", RepairCellStore.KEY, List.of("n"), DIFFERENT_REPAIRS);

    private static final String COUNT = "SELECT count(*) FROM (%s) different";

    /** Two counts of one month at a time would both add the same difference. */
    private static final String LOCK =
            "SELECT pg_advisory_xact_lock(hashtextextended('count of ' || ?::text || ' in ' || ?::text, 0))";

    private static final String NOTE =
            "UPDATE statistics_fold SET recounted_at = ?, differences = ? WHERE tenant_id = ?";

    private final TenantTransaction transaction;
    private final int returnDays = StatisticsTerms.released().returnDays();

    RecountStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /**
     * Adds to the cells of a table what they lack or have too much, and tells how many differed; after the marks of the
     * difference it asks for the tenant twice.
     *
     * @param table the cells
     * @param key what tells them apart
     * @param sums what is added up in them
     * @param different a query of key and sums: by how much which of them are too large
     */
    static String putRight(String table, String key, List<String> sums, String different) {
        return """
                WITH different AS MATERIALIZED (
                  %1$s),
                     put AS (
                  INSERT INTO %2$s (tenant_id, %3$s, %4$s)
                  SELECT ?, %3$s, %5$s FROM different ORDER BY %3$s
                  ON CONFLICT (tenant_id, %3$s) DO UPDATE SET %6$s
                  RETURNING 1)
                UPDATE statistics_fold SET folded = folded + (SELECT count(*) FROM put) WHERE tenant_id = ?
                RETURNING (SELECT count(*) FROM put)
                """.formatted(
                        different,
                        table,
                        key,
                        String.join(", ", sums),
                        sums.stream().map(sum -> "-" + sum).collect(Collectors.joining(", ")),
                        sums.stream()
                                .map(sum -> sum + " = " + table + "." + sum + " + excluded." + sum)
                                .collect(Collectors.joining(", ")));
    }

    /** Tenants that were last counted before a moment; looks across tenants, outside any tenant's transaction. */
    List<String> due(OffsetDateTime moment) {
        return transaction.acrossTenants(DUE, row -> row.getString(1), moment);
    }

    /** The first days of the months that anything is counted in, in order; takes its time. */
    List<LocalDate> months() {
        return transaction.jdbc((connection, tenant) -> {
            bePatient(connection);
            try (PreparedStatement query = connection.prepareStatement(MONTHS)) {
                for (int index = 1; index <= 5; index++) {
                    query.setString(index, tenant);
                }
                List<LocalDate> months = new ArrayList<>();
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        months.add(rows.getObject(1, LocalDate.class));
                    }
                }
                return months;
            }
        });
    }

    /** Whether this replica may count until its transaction ends: nobody else is at it or has done it since that moment. */
    boolean takeTurn(OffsetDateTime moment) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement turn = connection.prepareStatement(TURN)) {
                turn.setString(1, tenant);
                turn.setObject(2, moment);
                try (ResultSet row = turn.executeQuery()) {
                    return row.next() && row.getBoolean(1);
                }
            }
        });
    }

    /** How many cells of a month differ from a count of the rows of its cases and repairs; 0 is right. */
    long differences(LocalDate month) {
        return transaction.jdbc((connection, tenant) -> {
            bePatient(connection);
            addPlaces(connection, tenant, month);
            try (PreparedStatement ofCases = connection.prepareStatement(COUNT.formatted(DIFFERENT));
                    PreparedStatement ofRepairs = connection.prepareStatement(COUNT.formatted(DIFFERENT_REPAIRS))) {
                bind(ofCases, tenant, month, List.of());
                bind(ofRepairs, tenant, month, List.of(returnDays));
                return CellStore.number(ofCases) + CellStore.number(ofRepairs);
            }
        });
    }

    /** Puts the cells of a month right; how many differed. */
    public long putRight(LocalDate month) {
        return transaction.jdbc((connection, tenant) -> {
            bePatient(connection);
            try (PreparedStatement lock = connection.prepareStatement(LOCK);
                    PreparedStatement ofRepairs = connection.prepareStatement(PUT_REPAIRS_RIGHT)) {
                lock.setString(1, month.toString());
                lock.setString(2, tenant);
                lock.execute();
                addPlaces(connection, tenant, month);
                bindTenants(ofRepairs, bind(ofRepairs, tenant, month, List.of(returnDays)), tenant);
                long differences = CellStore.number(ofRepairs);
                long filled = isEmpty(connection, tenant, month) ? fill(connection, tenant, month) : 0;
                return differences + (filled > 0 ? filled : putCasesRight(connection, tenant, month));
            }
        });
    }

    private static void addPlaces(Connection connection, String tenant, LocalDate month) throws SQLException {
        try (PreparedStatement places = connection.prepareStatement(PLACES)) {
            bindMonth(places, bindMonth(places, 1, tenant, month), tenant, month);
            places.executeUpdate();
        }
    }

    private static boolean isEmpty(Connection connection, String tenant, LocalDate month) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement("SELECT " + IS_EMPTY)) {
            bindMonth(query, bindMonth(query, 1, tenant, month), tenant, month);
            try (ResultSet row = query.executeQuery()) {
                row.next();
                return row.getBoolean(1);
            }
        }
    }

    private static long fill(Connection connection, String tenant, LocalDate month) throws SQLException {
        try (PreparedStatement fill = connection.prepareStatement(FILL)) {
            fill.setString(1, tenant);
            int next = 2;
            for (int part = 0; part < 3; part++) {
                next = bindMonth(fill, next, tenant, month);
            }
            fill.setString(next, tenant);
            return CellStore.number(fill);
        }
    }

    private static long putCasesRight(Connection connection, String tenant, LocalDate month) throws SQLException {
        try (PreparedStatement putRight = connection.prepareStatement(PUT_RIGHT)) {
            bindTenants(putRight, bind(putRight, tenant, month, List.of()), tenant);
            return CellStore.number(putRight);
        }
    }

    /** Keeps when all months were counted and how many cells differed. */
    void note(OffsetDateTime now, long differences) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement note = connection.prepareStatement(NOTE)) {
                note.setObject(1, now);
                note.setLong(2, differences);
                note.setString(3, tenant);
                return note.executeUpdate();
            }
        });
    }

    /** Tenant and month for the cells, then more values, tenant and month for deltas and for rows; the next mark. */
    private static int bind(PreparedStatement statement, String tenant, LocalDate month, List<Integer> more)
            throws SQLException {
        int mark = bindMonth(statement, 1, tenant, month);
        for (int value : more) {
            statement.setInt(mark++, value);
        }
        mark = bindMonth(statement, mark, tenant, month);
        return bindMonth(statement, mark, tenant, month);
    }

    /** The tenant of the cells that are put right, and that of the fold. */
    private static void bindTenants(PreparedStatement statement, int mark, String tenant) throws SQLException {
        statement.setString(mark, tenant);
        statement.setString(mark + 1, tenant);
    }

    private static int bindMonth(PreparedStatement statement, int first, String tenant, LocalDate month)
            throws SQLException {
        int mark = first;
        statement.setString(mark++, tenant);
        statement.setObject(mark++, month);
        statement.setObject(mark++, month.plusMonths(1));
        return mark;
    }

    /** No limit of time, not even for turns, and memory enough to count a month of millions without sorting it. */
    static void bePatient(Connection connection) throws SQLException {
        CellStore.writeCells(connection);
        try (Statement patient = connection.createStatement()) {
            patient.execute("SET LOCAL statement_timeout = 0; SET LOCAL lock_timeout = 0; SET LOCAL work_mem = '96MB'");
        }
    }
}
