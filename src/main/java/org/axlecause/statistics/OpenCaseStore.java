package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import org.axlecause.shared.TenantTransaction;

/** Counts cases that have not ended; statistics tell their number and count nothing else of them. */
@ApplicationScoped
class OpenCaseStore {

    private static final String FOLD = """
            WITH chosen AS MATERIALIZED (
              SELECT delta FROM statistics_open_delta WHERE tenant_id = ? ORDER BY delta LIMIT ?),
                 taken AS (
              DELETE FROM statistics_open_delta WHERE tenant_id = ? AND delta IN (SELECT delta FROM chosen) RETURNING *),
                 added AS (
              INSERT INTO statistics_open_cell (tenant_id, site, day, make, model, n)
              SELECT ?, site, day, make, model, sum(sign) FROM taken
               GROUP BY site, day, make, model HAVING sum(sign) <> 0
               ORDER BY site, day, make, model
              ON CONFLICT (tenant_id, site, day, make, model) DO UPDATE SET n = statistics_open_cell.n + excluded.n)
            UPDATE statistics_fold SET folded = folded + (SELECT count(*) FROM taken) WHERE tenant_id = ?
            RETURNING (SELECT count(*) FROM taken)
            """;

    private static final String DROP_EMPTY = "DELETE FROM statistics_open_cell WHERE tenant_id = ? AND n = 0";

    private final TenantTransaction transaction;

    OpenCaseStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** How many there are of these sites, days, makes and models; a case that no site is known of is of none. */
    long count(Cohort cohort) {
        return transaction.jdbc((connection, tenant) -> {
            CountStore.Bound sql = new CountStore.Bound(connection, tenant);
            String cells = part(sql, cohort, "c.n", "statistics_open_cell");
            String deltas = part(sql, cohort, "c.sign", "statistics_open_delta");
            sql.add("SELECT coalesce(sum(n), 0) FROM (" + cells + " UNION ALL " + deltas + ") s");
            try (PreparedStatement query = sql.prepared();
                    ResultSet row = query.executeQuery()) {
                row.next();
                return row.getLong(1);
            }
        });
    }

    private static String part(CountStore.Bound sql, Cohort cohort, String number, String table) {
        CountStore.Bound part = sql.part();
        part.add("SELECT " + number + " AS n FROM " + table + " c WHERE c.tenant_id = ?")
                .tenant();
        CountStore.between(part, "c.day", cohort.from(), cohort.to());
        CountStore.choose(part, cohort.onlyBy(Dimension.SITE, Dimension.MAKE, Dimension.MODEL), "c.day");
        return sql.take(part);
    }

    /** Folds some deltas; how many. None where none wait or another replica has the turn. */
    int fold(int most) {
        return transaction.jdbc((connection, tenant) -> {
            if (!CellStore.hasTurn(connection, tenant)) {
                return 0;
            }
            try (PreparedStatement fold = connection.prepareStatement(FOLD);
                    PreparedStatement dropEmpty = connection.prepareStatement(DROP_EMPTY)) {
                fold.setString(1, tenant);
                fold.setInt(2, most);
                for (int mark = 3; mark <= 5; mark++) {
                    fold.setString(mark, tenant);
                }
                int folded = CellStore.number(fold).intValue();
                dropEmpty.setString(1, tenant);
                dropEmpty.executeUpdate();
                return folded;
            }
        });
    }
}
