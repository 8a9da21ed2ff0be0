package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.axlecause.shared.DatabaseException;
import org.axlecause.shared.TenantTransaction;

/** The folded cells of a tenant and the deltas that wait to be folded into them. */
@ApplicationScoped
public class CellStore {

    private static final String DIMENSIONS =
            Stream.of(Dimension.values()).map(Dimension::column).collect(Collectors.joining(", "));

    static final String KEY = "grain, question, site, make, model, month, category, layout, age_band, odometer_band,"
            + " regime, countable";

    private static final String WAITING = "SELECT tenant_id FROM tenants_with_deltas()";

    private static final String FIRST =
            "INSERT INTO statistics_fold (tenant_id, folded) VALUES (?, 0) ON CONFLICT DO NOTHING";

    private static final String TURN = "SELECT folded FROM statistics_fold WHERE tenant_id = ? FOR UPDATE SKIP LOCKED";

    private static final String FOLD = """
            WITH chosen AS MATERIALIZED (
              SELECT delta FROM statistics_delta WHERE tenant_id = ? ORDER BY delta LIMIT ?),
                 taken AS (
              DELETE FROM statistics_delta WHERE tenant_id = ? AND delta IN (SELECT delta FROM chosen) RETURNING *),
                 added AS (
              INSERT INTO statistics_cell (tenant_id, %1$s, n, amount)
              SELECT ?, counted.* FROM (
              %2$s) counted ORDER BY %1$s
              ON CONFLICT (tenant_id, %1$s)
              DO UPDATE SET n = statistics_cell.n + excluded.n, amount = statistics_cell.amount + excluded.amount)
            UPDATE statistics_fold SET folded = folded + (SELECT count(*) FROM taken) WHERE tenant_id = ?
            RETURNING (SELECT count(*) FROM taken)
            """.formatted(KEY, cells("taken", "c.sign"));

    private static final String DIFFERENCES =
            """
            SELECT count(*) FROM (
              SELECT %1$s FROM (
                SELECT %1$s, n, amount FROM statistics_cell WHERE tenant_id = ?
                UNION ALL (
                %2$s)
                UNION ALL (
                %3$s)) counted
               GROUP BY %1$s HAVING sum(n) <> 0 OR sum(amount) <> 0) different
            """.formatted(KEY, cells("statistics_delta", "c.sign"), cells("statistics_case", "-1"));

    private static final String AGE = """
            SELECT coalesce((SELECT folded FROM statistics_fold WHERE tenant_id = ?), 0)
                   + (SELECT count(*) FROM statistics_delta WHERE tenant_id = ?)
            """;

    private final DataSource dataSource;
    private final TenantTransaction transaction;

    CellStore(DataSource dataSource, TenantTransaction transaction) {
        this.dataSource = dataSource;
        this.transaction = transaction;
    }

    /** Tenants with deltas that wait; looks across tenants, outside any tenant's transaction. */
    List<String> waiting() {
        try (Connection connection = dataSource.getConnection();
                PreparedStatement query = connection.prepareStatement(WAITING);
                ResultSet rows = query.executeQuery()) {
            List<String> tenants = new ArrayList<>();
            while (rows.next()) {
                tenants.add(rows.getString(1));
            }
            return tenants;
        } catch (SQLException e) {
            throw new DatabaseException(e);
        }
    }

    /** Makes what replicas take turns by, in a transaction of its own before the first fold. */
    public void prepare() {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement first = connection.prepareStatement(FIRST)) {
                first.setString(1, tenant);
                return first.executeUpdate();
            }
        });
    }

    /** Folds some deltas; how many. None where none wait or another replica has the turn. */
    int fold(int most) {
        return transaction.jdbc((connection, tenant) -> {
            if (!hasTurn(connection, tenant)) {
                return 0;
            }
            try (PreparedStatement fold = connection.prepareStatement(FOLD)) {
                fold.setString(1, tenant);
                fold.setInt(2, most);
                fold.setString(3, tenant);
                fold.setString(4, tenant);
                fold.setString(5, tenant);
                fold.setString(6, tenant);
                return number(fold).intValue();
            }
        });
    }

    /** Folds as {@link #fold} does, however long it takes: for whoever brings in many cases at once. */
    public int foldPatiently(int most) {
        transaction.jdbc((connection, tenant) -> {
            try (Statement patient = connection.createStatement()) {
                return patient.execute("SET LOCAL statement_timeout = 0");
            }
        });
        return fold(most);
    }

    /** How many cells differ from a count of all rows of the cases; 0 is right. It reads them all and takes its time. */
    public long differences() {
        return transaction.jdbc((connection, tenant) -> {
            try (Statement patient = connection.createStatement();
                    PreparedStatement query = connection.prepareStatement(DIFFERENCES)) {
                patient.execute("SET LOCAL statement_timeout = 0");
                for (int index = 1; index <= 3; index++) {
                    query.setString(index, tenant);
                }
                return number(query);
            }
        });
    }

    /** A number that grows with whatever changes the data. */
    long age() {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(AGE)) {
                query.setString(1, tenant);
                query.setString(2, tenant);
                return number(query);
            }
        });
    }

    private static boolean hasTurn(Connection connection, String tenant) throws SQLException {
        try (PreparedStatement turn = connection.prepareStatement(TURN)) {
            turn.setString(1, tenant);
            try (ResultSet row = turn.executeQuery()) {
                return row.next();
            }
        }
    }

    private static Long number(PreparedStatement query) throws SQLException {
        try (ResultSet row = query.executeQuery()) {
            return row.next() ? row.getLong(1) : 0L;
        }
    }

    private static String blankWhereLeftOut(Dimension dimension) {
        return "coalesce(" + dimension.column() + ", '') AS " + dimension.column();
    }

    /** Cells of all grains, added up from rows that list countables; the tenant is to be bound once. */
    static String cells(String rows, String sign) {
        String sets = Stream.of(Grain.values())
                .map(grain -> "(month, question, countable, "
                        + Stream.of(Dimension.values())
                                .filter(grain::has)
                                .map(Dimension::column)
                                .collect(Collectors.joining(", "))
                        + ")")
                .collect(Collectors.joining(", "));
        String grain = Stream.of(Grain.values())
                .map(each -> " WHEN " + each.grouping() + " THEN '" + each + "'")
                .collect(Collectors.joining("", "CASE GROUPING(" + DIMENSIONS + ")", " END"));
        String blanks = Stream.of(Dimension.SITE, Dimension.MAKE, Dimension.MODEL)
                .map(CellStore::blankWhereLeftOut)
                .collect(Collectors.joining(", "));
        String others = Stream.of(
                        Dimension.CATEGORY,
                        Dimension.LAYOUT,
                        Dimension.AGE_BAND,
                        Dimension.ODOMETER_BAND,
                        Dimension.REGIME)
                .map(CellStore::blankWhereLeftOut)
                .collect(Collectors.joining(", "));
        String answered = Stream.of(Grain.values())
                .map(each -> "(GROUPING(" + DIMENSIONS + ") = " + each.grouping() + " AND question IN ('"
                        + String.join("', '", each.questions()) + "'))")
                .collect(Collectors.joining(" OR "));
        return """
                SELECT %1$s AS grain, question, %2$s, month, %3$s, countable,
                       sum(n)::bigint AS n, sum(amount) AS amount
                  FROM (SELECT date_trunc('month', c.day)::date AS month, %4$s, k.question, u.countable, %5$s AS n,
                               coalesce(u.amount, 0) * %5$s AS amount
                          FROM %6$s c
                         CROSS JOIN LATERAL unnest(c.countables, c.amounts) AS u (countable, amount)
                          JOIN statistics_countable k ON k.tenant_id = c.tenant_id AND k.countable = u.countable
                         WHERE c.tenant_id = ?) t
                 GROUP BY GROUPING SETS (%7$s)
                HAVING (%8$s) AND (sum(n) <> 0 OR sum(amount) <> 0)
                """.formatted(
                        grain,
                        blanks,
                        others,
                        Stream.of(Dimension.values())
                                .map(dimension -> "c." + dimension.column())
                                .collect(Collectors.joining(", ")),
                        sign,
                        rows,
                        sets,
                        answered);
    }
}
