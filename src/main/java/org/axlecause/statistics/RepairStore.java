package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/**
 * How long proved repairs of a tenant were followed and whether their axle came back, read from folded cells and from what
 * waits to be folded, or from the rows of the repairs where no cells tell apart what is asked.
 */
@ApplicationScoped
class RepairStore {

    private final TenantTransaction transaction;
    private final KeptCellStore<Proved, Followed> kept = new KeptCellStore<>();

    RepairStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /**
     * Which repairs are asked about.
     *
     * @param by dimensions that they are told apart by
     * @param items items that were worked on, one of them at least; empty for all
     * @param byItem whether they are told apart by item too
     * @param asOf last day that is known
     * @param most days after which a repair is followed no more
     */
    record Wanted(Cohort cohort, List<Dimension> by, List<String> items, boolean byItem, LocalDate asOf, int most) {

        Wanted {
            by = List.copyOf(by);
            items = List.copyOf(items);
        }
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

        private Followed of(long number) {
            return new Followed(group, days, returned, number);
        }
    }

    /** Repairs by how long they were followed. */
    List<Followed> followed(Wanted wanted) {
        Set<Dimension> needed = needed(wanted);
        boolean withItems = wanted.byItem() || !wanted.items().isEmpty();
        Optional<RepairGrain> grain;
        if (withItems) {
            boolean itemAlone =
                    needed.isEmpty() && (wanted.byItem() || wanted.items().size() == 1);
            grain = itemAlone ? Optional.of(RepairGrain.ITEM) : Optional.empty();
        } else {
            grain = RepairGrain.byDay(needed);
        }
        return counted(wanted, grain.orElse(null), null);
    }

    /** Repairs that were followed to the end: those proved so long ago that no return can count any more. */
    List<Followed> followedToTheEnd(Wanted wanted) {
        LocalDate before = wanted.asOf().minusDays(wanted.most()).plusDays(1);
        boolean hasCells = wanted.items().isEmpty() && !wanted.byItem() && RepairGrain.STRATUM.hasAll(needed(wanted));
        return counted(wanted, hasCells ? RepairGrain.STRATUM : null, before);
    }

    private static Set<Dimension> needed(Wanted wanted) {
        Set<Dimension> needed = EnumSet.noneOf(Dimension.class);
        needed.addAll(wanted.by());
        needed.addAll(wanted.cohort().dimensions());
        return needed;
    }

    private List<Followed> counted(Wanted wanted, @Nullable RepairGrain grain, @Nullable LocalDate provedBefore) {
        Proved proved = new Proved(wanted, grain, provedBefore);
        return transaction.jdbc((connection, tenant) -> {
            Source source = Source.of(proved, connection, tenant);
            List<Followed> followed = source.ofCells.isEmpty()
                    ? List.of()
                    : kept.of(connection, tenant, proved, () -> added(source.cells, source.ofCells, wanted));
            return together(followed, added(source.rows, source.ofRows, wanted));
        });
    }

    /** Tenants of whom repairs are kept. */
    Set<String> keptTenants() {
        return kept.tenants();
    }

    /** Reads cells again that were asked for and have changed since; whether there were any. */
    boolean renewOne() {
        return transaction.jdbc((connection, tenant) -> {
            Proved proved = kept.changed(connection, tenant);
            if (proved != null) {
                Source source = Source.of(proved, connection, tenant);
                kept.renew(connection, tenant, proved, () -> added(source.cells, source.ofCells, proved.wanted()));
            }
            return proved != null;
        });
    }

    private static List<Followed> together(List<Followed> followed, List<Followed> more) {
        if (more.isEmpty()) {
            return followed;
        }
        Map<Followed, Long> changes = new LinkedHashMap<>();
        more.forEach(repairs -> changes.put(repairs.of(0), repairs.n()));
        List<Followed> together = new ArrayList<>(followed.size() + more.size());
        for (Followed repairs : followed) {
            Long change = changes.remove(repairs.of(0));
            together.add(change == null ? repairs : repairs.of(repairs.n() + change));
        }
        changes.forEach((repairs, n) -> together.add(repairs.of(n)));
        together.removeIf(repairs -> repairs.n() == 0);
        return together;
    }

    /** What the parts of a statement count, added up. */
    private static List<Followed> added(CountStore.Bound sql, List<String> parts, Wanted wanted) throws SQLException {
        String keys = wanted.by().stream()
                        .map(dimension -> "s." + dimension.column() + ", ")
                        .collect(Collectors.joining())
                + (wanted.byItem() ? "s.item, " : "");
        sql.add("SELECT " + keys + "d.days, r.returned, sum(s.n) AS n FROM (" + String.join(" UNION ALL ", parts)
                + ") s");
        sql.add(" CROSS JOIN LATERAL (SELECT s.after >= 0 AND s.verified + s.after <= ? AS returned) r")
                .value(wanted.asOf());
        sql.add(" CROSS JOIN LATERAL (SELECT CASE WHEN r.returned THEN s.after ELSE least(?, ? - s.verified) END"
                        + " AS days) d")
                .value(wanted.most())
                .value(wanted.asOf());
        sql.add(" WHERE s.verified <= ?").value(wanted.asOf());
        sql.add(" GROUP BY " + keys + "d.days, r.returned HAVING sum(s.n) <> 0");
        return read(sql, wanted);
    }

    private static List<Followed> read(CountStore.Bound sql, Wanted wanted) throws SQLException {
        List<Followed> found = new ArrayList<>();
        try (PreparedStatement query = sql.prepared();
                ResultSet row = query.executeQuery()) {
            int grouped = wanted.by().size() + (wanted.byItem() ? 1 : 0);
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
    }

    private record Proved(
            Wanted wanted,
            @Nullable RepairGrain grain,
            @Nullable LocalDate before) {}

    /**
     * Where repairs are counted from: day of the proof, days until the return or -1, and how many.
     *
     * @param cells a statement of folded cells, with the values of its parts
     * @param rows a statement of what waits to be folded and of rows, with the values of its parts
     * @param ofCells parts of the one
     * @param ofRows parts of the other
     */
    private record Source(
            CountStore.Bound cells,
            CountStore.Bound rows,
            Wanted wanted,
            @Nullable LocalDate provedBefore,
            List<String> ofCells,
            List<String> ofRows) {

        static Source of(Proved proved, Connection connection, String tenant) {
            Source source = new Source(
                    new CountStore.Bound(connection, tenant),
                    new CountStore.Bound(connection, tenant),
                    proved.wanted(),
                    proved.before(),
                    new ArrayList<>(),
                    new ArrayList<>());
            source.gather(proved.grain());
            return source;
        }

        /** Cells and deltas of whole months and rows of the days at the edges; or rows alone. */
        private void gather(@Nullable RepairGrain grain) {
            Cohort cohort = wanted.cohort();
            LocalDate from = cohort.from();
            LocalDate to = cohort.to();
            LocalDate first = cohort.firstWholeMonth();
            LocalDate end = cohort.endOfWholeMonths();
            if (grain == null || (first != null && end != null && !first.isBefore(end))) {
                addRows(from, to, null);
                return;
            }
            LocalDate wholeProofs = provedBefore == null ? null : provedBefore.withDayOfMonth(1);
            ofCells.add(cells(grain, first, end, wholeProofs));
            ofRows.add(repairs("statistics_repair_delta", "c.sign", first, end, null, wholeProofs));
            if (wholeProofs != null) {
                addRows(first, end, wholeProofs);
            }
            if (from != null && first != null && from.isBefore(first)) {
                addRows(from, first, null);
            }
            if (to != null && end != null && end.isBefore(to)) {
                addRows(end, to, null);
            }
        }

        private String cells(
                RepairGrain grain, @Nullable LocalDate from, @Nullable LocalDate to, @Nullable LocalDate proofsBefore) {
            CountStore.Bound part = cells.part();
            part.add("SELECT " + columns() + (wanted.byItem() ? "c.item, " : ""));
            part.add("c.verified, c.after, c.n FROM statistics_repair_cell c WHERE c.tenant_id = ?")
                    .tenant();
            part.add(" AND c.grain = '" + grain + "'");
            if (grain != RepairGrain.ITEM) {
                part.add(" AND c.item = ''");
            } else if (!wanted.items().isEmpty()) {
                part.add(" AND c.item = ANY (?)").texts(wanted.items());
            }
            CountStore.between(part, "c.month", from, to);
            CountStore.between(part, "c.verified", null, proofsBefore);
            CountStore.choose(part, wanted.cohort(), "c.month");
            return cells.take(part);
        }

        private void addRows(@Nullable LocalDate from, @Nullable LocalDate to, @Nullable LocalDate proofsFrom) {
            ofRows.add(repairs("statistics_repair", "1::bigint", from, to, proofsFrom, provedBefore));
        }

        private String repairs(
                String table,
                String number,
                @Nullable LocalDate from,
                @Nullable LocalDate to,
                @Nullable LocalDate proofsFrom,
                @Nullable LocalDate proofsBefore) {
            CountStore.Bound part = rows.part();
            part.add("SELECT " + columns() + (wanted.byItem() ? "i.item, " : ""));
            part.add("c.verified_day AS verified, " + RepairCellStore.after("?") + " AS after, " + number + " AS n")
                    .value(wanted.most());
            part.add(" FROM " + table + " c");
            part.add(wanted.byItem() ? " CROSS JOIN LATERAL unnest(c.items) AS i (item)" : "");
            part.add(" WHERE c.tenant_id = ?").tenant();
            CountStore.between(part, "c.day", from, to);
            CountStore.between(part, "c.verified_day", proofsFrom, proofsBefore);
            CountStore.choose(part, wanted.cohort(), "c.day");
            if (!wanted.items().isEmpty()) {
                part.add(wanted.byItem() ? " AND i.item = ANY (?)" : " AND c.items && ?::text[]")
                        .texts(wanted.items());
            }
            return rows.take(part);
        }

        private String columns() {
            return wanted.by().stream()
                    .map(dimension -> "c." + dimension.column() + ", ")
                    .collect(Collectors.joining());
        }
    }
}
