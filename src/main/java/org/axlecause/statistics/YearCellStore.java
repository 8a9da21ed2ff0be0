package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import org.axlecause.shared.TenantTransaction;

/**
 * Compares the cells of a year with those of its months and puts them right. The database adds to both in one transaction,
 * so that a difference stays right until it is added.
 */
@ApplicationScoped
class YearCellStore {

    private static final String KEY = "place, question, year, countable";

    private static final String DIFFERENT = """
            SELECT %1$s, sum(n) AS n, sum(amount) AS amount FROM (
              SELECT %1$s, n, amount FROM statistics_year_cell WHERE tenant_id = ? AND year = ?
              UNION ALL
              SELECT c.place, c.question, date_trunc('year', c.month)::date, c.countable, -c.n, -c.amount
                FROM statistics_cell c
                JOIN statistics_place p ON p.tenant_id = c.tenant_id AND p.place = c.place AND p.grain <> '%2$s'
               WHERE c.tenant_id = ? AND c.month >= ? AND c.month < ?) counted
             GROUP BY %1$s HAVING sum(n) <> 0 OR sum(amount) <> 0
            """.formatted(KEY, Grain.DAILY);

    private static final String PUT_RIGHT =
            RecountStore.putRight("statistics_year_cell", KEY, List.of("n", "amount"), DIFFERENT);

    private static final String COUNT = "SELECT count(*) FROM (%s) different".formatted(DIFFERENT);

    private final TenantTransaction transaction;

    YearCellStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** How many cells of a year, named by its first day, differ from the sum of its months; 0 is right. */
    long differences(LocalDate year) {
        return transaction.jdbc((connection, tenant) -> {
            RecountStore.bePatient(connection);
            try (PreparedStatement count = connection.prepareStatement(COUNT)) {
                bind(count, tenant, year);
                return CellStore.number(count);
            }
        });
    }

    /** Puts the cells of a year right; how many differed. */
    long putRight(LocalDate year) {
        return transaction.jdbc((connection, tenant) -> putRight(connection, tenant, year));
    }

    private static long putRight(Connection connection, String tenant, LocalDate year) throws SQLException {
        RecountStore.bePatient(connection);
        try (PreparedStatement putRight = connection.prepareStatement(PUT_RIGHT)) {
            bind(putRight, tenant, year);
            putRight.setString(6, tenant);
            putRight.setString(7, tenant);
            return CellStore.number(putRight);
        }
    }

    private static void bind(PreparedStatement statement, String tenant, LocalDate year) throws SQLException {
        statement.setString(1, tenant);
        statement.setObject(2, year);
        statement.setString(3, tenant);
        statement.setObject(4, year);
        statement.setObject(5, year.plusYears(1));
    }
}
