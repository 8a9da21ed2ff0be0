package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.axlecause.facts.CaseStatus;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** Counts cases that have not ended; statistics tell their number and count nothing else of them. */
@ApplicationScoped
public class OpenCaseStore {

    private static final String COUNT = """
            SELECT count(*) FROM case_file
             WHERE tenant_id = ? AND status = ANY (?)
               AND (?::date IS NULL OR opened_day >= ?)
               AND (?::date IS NULL OR opened_day < ?)
               AND (?::int[] IS NULL OR date_part('month', opened_day) = ANY (?))
               AND (?::text[] IS NULL OR site = ANY (?))
               AND (?::text[] IS NULL OR coalesce(make, '%1$s') = ANY (?))
               AND (?::text[] IS NULL OR coalesce(model, '%1$s') = ANY (?))
            """.formatted(StatisticsTerms.UNKNOWN);

    private final TenantTransaction transaction;

    OpenCaseStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /**
     * Which open cases are counted; what is null chooses nothing.
     *
     * @param from first day of presentation
     * @param to first day of presentation that no longer counts
     * @param months numbers of the months of presentation
     * @param sites codes of sites
     * @param makes makes of the vehicles
     * @param models models of the vehicles
     */
    public record Wanted(
            @Nullable LocalDate from,
            @Nullable LocalDate to,
            @Nullable List<Integer> months,
            @Nullable List<String> sites,
            @Nullable List<String> makes,
            @Nullable List<String> models) {

        /** Every open case. */
        public static final Wanted ALL = new Wanted(null, null, null, null, null, null);
    }

    /** How many there are. */
    public long count(Wanted wanted) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(COUNT)) {
                query.setString(1, tenant);
                query.setArray(
                        2,
                        connection.createArrayOf(
                                "text",
                                Stream.of(CaseStatus.values())
                                        .map(CaseStatus::toString)
                                        .filter(status -> !CountCase.isEnded(status))
                                        .toArray()));
                int mark = 3;
                for (LocalDate day : new LocalDate[] {wanted.from(), wanted.to()}) {
                    query.setObject(mark++, day);
                    query.setObject(mark++, day);
                }
                mark = list(connection, query, mark, "int", wanted.months());
                mark = list(connection, query, mark, "text", wanted.sites());
                mark = list(connection, query, mark, "text", wanted.makes());
                list(connection, query, mark, "text", wanted.models());
                try (ResultSet row = query.executeQuery()) {
                    row.next();
                    return row.getLong(1);
                }
            }
        });
    }

    private static int list(
            Connection connection, PreparedStatement query, int mark, String type, @Nullable List<?> values)
            throws SQLException {
        for (int index = mark; index < mark + 2; index++) {
            query.setArray(index, values == null ? null : connection.createArrayOf(type, values.toArray()));
        }
        return mark + 2;
    }
}
