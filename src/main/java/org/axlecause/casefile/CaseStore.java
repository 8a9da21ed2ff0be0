package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.axlecause.facts.CaseStatus;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.EntryId;
import org.axlecause.judgement.ShownDeparture;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.SqlArray;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** The cases of a tenant: their lock, their latest judgement and the rows that lists ask. */
@ApplicationScoped
public class CaseStore {

    private static final String LOCK =
            "SELECT site, chain_length, chain_hash FROM case_file WHERE tenant_id = ? AND reference = ? FOR UPDATE";

    private static final String OPEN = """
            INSERT INTO case_file (tenant_id, reference, status, opened, opened_day, version, judging, chain_length,
                                   chain_hash, changed_at)
            SELECT ?, ?, ?, ?, ?, 0, 'none', 0, ?, ?
             WHERE NOT EXISTS (SELECT 1 FROM case_tombstone WHERE tenant_id = ? AND reference = ?)
            ON CONFLICT DO NOTHING
            """;

    private static final String SAVE = """
            UPDATE case_file
               SET site = ?, status = ?, opened = ?, opened_day = ?, version = ?, make = ?, model = ?,
                   document = ?::json, document_digest = ?, judging = 'done', policy = ?, rulebook = ?, judged_of = ?,
                   changed_at = ?, digested_at = ?
             WHERE tenant_id = ? AND reference = ?
            """;

    private static final String FAILED =
            "UPDATE case_file SET judging = 'failed', changed_at = ? WHERE tenant_id = ? AND reference = ?";

    /** What is ruled out by now, and what a release before this one wrote, a row for each place. */
    private static final String DELETE_CAUSES = """
            DELETE FROM case_cause
             WHERE tenant_id = ? AND reference = ?
               AND (standing <> 'not-ruled-out' OR (rank, code) NOT IN (
                     SELECT c.rank, c.code FROM unnest(?::int[], ?::text[]) AS c (rank, code)))
            """;

    private static final String DELETE_DEPARTURES = "DELETE FROM case_departure WHERE tenant_id = ? AND reference = ?";

    private static final String SAVE_CAUSES = """
            INSERT INTO case_cause (tenant_id, reference, rank, code, standing, root)
            SELECT ?, ?, c.rank, c.code, 'not-ruled-out', false FROM unnest(?::int[], ?::text[]) AS c (rank, code)
            ON CONFLICT DO NOTHING
            """;

    private static final String SAVE_DEPARTURES = """
            INSERT INTO case_departure (tenant_id, reference, source, id, clause, line, acts)
            SELECT ?, ?, d.* FROM unnest(?::text[], ?::text[], ?::text[], ?::text[], ?::boolean[]) AS d
            """;

    private static final String COLUMNS = """
            SELECT reference, site, status, opened, opened_day, version, make, model, judging, policy, rulebook,
            """;

    private static final String FIND =
            COLUMNS + "document FROM case_file WHERE tenant_id = ? AND reference = ? AND chain_length > 0";

    private static final String LIST =
            COLUMNS + "NULL AS document, search FROM case_file f WHERE tenant_id = ? AND chain_length > 0";

    private static final String NEWEST_FIRST = " ORDER BY opened DESC, reference DESC LIMIT ?";

    /** Words are looked for among this many of the newest, then by their index where no more than so many cases have them. */
    private static final int NEWEST = 1000;

    /** Cases are found by so many characters in a row. */
    private static final int PART = 3;

    /** A number for each cause, by which its row is told from those of the other causes of a case. */
    private static final Map<CauseCode, Integer> RANKS = ranks();

    private final TenantTransaction transaction;

    CaseStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    private static Map<CauseCode, Integer> ranks() {
        Map<CauseCode, Integer> ranks = new EnumMap<>(CauseCode.class);
        for (CauseCode cause : CauseCode.values()) {
            ranks.put(cause, ranks.size() + 1);
        }
        return ranks;
    }

    /**
     * Locks a case until the transaction ends, and makes it where there is none yet; refuses one that was removed.
     *
     * @param ids identities, of which it is told whether they are known
     */
    public LockedCase lock(String reference, Collection<EntryId> ids, OffsetDateTime now) {
        Optional<LockedCase> found = locked(reference, ids);
        if (found.isEmpty()) {
            open(reference, now.truncatedTo(ChronoUnit.MICROS));
            found = locked(reference, ids);
        }
        return found.orElseThrow(() -> RefusedException.because(
                RefusedException.Reason.GONE,
                "The case " + reference + " was removed when its time was over. Open another case"
                        + " under another reference."));
    }

    private Optional<LockedCase> locked(String reference, Collection<EntryId> ids) {
        String tenant = transaction.tenant();
        return transaction.ask(
                LOCK + ";\n" + EventStore.IDENTITIES,
                results -> {
                    try (ResultSet row = results.next()) {
                        return row.next()
                                ? Optional.of(new LockedCase(
                                        reference,
                                        row.getString(1),
                                        row.getInt(2),
                                        HexFormat.of().formatHex(row.getBytes(3)),
                                        EventStore.known(results.next())))
                                : Optional.empty();
                    }
                },
                tenant,
                reference,
                new SqlArray("text", ids.stream().map(EntryId::source).toList()),
                new SqlArray("text", ids.stream().map(EntryId::id).toList()),
                tenant);
    }

    private void open(String reference, OffsetDateTime moment) {
        String tenant = transaction.tenant();
        transaction.later(
                OPEN,
                TenantTransaction.ANY_ROWS,
                tenant,
                reference,
                CaseStatus.OPEN.toString(),
                moment,
                moment.withOffsetSameInstant(ZoneOffset.UTC).toLocalDate(),
                HexFormat.of().parseHex(HashChain.start()),
                moment,
                tenant,
                reference);
    }

    /** Keeps the judgement of a locked case with its rows, in place of the one before. */
    public void save(String reference, JudgedCase judged, OffsetDateTime now) {
        String tenant = transaction.tenant();
        CaseColumns columns = judged.columns();
        OffsetDateTime moment = now.truncatedTo(ChronoUnit.MICROS);
        transaction.later(
                SAVE,
                1,
                columns.site(),
                columns.status(),
                columns.opened().truncatedTo(ChronoUnit.MICROS),
                columns.openedDay(),
                columns.version(),
                columns.make(),
                columns.model(),
                judged.document(),
                judged.digest(),
                judged.policy(),
                judged.rulebook(),
                judged.judgedOf(),
                moment,
                judged.digest() == null ? null : moment,
                tenant,
                reference);
        saveCauses(tenant, reference, judged.causes());
        transaction.later(DELETE_DEPARTURES, TenantTransaction.ANY_ROWS, tenant, reference);
        saveDepartures(tenant, reference, judged.departures());
    }

    /** Marks that judging a locked case faulted; its last document stays. */
    public void markFailed(String reference, OffsetDateTime now) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement update = connection.prepareStatement(FAILED)) {
                update.setObject(1, now.truncatedTo(ChronoUnit.MICROS));
                update.setString(2, tenant);
                update.setString(3, reference);
                return update.executeUpdate();
            }
        });
    }

    /** A case with its document. */
    public Optional<StoredCase> find(String reference) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(FIND)) {
                query.setString(1, tenant);
                query.setString(2, reference);
                return cases(query.executeQuery()).stream().findFirst();
            }
        });
    }

    /** A page of the list, newest first, without documents; it begins after the position where the last one ended. */
    public List<StoredCase> list(CaseFilter filter, @Nullable ListPosition after, int limit) {
        return transaction.jdbc((connection, tenant) -> {
            Conditions conditions = new Conditions(LIST, tenant);
            limit(conditions, connection, filter, after);
            String words = filter.words() == null ? "" : filter.words().toLowerCase(Locale.ROOT);
            if (words.length() < PART) {
                return asked(connection, conditions.with(words), limit);
            }
            List<StoredCase> found = asked(connection, conditions.amongNewest(words), limit);
            if (found.size() == limit || isShort(connection, conditions)) {
                return found;
            }
            List<String> having = having(connection, words);
            return asked(
                    connection,
                    having.size() > NEWEST
                            ? conditions.with(words)
                            : conditions.with(words).among(connection, having),
                    limit);
        });
    }

    private static List<StoredCase> asked(Connection connection, Conditions conditions, int limit) throws SQLException {
        try (PreparedStatement query = conditions.prepared(connection, NEWEST_FIRST, limit)) {
            return cases(query.executeQuery());
        }
    }

    /** Cases with these words, whatever else limits the list; a few more than count as few. */
    private static List<String> having(Connection connection, String words) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement("SELECT cases_with(?) LIMIT ?")) {
            query.setString(1, words);
            query.setInt(2, NEWEST + 1);
            List<String> references = new ArrayList<>();
            try (ResultSet row = query.executeQuery()) {
                while (row.next()) {
                    references.add(row.getString(1));
                }
            }
            return references;
        }
    }

    /** Whether the newest are all that there are. */
    private static boolean isShort(Connection connection, Conditions conditions) throws SQLException {
        try (PreparedStatement query = conditions.prepared(connection, " OFFSET ? LIMIT 1", NEWEST - 1);
                ResultSet row = query.executeQuery()) {
            return !row.next();
        }
    }

    /** Writes what has changed; most entries rule nothing out. */
    private void saveCauses(String tenant, String reference, Set<CauseCode> causes) {
        SqlArray ranks = array("int4", causes, RANKS::get);
        SqlArray codes = array("text", causes, CauseCode::toString);
        transaction.later(DELETE_CAUSES, TenantTransaction.ANY_ROWS, tenant, reference, ranks, codes);
        transaction.later(SAVE_CAUSES, TenantTransaction.ANY_ROWS, tenant, reference, ranks, codes);
    }

    private void saveDepartures(String tenant, String reference, List<ShownDeparture> departures) {
        if (departures.isEmpty()) {
            return;
        }
        transaction.later(
                SAVE_DEPARTURES,
                departures.size(),
                tenant,
                reference,
                array("text", departures, departure -> departure.entry().source()),
                array("text", departures, departure -> departure.entry().id()),
                array("text", departures, departure -> departure.clause().toString()),
                array("text", departures, ShownDeparture::line),
                array("bool", departures, ShownDeparture::acts));
    }

    private static <T> SqlArray array(String type, Collection<T> rows, Function<T, @Nullable Object> column) {
        return new SqlArray(type, rows.stream().map(column).toList());
    }

    /** Everything that limits a list but its words. */
    private static void limit(
            Conditions conditions, Connection connection, CaseFilter filter, @Nullable ListPosition after)
            throws SQLException {
        List<String> sites = filter.sites();
        if (sites != null) {
            conditions.add(" AND site = ANY (?)", connection.createArrayOf("text", sites.toArray()));
        }
        conditions.add(" AND status = ?", filter.status());
        conditions.add(
                " AND EXISTS (SELECT 1 FROM case_cause c WHERE c.tenant_id = f.tenant_id"
                        + " AND c.reference = f.reference AND c.standing <> 'ruled-out' AND c.code = ?)",
                filter.cause());
        conditions.add(" AND opened_day >= ?", filter.from());
        conditions.add(" AND opened_day < ?", filter.to());
        Judging judging = filter.judging();
        conditions.add(" AND judging = ?", judging == null ? null : judging.toString());
        if (after != null) {
            conditions.add(" AND (opened, reference) < (?, ?)", after.opened());
            conditions.values.add(after.reference());
        }
    }

    private static List<StoredCase> cases(ResultSet rows) throws SQLException {
        List<StoredCase> cases = new ArrayList<>();
        try (ResultSet row = rows) {
            while (row.next()) {
                CaseColumns columns = new CaseColumns(
                        row.getString("site"),
                        row.getString("status"),
                        row.getObject("opened", OffsetDateTime.class),
                        row.getObject("opened_day", LocalDate.class),
                        row.getInt("version"),
                        row.getString("make"),
                        row.getString("model"));
                cases.add(new StoredCase(
                        row.getString("reference"),
                        columns,
                        row.getString("document"),
                        Judging.of(row.getString("judging")),
                        row.getString("policy"),
                        row.getString("rulebook")));
            }
        }
        return cases;
    }

    /** A query of cases up to its order, with the values of its question marks. */
    private static final class Conditions {

        private static final String HAS_WORDS = " AND strpos(search, ?) > 0";

        private final StringBuilder sql;
        private final List<Object> values;

        Conditions(String sql, Object... values) {
            this.sql = new StringBuilder(sql);
            this.values = new ArrayList<>(List.of(values));
        }

        void add(String condition, @Nullable Object value) {
            if (value != null) {
                sql.append(condition);
                values.add(value);
            }
        }

        /** The query with an end that has one question mark. */
        PreparedStatement prepared(Connection connection, String end, int last) throws SQLException {
            PreparedStatement query = connection.prepareStatement(sql + end);
            int index = 1;
            for (Object value : values) {
                query.setObject(index++, value);
            }
            query.setInt(index, last);
            return query;
        }

        /** Those that have these words, looked for in all; all of them where there are no words. */
        Conditions with(String words) {
            Conditions more = new Conditions(sql.toString(), values.toArray());
            more.add(HAS_WORDS, words.isEmpty() ? null : words);
            return more;
        }

        /** Those of the newest that have these words. */
        Conditions amongNewest(String words) {
            Conditions more =
                    new Conditions("SELECT * FROM (" + sql + NEWEST_FIRST + ") f WHERE true", values.toArray());
            more.values.add(NEWEST);
            more.add(HAS_WORDS, words);
            return more;
        }

        /** Those of these references alone. */
        Conditions among(Connection connection, List<String> references) throws SQLException {
            add(" AND reference = ANY (?)", connection.createArrayOf("text", references.toArray()));
            return this;
        }
    }
}
