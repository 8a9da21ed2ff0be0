package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.facts.EntryId;
import org.axlecause.shared.SqlArray;
import org.axlecause.shared.TenantTransaction;

/** The figures of roller tests, computed once when a test is accepted. */
@ApplicationScoped
public class FiguresStore {

    private static final String SAVE = """
            INSERT INTO test_figures (tenant_id, reference, source, id, figures)
            SELECT ?, ?, t.source, t.id, t.figures::json
              FROM unnest(?::text[], ?::text[], ?::text[]) AS t (source, id, figures)
            ON CONFLICT DO NOTHING
            """;

    /** The figures of a case, as {@link #figures} reads them. */
    static final String FIND = "SELECT source, id, figures FROM test_figures WHERE tenant_id = ? AND reference = ?";

    private final TenantTransaction transaction;

    FiguresStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** Keeps the figures of tests of a locked case, as JSON; what is already kept stays. */
    public void save(String reference, Map<EntryId, String> figures) {
        if (figures.isEmpty()) {
            return;
        }
        transaction.later(
                SAVE,
                TenantTransaction.ANY_ROWS,
                transaction.tenant(),
                reference,
                new SqlArray(
                        "text", figures.keySet().stream().map(EntryId::source).toList()),
                new SqlArray("text", figures.keySet().stream().map(EntryId::id).toList()),
                new SqlArray("text", figures.values()));
    }

    /** The figures of every test of a case, as JSON, by the test's identity. */
    public Map<EntryId, String> find(String reference) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(FIND)) {
                query.setString(1, tenant);
                query.setString(2, reference);
                return figures(query.executeQuery());
            }
        });
    }

    /** All rows of figures, by the test's identity. */
    static Map<EntryId, String> figures(ResultSet tests) throws SQLException {
        try (ResultSet rows = tests) {
            Map<EntryId, String> figures = new TreeMap<>();
            while (rows.next()) {
                figures.put(new EntryId(rows.getString(1), rows.getString(2)), rows.getString(3));
            }
            return figures;
        }
    }
}
