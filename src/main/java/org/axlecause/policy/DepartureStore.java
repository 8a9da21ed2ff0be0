package org.axlecause.policy;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** Counts the departures of a tenant's cases by clause and site. */
@ApplicationScoped
class DepartureStore {

    private static final String COUNT = """
            SELECT d.clause, c.site, count(DISTINCT d.reference) AS cases,
                   count(*) FILTER (WHERE d.acts) AS acting, count(*) FILTER (WHERE NOT d.acts) AS idle
              FROM case_departure d
              JOIN case_file c ON c.tenant_id = d.tenant_id AND c.reference = d.reference
             WHERE d.tenant_id = ? AND c.site IS NOT NULL
               AND (?::text[] IS NULL OR c.site = ANY (?::text[]))
               AND (?::text IS NULL OR d.clause = ?::text)
               AND (?::date IS NULL OR c.opened_day >= ?::date)
               AND (?::date IS NULL OR c.opened_day < ?::date)
             GROUP BY d.clause, c.site
             ORDER BY acting DESC, d.clause, c.site
            """;

    private final TenantTransaction transaction;

    DepartureStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /**
     * Departures from one clause at one site.
     *
     * @param clause code of the clause
     * @param site code of the site
     * @param cases cases with such departures
     * @param acting departures that act
     * @param withoutEffect departures from a clause that is locked, or that decides no line
     */
    record Count(String clause, String site, int cases, int acting, int withoutEffect) {}

    List<Count> count(
            @Nullable List<String> sites, @Nullable String clause, @Nullable LocalDate from, @Nullable LocalDate to) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(COUNT)) {
                query.setString(1, tenant);
                query.setArray(2, PolicyVersionStore.texts(connection, sites));
                query.setArray(3, PolicyVersionStore.texts(connection, sites));
                query.setString(4, clause);
                query.setString(5, clause);
                query.setObject(6, from);
                query.setObject(7, from);
                query.setObject(8, to);
                query.setObject(9, to);
                return read(query);
            }
        });
    }

    private static List<Count> read(PreparedStatement query) throws SQLException {
        List<Count> counts = new ArrayList<>();
        try (ResultSet row = query.executeQuery()) {
            while (row.next()) {
                counts.add(new Count(
                        row.getString("clause"),
                        row.getString("site"),
                        row.getInt("cases"),
                        row.getInt("acting"),
                        row.getInt("idle")));
            }
        }
        return counts;
    }
}
