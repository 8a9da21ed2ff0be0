package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.facts.EntryId;
import org.axlecause.shared.TenantTransaction;

/** The figures of roller tests, computed once when a test is accepted. */
@ApplicationScoped
public class FiguresStore {

    private static final String SAVE = """
            INSERT INTO test_figures (tenant_id, reference, source, id, figures) VALUES (?, ?, ?, ?, ?::json)
            ON CONFLICT DO NOTHING
            """;

    private static final String FIND =
            "SELECT source, id, figures FROM test_figures WHERE tenant_id = ? AND reference = ?";

    private final TenantTransaction transaction;

    FiguresStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** Keeps the figures of tests of a locked case, as JSON; what is already kept stays. */
    public void save(String reference, Map<EntryId, String> figures) {
        if (figures.isEmpty()) {
            return;
        }
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement insert = connection.prepareStatement(SAVE)) {
                for (Map.Entry<EntryId, String> test : figures.entrySet()) {
                    insert.setString(1, tenant);
                    insert.setString(2, reference);
                    insert.setString(3, test.getKey().source());
                    insert.setString(4, test.getKey().id());
                    insert.setString(5, test.getValue());
                    insert.addBatch();
                }
                return insert.executeBatch().length;
            }
        });
    }

    /** The figures of every test of a case, as JSON, by the test's identity. */
    public Map<EntryId, String> find(String reference) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(FIND)) {
                query.setString(1, tenant);
                query.setString(2, reference);
                Map<EntryId, String> figures = new TreeMap<>();
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        figures.put(new EntryId(rows.getString(1), rows.getString(2)), rows.getString(3));
                    }
                }
                return figures;
            }
        });
    }
}
