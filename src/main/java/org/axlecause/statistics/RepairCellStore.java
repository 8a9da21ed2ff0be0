package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.shared.TenantTransaction;

/** The folded cells of a tenant's repairs and the deltas that wait to be folded into them. */
@ApplicationScoped
class RepairCellStore {

    /** What {@link #cells} needs of a row {@code c}. */
    static final String ROW = "c.tenant_id, c.day, c.items, c.verified_day, c.returned_day, "
            + Stream.of(Dimension.values())
                    .map(dimension -> "c." + dimension.column())
                    .collect(Collectors.joining(", "));

    static final String KEY = "grain, item, site, make, model, verified, after, month, category, layout, age_band,"
            + " odometer_band, regime";

    private static final String FOLD = """
            WITH chosen AS MATERIALIZED (
              SELECT delta FROM statistics_repair_delta WHERE tenant_id = ? ORDER BY delta LIMIT ?),
                 taken AS (
              DELETE FROM statistics_repair_delta WHERE tenant_id = ? AND delta IN (SELECT delta FROM chosen) RETURNING *),
                 added AS (
              INSERT INTO statistics_repair_cell (tenant_id, %1$s, n)
              SELECT ?, counted.* FROM (
              %2$s) counted ORDER BY %1$s
              ON CONFLICT (tenant_id, %1$s) DO UPDATE SET n = statistics_repair_cell.n + excluded.n)
            UPDATE statistics_fold SET folded = folded + (SELECT count(*) FROM taken) WHERE tenant_id = ?
            RETURNING (SELECT count(*) FROM taken)
            """.formatted(KEY, cells("SELECT " + ROW + ", c.sign FROM taken c"));

    private final TenantTransaction transaction;

    RepairCellStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** Folds some deltas; how many. None where none wait or another replica has the turn. */
    int fold(int most, int returnDays) {
        return transaction.jdbc((connection, tenant) -> {
            if (!CellStore.hasTurn(connection, tenant)) {
                return 0;
            }
            try (PreparedStatement fold = connection.prepareStatement(FOLD)) {
                fold.setString(1, tenant);
                fold.setInt(2, most);
                fold.setString(3, tenant);
                fold.setString(4, tenant);
                fold.setInt(5, returnDays);
                fold.setString(6, tenant);
                return CellStore.number(fold).intValue();
            }
        });
    }

    /** Days until the return of a row {@code c}, -1 where it did not return within the days that count. */
    static String after(String returnDays) {
        return "CASE WHEN c.returned_day <= c.verified_day + " + returnDays
                + " THEN greatest(c.returned_day - c.verified_day, 0) ELSE -1 END";
    }

    /**
     * Cells of all grains in the columns of {@link #KEY} and n, added up from repairs; before the marks of the rows stands
     * one for the days within which a return counts.
     *
     * @param rows a query of {@link #ROW} and a sign
     */
    static String cells(String rows) {
        String grains = Stream.of(RepairGrain.values())
                .map(grain -> "SELECT '" + grain + "' COLLATE \"C\" AS grain, "
                        + (grain == RepairGrain.ITEM ? "i.item COLLATE \"C\"" : "'' COLLATE \"C\"") + " AS item, "
                        + (grain == RepairGrain.STRATUM
                                ? "date_trunc('month', s.verified_day)::date AS verified, CASE WHEN s.after >= 0 THEN 1"
                                        + " ELSE -1 END AS after"
                                : "s.verified_day AS verified, s.after AS after")
                        + ", s.month, "
                        + Stream.of(Dimension.values())
                                .map(dimension ->
                                        (grain.has(dimension) ? "s." + dimension.column() : "'' COLLATE \"C\"") + " AS "
                                                + dimension.column())
                                .collect(Collectors.joining(", "))
                        + ", s.sign FROM repair s"
                        + (grain == RepairGrain.ITEM ? " CROSS JOIN LATERAL unnest(s.items) AS i (item)" : ""))
                .map(query -> "SELECT " + KEY + ", sum(sign)::bigint AS n FROM (" + query + ") t GROUP BY " + KEY
                        + " HAVING sum(sign) <> 0")
                .collect(Collectors.joining("\n UNION ALL "));
        return """
                WITH repair AS MATERIALIZED (
                  SELECT date_trunc('month', c.day)::date AS month, c.*, %2$s AS after FROM (%1$s) c)
                %3$s
                """.formatted(rows, after("?"), grains);
    }
}
