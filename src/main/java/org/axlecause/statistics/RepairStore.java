package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** How long proved repairs of a tenant were followed and whether their axle came back. */
@ApplicationScoped
class RepairStore {

    private final TenantTransaction transaction;

    RepairStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /**
     * Repairs that were followed equally long.
     *
     * @param group values of the dimensions, and of the item where it was asked for, in that order
     * @param days days after the proof
     * @param returned whether the axle came back then; otherwise no more is known
     * @param n how many
     */
    record Followed(List<String> group, long days, boolean returned, long n) {

        Followed {
            group = List.copyOf(group);
        }
    }

    /**
     * Repairs by how long they were followed.
     *
     * @param items items that were worked on, one of them at least; empty for all
     * @param asOf last day that is known
     * @param most days after which a repair is followed no more
     * @param byItem whether they are told apart by item too
     * @param provedBefore only those proved before that day; null for all
     */
    List<Followed> followed(
            Cohort cohort,
            List<Dimension> by,
            List<String> items,
            boolean byItem,
            LocalDate asOf,
            int most,
            @Nullable LocalDate provedBefore) {
        return transaction.jdbc((connection, tenant) -> {
            CountStore.Bound sql = new CountStore.Bound(connection, tenant);
            String keys = by.stream()
                            .map(dimension -> "c." + dimension.column() + ", ")
                            .collect(Collectors.joining())
                    + (byItem ? "i.item, " : "");
            sql.add("SELECT " + keys + "days, returned, count(*) FROM statistics_repair c");
            sql.add(byItem ? " CROSS JOIN LATERAL unnest(c.items) AS i (item)" : "");
            sql.add(
                            " CROSS JOIN LATERAL (SELECT coalesce(c.returned_day <= least(c.verified_day + ?, ?), false) AS returned) r")
                    .value(most)
                    .value(asOf);
            sql.add(
                            " CROSS JOIN LATERAL (SELECT CASE WHEN r.returned THEN c.returned_day ELSE least(c.verified_day + ?, ?)"
                                    + " END - c.verified_day AS days) d")
                    .value(most)
                    .value(asOf);
            sql.add(" WHERE c.tenant_id = ? AND c.verified_day <= ?")
                    .value(tenant)
                    .value(asOf);
            if (provedBefore != null) {
                sql.add(" AND c.verified_day < ?").value(provedBefore);
            }
            CountStore.between(sql, "c.day", cohort.from(), cohort.to());
            CountStore.choose(sql, cohort, "c.day");
            if (!items.isEmpty()) {
                sql.add(byItem ? " AND i.item = ANY (?)" : " AND c.items && ?::text[]")
                        .texts(items);
            }
            sql.add(" GROUP BY " + keys + "days, returned");
            List<Followed> found = new ArrayList<>();
            try (PreparedStatement query = sql.prepared();
                    ResultSet row = query.executeQuery()) {
                int grouped = by.size() + (byItem ? 1 : 0);
                while (row.next()) {
                    List<String> group = new ArrayList<>();
                    for (int index = 1; index <= grouped; index++) {
                        group.add(row.getString(index));
                    }
                    found.add(new Followed(
                            group, row.getLong(grouped + 1), row.getBoolean(grouped + 2), row.getLong(grouped + 3)));
                }
            }
            return found;
        });
    }
}
