package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.facts.EntryId;
import org.axlecause.judgement.PastCases.Run;
import org.axlecause.judgement.PastCases.Wanted;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/**
 * Reads many cases at once, run by run in the order in which the database keeps their references, so that a run is a
 * stretch of an index.
 */
@ApplicationScoped
class PastCaseStore {

    private static final String WANTED = """
             f.tenant_id = ? AND f.chain_length > 0 AND f.site IS NOT NULL
               AND (?::text[] IS NULL OR f.site = ANY (?::text[]))
               AND (?::date IS NULL OR f.opened_day >= ?::date)
               AND (?::date IS NULL OR f.opened_day < ?::date)
               AND (?::text IS NULL OR EXISTS (SELECT 1 FROM case_cause c
                     WHERE c.tenant_id = f.tenant_id AND c.reference = f.reference
                       AND c.standing <> 'ruled-out' AND c.code = ?::text))
            """;

    private static final String RUNS = """
            SELECT min(reference), max(reference), count(*)
              FROM (SELECT f.reference, (row_number() OVER (ORDER BY f.reference) - 1) / ? AS run
                      FROM case_file f WHERE %s) cases
             GROUP BY run ORDER BY run
            """.formatted(WANTED);

    private static final String BETWEEN = WANTED + " AND f.reference >= ? AND f.reference <= ?";

    private static final String HISTORIES = "SELECT e.reference, " + columns() + " FROM case_file f"
            + " JOIN event e ON e.tenant_id = f.tenant_id AND e.reference = f.reference WHERE " + BETWEEN
            + " ORDER BY e.reference, e.position";

    private static final String FIGURES = "SELECT t.reference, t.source, t.id, t.figures FROM case_file f"
            + " JOIN test_figures t ON t.tenant_id = f.tenant_id AND t.reference = f.reference WHERE " + BETWEEN;

    /** A replica of the release before leaves the line alone, but not the version of its rulebook. */
    private static final String DOCUMENTS = """
            SELECT f.reference, f.document
              FROM unnest(?::text[], ?::text[]) AS wanted (reference, judged_of)
              JOIN case_file f ON f.tenant_id = ? AND f.reference = wanted.reference
             WHERE f.judged_of = wanted.judged_of AND f.judging = 'done' AND f.rulebook = ?
            """;

    private final TenantTransaction transaction;

    PastCaseStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    List<Run> runs(Wanted wanted, int size) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(RUNS)) {
                query.setInt(1, size);
                bind(query, 2, connection, tenant, wanted);
                List<Run> runs = new ArrayList<>();
                try (ResultSet row = query.executeQuery()) {
                    while (row.next()) {
                        runs.add(new Run(row.getString(1), row.getString(2), row.getInt(3)));
                    }
                }
                return runs;
            }
        });
    }

    /** The events of each wanted case of a run, in order of reference. */
    Map<String, List<StoredEvent>> histories(Wanted wanted, Run run) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(HISTORIES)) {
                bind(query, connection, tenant, wanted, run);
                Map<String, List<StoredEvent>> histories = new TreeMap<>();
                try (ResultSet row = query.executeQuery()) {
                    while (row.next()) {
                        histories
                                .computeIfAbsent(row.getString("reference"), reference -> new ArrayList<>())
                                .add(EventStore.event(row));
                    }
                }
                return histories;
            }
        });
    }

    /** The kept figures of each wanted case of a run. */
    Map<String, Map<EntryId, String>> figures(Wanted wanted, Run run) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(FIGURES)) {
                bind(query, connection, tenant, wanted, run);
                Map<String, Map<EntryId, String>> figures = new TreeMap<>();
                try (ResultSet row = query.executeQuery()) {
                    while (row.next()) {
                        figures.computeIfAbsent(row.getString(1), reference -> new TreeMap<>())
                                .put(new EntryId(row.getString(2), row.getString(3)), row.getString(4));
                    }
                }
                return figures;
            }
        });
    }

    /** Documents of the cases whose last judgement rests on the line that is given with their reference. */
    Map<String, String> documents(Map<String, String> judgedOf, String rulebook) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(DOCUMENTS)) {
                query.setArray(
                        1, connection.createArrayOf("text", judgedOf.keySet().toArray()));
                query.setArray(
                        2, connection.createArrayOf("text", judgedOf.values().toArray()));
                query.setString(3, tenant);
                query.setString(4, rulebook);
                Map<String, String> documents = new TreeMap<>();
                try (ResultSet row = query.executeQuery()) {
                    while (row.next()) {
                        documents.put(row.getString(1), row.getString(2));
                    }
                }
                return documents;
            }
        });
    }

    private static void bind(PreparedStatement query, Connection connection, String tenant, Wanted wanted, Run run)
            throws SQLException {
        int next = bind(query, 1, connection, tenant, wanted);
        query.setString(next, run.first());
        query.setString(next + 1, run.last());
    }

    private static int bind(PreparedStatement query, int first, Connection connection, String tenant, Wanted wanted)
            throws SQLException {
        Array sites = texts(connection, wanted.sites());
        int index = first;
        query.setString(index++, tenant);
        query.setArray(index++, sites);
        query.setArray(index++, sites);
        query.setObject(index++, wanted.from());
        query.setObject(index++, wanted.from());
        query.setObject(index++, wanted.to());
        query.setObject(index++, wanted.to());
        query.setString(index++, wanted.cause());
        query.setString(index++, wanted.cause());
        return index;
    }

    private static @Nullable Array texts(Connection connection, @Nullable List<String> texts) throws SQLException {
        return texts == null ? null : connection.createArrayOf("text", texts.toArray());
    }

    private static String columns() {
        return "e." + EventStore.EVENT_COLUMNS.replace(", ", ", e.");
    }
}
