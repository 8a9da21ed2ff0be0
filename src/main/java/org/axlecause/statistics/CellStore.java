package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
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

    private static final String FIRST_DAY = "0001-01-01";

    private static final String WAITING = "SELECT tenant_id FROM tenants_with_deltas()";

    private static final String WAITING_DELTAS = """
            SELECT (SELECT count(*) FROM (SELECT 1 FROM statistics_delta WHERE tenant_id = ? LIMIT ?) c)
                   + (SELECT count(*) FROM (SELECT 1 FROM statistics_repair_delta WHERE tenant_id = ? LIMIT ?) c)
                   + (SELECT count(*) FROM (SELECT 1 FROM statistics_open_delta WHERE tenant_id = ? LIMIT ?) c)
            """;

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

    /** How many deltas of any kind wait in the open transaction's tenant; counts on to no more than so many of a kind. */
    long waiting(int most) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(WAITING_DELTAS)) {
                for (int mark = 1; mark <= 6; mark += 2) {
                    query.setString(mark, tenant);
                    query.setInt(mark + 1, most);
                }
                return number(query);
            }
        });
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
        writeCells(connection);
        try (PreparedStatement turn = connection.prepareStatement(TURN)) {
            turn.setString(1, tenant);
            try (ResultSet row = turn.executeQuery()) {
                return row.next();
            }
        }
    }

    /**
     * Settings of a transaction that writes cells. The database can't guess how many rows a list of countables has, and would
     * look each of them up by itself; and it takes cells only from a release that knows all their grains.
     */
    static void writeCells(Connection connection) throws SQLException {
        try (Statement plan = connection.createStatement()) {
            plan.execute("SET LOCAL enable_nestloop = off; SET LOCAL enable_mergejoin = off; SET LOCAL jit = off;"
                    + " SET LOCAL axlecause.grains = " + Grain.values().length);
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
     * are there. A cell is counted by one number, its place and its day, since a number is compared many times faster than
     * eight texts; rows without a place are counted in none of its cells. A day has a number of 20 bits. The series of one makes
     * the planner guess a thousand times the rows, so that the known countables are what it hashes.
     *
     * @param rows a query of {@link #ROW} and a sign
     */
    static String cells(String rows) {
        List<Grain> grains = List.of(Grain.values());
        String places = each(
                grains,
                grain -> ", (" + name(grain) + ".place::bigint << 20) + s."
                        + (grain == Grain.DAILY ? "day_number" : "month_number") + " AS of_" + name(grain));
        String joins = each(
                grains,
                grain -> "\n    LEFT JOIN statistics_place " + name(grain) + " ON " + name(grain)
                        + ".tenant_id = s.tenant_id AND " + name(grain) + ".grain = '" + grain + "'"
                        + Stream.of(Dimension.values())
                                .filter(grain::has)
                                .map(Dimension::column)
                                .map(column -> " AND " + name(grain) + "." + column + " = s." + column)
                                .collect(Collectors.joining()));
        String counted = grains.stream()
                .collect(Collectors.groupingBy(Grain::questions, LinkedHashMap::new, Collectors.toList()))
                .entrySet()
                .stream()
                .map(alike -> counted(alike.getKey(), alike.getValue()))
                .collect(Collectors.joining("\n UNION ALL\n"));
        return """
                WITH source AS MATERIALIZED (
                  SELECT r.*, r.day - DATE '%1$s' AS day_number,
                         date_trunc('month', r.day::timestamp)::date - DATE '%1$s' AS month_number
                    FROM (%2$s) r
                   CROSS JOIN generate_series(1, (SELECT 1))),
                     known AS MATERIALIZED (
                  SELECT countable, question FROM statistics_countable
                   WHERE tenant_id = (SELECT tenant_id FROM source LIMIT 1)),
                     placed AS MATERIALIZED (
                  SELECT s.sign, s.countables, s.amounts%3$s FROM source s%4$s),
                     counted AS (
                %5$s)
                SELECT (c.cell >> 20)::integer AS place, k.question, DATE '%1$s' + (c.cell & 1048575)::integer AS month,
                       c.countable, c.n, c.amount
                  FROM counted c
                  JOIN known k ON k.countable = c.countable
                """.formatted(FIRST_DAY, rows, places, joins, counted);
    }

    /** What is counted by grains that answer the same questions. */
    private static String counted(List<String> questions, List<Grain> grains) {
        String cell =
                grains.stream().map(grain -> "p.of_" + name(grain)).collect(Collectors.joining(", ", "coalesce(", ")"));
        String places = grains.stream().map(grain -> "of_" + name(grain)).collect(Collectors.joining(", "));
        String sets = grains.stream()
                .map(grain -> "(p.countable, p.of_" + name(grain) + ")")
                .collect(Collectors.joining(", "));
        return """
                SELECT %1$s AS cell, p.countable, sum(p.sign)::bigint AS n, coalesce(sum(p.amount * p.sign), 0) AS amount
                  FROM (SELECT %4$s, sign, unnest(countables) AS countable, unnest(amounts) AS amount FROM placed) p
                  JOIN known k ON k.countable = p.countable AND k.question IN ('%2$s')
                 GROUP BY GROUPING SETS (%3$s)
                HAVING %1$s IS NOT NULL AND (sum(p.sign) <> 0 OR sum(p.amount * p.sign) <> 0)
                """.formatted(cell, String.join("', '", questions), sets, places);
    }

    private static String each(List<Grain> grains, Function<Grain, String> part) {
        return grains.stream().map(part).collect(Collectors.joining());
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

    private static String name(Grain grain) {
        return grain.name().toLowerCase(Locale.ROOT);
    }
}
