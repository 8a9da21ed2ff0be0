package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import org.axlecause.facts.CaseStatus;
import org.axlecause.facts.Place;
import org.axlecause.judgement.ShownDeparture;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** The cases of a tenant: their lock, their latest judgement and the rows that lists ask. */
@ApplicationScoped
public class CaseStore {

    private static final String OPEN = """
            INSERT INTO case_file (tenant_id, reference, status, opened, opened_day, version, judging, chain_length,
                                   chain_hash, changed_at)
            SELECT ?, ?, ?, ?, ?, 0, 'none', 0, ?, ?
             WHERE NOT EXISTS (SELECT 1 FROM case_tombstone WHERE tenant_id = ? AND reference = ?)
            ON CONFLICT DO NOTHING
            """;

    private static final String LOCK =
            "SELECT reference FROM case_file WHERE tenant_id = ? AND reference = ? FOR UPDATE";

    private static final String SAVE = """
            UPDATE case_file
               SET site = ?, status = ?, opened = ?, opened_day = ?, version = ?, make = ?, model = ?,
                   document = ?::json, judging = 'done', policy = ?, rulebook = ?, changed_at = ?
             WHERE tenant_id = ? AND reference = ?
            """;

    private static final String FAILED =
            "UPDATE case_file SET judging = 'failed', changed_at = ? WHERE tenant_id = ? AND reference = ?";

    private static final String SAVE_CAUSE = """
            INSERT INTO case_cause (tenant_id, reference, rank, axle, side, spot, circuit, code, standing, probability,
                                    root)
            VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
            """;

    private static final String SAVE_LINE = """
            INSERT INTO case_scope_line (tenant_id, reference, line, axle, side, spot, circuit, action, item, extent,
                                         quantity, necessity, standing, policy_clause, net, currency)
            VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
            """;

    private static final String SAVE_DEPARTURE = "INSERT INTO case_departure"
            + " (tenant_id, reference, source, id, clause, line, acts) VALUES (?, ?, ?, ?, ?, ?, ?)";

    private static final String COLUMNS = """
            SELECT reference, site, status, opened, opened_day, version, make, model, judging, policy, rulebook,
            """;

    private static final String FIND =
            COLUMNS + "document FROM case_file WHERE tenant_id = ? AND reference = ? AND chain_length > 0";

    private static final String LIST =
            COLUMNS + "NULL AS document FROM case_file f WHERE tenant_id = ? AND chain_length > 0";

    private final TenantTransaction transaction;

    CaseStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /**
     * Makes the cases that don't exist yet and locks all of them until the transaction ends, in order of reference; refuses
     * where one was removed.
     */
    public void lock(Collection<String> references, OffsetDateTime now) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement open = connection.prepareStatement(OPEN);
                    PreparedStatement lock = connection.prepareStatement(LOCK)) {
                for (String reference : new TreeSet<>(references)) {
                    OffsetDateTime moment = now.truncatedTo(ChronoUnit.MICROS);
                    open.setString(1, tenant);
                    open.setString(2, reference);
                    open.setString(3, CaseStatus.OPEN.toString());
                    open.setObject(4, moment);
                    open.setObject(
                            5, moment.withOffsetSameInstant(ZoneOffset.UTC).toLocalDate());
                    open.setBytes(6, HexFormat.of().parseHex(HashChain.start()));
                    open.setObject(7, moment);
                    open.setString(8, tenant);
                    open.setString(9, reference);
                    open.executeUpdate();
                    lock.setString(1, tenant);
                    lock.setString(2, reference);
                    try (ResultSet row = lock.executeQuery()) {
                        if (!row.next()) {
                            throw RefusedException.because(
                                    RefusedException.Reason.GONE,
                                    "The case " + reference + " was removed when its time was over. Open another case"
                                            + " under another reference.");
                        }
                    }
                }
            }
            return references.size();
        });
    }

    /** Keeps the judgement of a locked case with its rows, in place of the one before. */
    public void save(String reference, JudgedCase judged, OffsetDateTime now) {
        transaction.jdbc((connection, tenant) -> {
            saveCase(connection, tenant, reference, judged, now);
            delete(connection, "case_cause", tenant, reference);
            delete(connection, "case_scope_line", tenant, reference);
            delete(connection, "case_departure", tenant, reference);
            saveCauses(connection, tenant, reference, judged.causes());
            saveLines(connection, tenant, reference, judged.scopeLines());
            saveDepartures(connection, tenant, reference, judged.departures());
            return reference;
        });
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
                return read(query).stream().findFirst();
            }
        });
    }

    /** A page of the list, newest first, without documents; it begins after the position where the last one ended. */
    public List<StoredCase> list(CaseFilter filter, @Nullable ListPosition after, int limit) {
        return transaction.jdbc((connection, tenant) -> {
            Conditions conditions = conditions(connection, filter, after);
            String sql = LIST + conditions.sql + " ORDER BY opened DESC, reference DESC LIMIT ?";
            try (PreparedStatement query = connection.prepareStatement(sql)) {
                query.setString(1, tenant);
                int index = 2;
                for (Object value : conditions.values) {
                    query.setObject(index++, value);
                }
                query.setInt(index, limit);
                return read(query);
            }
        });
    }

    private static void saveCase(
            Connection connection, String tenant, String reference, JudgedCase judged, OffsetDateTime now)
            throws SQLException {
        CaseColumns columns = judged.columns();
        try (PreparedStatement update = connection.prepareStatement(SAVE)) {
            update.setString(1, columns.site());
            update.setString(2, columns.status());
            update.setObject(3, columns.opened().truncatedTo(ChronoUnit.MICROS));
            update.setObject(4, columns.openedDay());
            update.setInt(5, columns.version());
            update.setString(6, columns.make());
            update.setString(7, columns.model());
            update.setString(8, judged.document());
            update.setString(9, judged.policy());
            update.setString(10, judged.rulebook());
            update.setObject(11, now.truncatedTo(ChronoUnit.MICROS));
            update.setString(12, tenant);
            update.setString(13, reference);
            if (update.executeUpdate() != 1) {
                throw new IllegalStateException("A case is locked before its judgement is kept: " + reference);
            }
        }
    }

    private static void delete(Connection connection, String table, String tenant, String reference)
            throws SQLException {
        String sql = "DELETE FROM " + table + " WHERE tenant_id = ? AND reference = ?";
        try (PreparedStatement delete = connection.prepareStatement(sql)) {
            delete.setString(1, tenant);
            delete.setString(2, reference);
            delete.executeUpdate();
        }
    }

    private static void saveCauses(Connection connection, String tenant, String reference, List<CauseRow> causes)
            throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(SAVE_CAUSE)) {
            int rank = 0;
            for (CauseRow cause : causes) {
                insert.setString(1, tenant);
                insert.setString(2, reference);
                insert.setInt(3, ++rank);
                bind(insert, cause.place());
                insert.setString(8, cause.code());
                insert.setString(9, cause.standing());
                insert.setBigDecimal(10, cause.probability());
                insert.setBoolean(11, cause.root());
                insert.addBatch();
            }
            insert.executeBatch();
        }
    }

    private static void saveLines(Connection connection, String tenant, String reference, List<ScopeLineRow> lines)
            throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(SAVE_LINE)) {
            for (ScopeLineRow line : lines) {
                insert.setString(1, tenant);
                insert.setString(2, reference);
                insert.setString(3, line.line());
                bind(insert, line.place());
                insert.setString(8, line.action());
                insert.setString(9, line.item());
                insert.setString(10, line.extent());
                insert.setBigDecimal(11, line.quantity());
                insert.setString(12, line.necessity());
                insert.setString(13, line.standing());
                insert.setString(14, line.policyClause());
                insert.setBigDecimal(15, line.net());
                insert.setString(16, line.currency());
                insert.addBatch();
            }
            insert.executeBatch();
        }
    }

    private static void saveDepartures(
            Connection connection, String tenant, String reference, List<ShownDeparture> departures)
            throws SQLException {
        if (departures.isEmpty()) {
            return;
        }
        try (PreparedStatement insert = connection.prepareStatement(SAVE_DEPARTURE)) {
            for (ShownDeparture departure : departures) {
                insert.setString(1, tenant);
                insert.setString(2, reference);
                insert.setString(3, departure.entry().source());
                insert.setString(4, departure.entry().id());
                insert.setString(5, departure.clause().toString());
                insert.setString(6, departure.line());
                insert.setBoolean(7, departure.acts());
                insert.addBatch();
            }
            insert.executeBatch();
        }
    }

    private static void bind(PreparedStatement insert, Place place) throws SQLException {
        insert.setObject(4, place.axle(), Types.INTEGER);
        insert.setString(5, place.side() == null ? null : place.side().toString());
        insert.setString(6, place.spot() == null ? null : place.spot().toString());
        insert.setObject(7, place.circuit(), Types.INTEGER);
    }

    private static Conditions conditions(Connection connection, CaseFilter filter, @Nullable ListPosition after)
            throws SQLException {
        Conditions conditions = new Conditions();
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
        String words = filter.words();
        conditions.add(" AND strpos(search, ?) > 0", words == null ? null : words.toLowerCase(Locale.ROOT));
        if (after != null) {
            conditions.add(" AND (opened, reference) < (?, ?)", after.opened());
            conditions.values.add(after.reference());
        }
        return conditions;
    }

    private static List<StoredCase> read(PreparedStatement query) throws SQLException {
        List<StoredCase> cases = new ArrayList<>();
        try (ResultSet row = query.executeQuery()) {
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

    private static final class Conditions {

        private final StringBuilder sql = new StringBuilder();
        private final List<Object> values = new ArrayList<>();

        void add(String condition, @Nullable Object value) {
            if (value != null) {
                sql.append(condition);
                values.add(value);
            }
        }
    }
}
