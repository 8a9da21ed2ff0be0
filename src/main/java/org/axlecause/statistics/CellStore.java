package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.shared.TenantTransaction;

/** The folded cells of a tenant and the deltas that wait to be folded into them. */
@ApplicationScoped
public class CellStore {

    private static final String DIMENSIONS =
            Stream.of(Dimension.values()).map(Dimension::column).collect(Collectors.joining(", "));

    /** What {@link #cells} needs of a row {@code c}. */
    static final String ROW = "c.tenant_id, c.day, c.countables, c.amounts, "
            + Stream.of(Dimension.values())
                    .map(dimension -> "c." + dimension.column())
                    .collect(Collectors.joining(", "));

    static final String KEY = "place, question, month, countable";

    private static final String DAY_NUMBER = "(%s - DATE '2000-01-01')::bigint";

    private static final String WAITING = "SELECT tenant_id FROM tenants_with_deltas()";

    private static final String FIRST =
            "INSERT INTO statistics_fold (tenant_id, folded) VALUES (?, 0) ON CONFLICT DO NOTHING";

    private static final String TURN = "SELECT folded FROM statistics_fold WHERE tenant_id = ? FOR UPDATE SKIP LOCKED";

    private static final String CHOSEN =
            "SELECT delta FROM statistics_delta WHERE tenant_id = ? ORDER BY delta LIMIT ?";

    private static final String PLACES_OF_CHOSEN =
            places("SELECT " + ROW + ", c.sign FROM statistics_delta c WHERE c.tenant_id = ? AND c.delta = ANY (?)");

    private static final String FOLD = """
            WITH taken AS (
              DELETE FROM statistics_delta WHERE tenant_id = ? AND delta = ANY (?) RETURNING *),
                 added AS (
              INSERT INTO statistics_cell (tenant_id, %1$s, n, amount)
              SELECT ?, counted.* FROM (
              %2$s) counted ORDER BY %1$s
              ON CONFLICT (tenant_id, %1$s)
              DO UPDATE SET n = statistics_cell.n + excluded.n, amount = statistics_cell.amount + excluded.amount)
            UPDATE statistics_fold SET folded = folded + (SELECT count(*) FROM taken) WHERE tenant_id = ?
            RETURNING (SELECT count(*) FROM taken)
            """.formatted(KEY, cells("SELECT " + ROW + ", c.sign FROM taken c"));

    private static final String AGE = """
            SELECT coalesce((SELECT folded FROM statistics_fold WHERE tenant_id = ?), 0)
                   + (SELECT count(*) FROM statistics_delta WHERE tenant_id = ?)
                   + (SELECT count(*) FROM statistics_repair_delta WHERE tenant_id = ?)
                   + (SELECT count(*) FROM statistics_open_delta WHERE tenant_id = ?)
            """;

    private final TenantTransaction transaction;

    CellStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** Tenants with deltas that wait; looks across tenants, outside any tenant's transaction. */
    List<String> waiting() {
        return transaction.acrossTenants(WAITING, row -> row.getString(1));
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
            Array chosen = chosen(connection, tenant, most);
            try (PreparedStatement places = connection.prepareStatement(PLACES_OF_CHOSEN);
                    PreparedStatement fold = connection.prepareStatement(FOLD)) {
                places.setString(1, tenant);
                places.setArray(2, chosen);
                places.executeUpdate();
                fold.setString(1, tenant);
                fold.setArray(2, chosen);
                fold.setString(3, tenant);
                fold.setString(4, tenant);
                return number(fold).intValue();
            }
        });
    }

    private static Array chosen(Connection connection, String tenant, int most) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(CHOSEN)) {
            query.setString(1, tenant);
            query.setInt(2, most);
            List<Long> deltas = new ArrayList<>();
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    deltas.add(rows.getLong(1));
                }
            }
            return connection.createArrayOf("int8", deltas.toArray());
        }
    }

    /** A number that grows with whatever changes the data. */
    long age() {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(AGE)) {
                for (int mark = 1; mark <= 4; mark++) {
                    query.setString(mark, tenant);
                }
                return number(query);
            }
        });
    }

    /** Whether this replica may fold for the tenant until its transaction ends. */
    static boolean hasTurn(Connection connection, String tenant) throws SQLException {
        planForMany(connection);
        try (PreparedStatement turn = connection.prepareStatement(TURN)) {
            turn.setString(1, tenant);
            try (ResultSet row = turn.executeQuery()) {
                return row.next();
            }
        }
    }

    /** The database can't guess how many rows a list of countables has, and would look each of them up by itself. */
    static void planForMany(Connection connection) throws SQLException {
        try (Statement plan = connection.createStatement()) {
            plan.execute("SET LOCAL enable_nestloop = off; SET LOCAL enable_mergejoin = off; SET LOCAL jit = off");
        }
    }

    /** The number that a statement answers with; 0 where it answers with none. */
    static Long number(PreparedStatement query) throws SQLException {
        try (ResultSet row = query.executeQuery()) {
            return row.next() ? row.getLong(1) : 0L;
        }
    }

    /** Adds the places of rows that have none yet; {@code rows} as with {@link #cells}. */
    static String places(String rows) {
        String named = Stream.of(Grain.values())
                .map(grain ->
                        "SELECT DISTINCT tenant_id, '" + grain + "' COLLATE \"C\" AS grain" + blanks(grain) + " FROM d")
                .collect(Collectors.joining("\n  UNION ALL "));
        return """
                WITH d AS MATERIALIZED (SELECT DISTINCT tenant_id, %1$s FROM (%2$s) c)
                INSERT INTO statistics_place (tenant_id, grain, %1$s)
                SELECT n.* FROM (
                  %3$s) n
                 WHERE NOT EXISTS (SELECT 1 FROM statistics_place p WHERE p.tenant_id = n.tenant_id AND p.grain = n.grain%4$s)
                 ORDER BY n.*
                ON CONFLICT DO NOTHING
                """.formatted(DIMENSIONS, rows, named, alike("p", "n"));
    }

    /**
     * Cells of all grains, in the columns of {@link #KEY}, n and amount, added up from rows that list countables and whose places
     * are there. What tells cells apart is counted by number and named afterwards: numbers are compared many times faster
     * than eight texts.
     *
     * @param rows a query of {@link #ROW} and a sign
     */
    static String cells(String rows) {
        List<Grain> grains = List.of(Grain.values());
        String cohort = grains.stream()
                .filter(grain -> grain != Grain.DAILY)
                .map(grain -> "dense_rank() OVER (ORDER BY month" + list(grain, dimension -> ", " + dimension.column())
                        + ") AS " + column(grain))
                .collect(Collectors.joining(",\n         "));
        String wanted = grains.stream()
                .map(grain -> "CASE WHEN k.question IN ('" + String.join("', '", grain.questions()) + "') THEN "
                        + (grain == Grain.DAILY ? DAY_NUMBER.formatted("s.day") : "o." + column(grain)) + " END AS "
                        + column(grain))
                .collect(Collectors.joining(",\n         "));
        String columns = grains.stream().map(CellStore::column).collect(Collectors.joining(", "));
        String which = grains.stream()
                .map(grain -> "WHEN GROUPING(" + column(grain) + ") = 0 THEN '" + grain + "' COLLATE \"C\"")
                .collect(Collectors.joining(" ", "CASE ", " END"));
        String sets = grains.stream()
                .map(grain -> "(countable, " + column(grain) + ")")
                .collect(Collectors.joining(", "));
        String names = grains.stream()
                .map(grain -> "SELECT DISTINCT '" + grain + "' COLLATE \"C\" AS grain, "
                        + (grain == Grain.DAILY ? DAY_NUMBER.formatted("day") : column(grain)) + " AS cell, "
                        + (grain == Grain.DAILY ? "day AS month" : "month") + blanks(grain)
                        + (grain == Grain.DAILY ? " FROM source" : " FROM cohort"))
                .collect(Collectors.joining("\n  UNION ALL "));
        return """
                WITH source AS MATERIALIZED (%1$s),
                     cohort AS MATERIALIZED (
                  SELECT month, %2$s, %3$s
                    FROM (SELECT DISTINCT date_trunc('month', day)::date AS month, %2$s FROM source) d),
                     known AS MATERIALIZED (
                  SELECT countable, question FROM statistics_countable
                   WHERE tenant_id = (SELECT tenant_id FROM source LIMIT 1)),
                     tallied AS (
                  SELECT u.countable, s.sign, u.amount * s.sign AS amount, %4$s
                    FROM source s
                    JOIN cohort o ON o.month = date_trunc('month', s.day)::date%5$s
                   CROSS JOIN LATERAL unnest(s.countables, s.amounts) AS u (countable, amount)
                    JOIN known k ON k.countable = u.countable),
                     counted AS (
                  SELECT %6$s AS grain, coalesce(%7$s) AS cell, countable, sum(sign)::bigint AS n,
                         coalesce(sum(amount), 0) AS amount
                    FROM tallied
                   GROUP BY GROUPING SETS (%8$s)
                  HAVING coalesce(%7$s) IS NOT NULL AND (sum(sign) <> 0 OR sum(amount) <> 0)),
                     named AS (
                  SELECT n.grain, n.cell, n.month, p.place
                    FROM (
                  %9$s) n
                    JOIN statistics_place p ON p.tenant_id = (SELECT tenant_id FROM source LIMIT 1) AND p.grain = n.grain%10$s)
                SELECT m.place, k.question, m.month, c.countable, c.n, c.amount
                  FROM counted c
                  JOIN named m USING (grain, cell)
                  JOIN known k ON k.countable = c.countable
                """.formatted(
                rows, DIMENSIONS, cohort, wanted, alike("o", "s"), which, columns, sets, names, alike("p", "n"));
    }

    /** The dimensions of a grain, and blanks for those that it leaves out. */
    private static String blanks(Grain grain) {
        return Stream.of(Dimension.values())
                .map(dimension -> ", " + (grain.has(dimension) ? dimension.column() : "'' COLLATE \"C\"") + " AS "
                        + dimension.column())
                .collect(Collectors.joining());
    }

    private static String alike(String one, String other) {
        return Stream.of(Dimension.values())
                .map(dimension -> " AND " + one + "." + dimension.column() + " = " + other + "." + dimension.column())
                .collect(Collectors.joining());
    }

    private static String list(Grain grain, Function<Dimension, String> each) {
        return Stream.of(Dimension.values()).filter(grain::has).map(each).collect(Collectors.joining());
    }

    private static String column(Grain grain) {
        return "of_" + grain.name().toLowerCase(Locale.ROOT);
    }
}
