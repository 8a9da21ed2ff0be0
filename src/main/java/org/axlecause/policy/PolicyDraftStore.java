package org.axlecause.policy;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.axlecause.shared.TenantTransaction;

/** The drafts of a tenant's policies, one for each name at most. */
@ApplicationScoped
class PolicyDraftStore {

    private static final String COLUMNS =
            "SELECT name, tag, document, authors, written_at, written_by FROM policy_draft";

    private static final String SAVE = """
            INSERT INTO policy_draft (tenant_id, name, tag, document, covers, authors, written_at, written_by)
            VALUES (?, ?, ?, ?::json, ?, ?, ?, ?)
            ON CONFLICT (tenant_id, name) DO UPDATE
               SET tag = excluded.tag, document = excluded.document, covers = excluded.covers,
                   authors = excluded.authors, written_at = excluded.written_at, written_by = excluded.written_by
            """;

    private final TenantTransaction transaction;

    PolicyDraftStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    Optional<PolicyDraft> find(String name) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(COLUMNS + " WHERE tenant_id = ? AND name = ?")) {
                query.setString(1, tenant);
                query.setString(2, name);
                return read(query).stream().findFirst();
            }
        });
    }

    /** Every draft, by name. */
    List<PolicyDraft> all() {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query =
                    connection.prepareStatement(COLUMNS + " WHERE tenant_id = ? ORDER BY name")) {
                query.setString(1, tenant);
                return read(query);
            }
        });
    }

    void save(PolicyDraft draft) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement save = connection.prepareStatement(SAVE)) {
                save.setString(1, tenant);
                save.setString(2, draft.name());
                save.setObject(3, draft.tag());
                save.setString(4, draft.document().toJson());
                save.setArray(
                        5, PolicyVersionStore.texts(connection, draft.document().covers()));
                save.setArray(6, PolicyVersionStore.texts(connection, draft.authors()));
                save.setObject(7, draft.writtenAt());
                save.setString(8, draft.writtenBy());
                return save.executeUpdate();
            }
        });
    }

    void remove(String name) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement delete =
                    connection.prepareStatement("DELETE FROM policy_draft WHERE tenant_id = ? AND name = ?")) {
                delete.setString(1, tenant);
                delete.setString(2, name);
                return delete.executeUpdate();
            }
        });
    }

    private static List<PolicyDraft> read(PreparedStatement query) throws SQLException {
        List<PolicyDraft> drafts = new ArrayList<>();
        try (ResultSet row = query.executeQuery()) {
            while (row.next()) {
                List<String> authors = PolicyVersionStore.texts(row.getArray("authors"));
                drafts.add(new PolicyDraft(
                        row.getString("name"),
                        row.getObject("tag", UUID.class),
                        PolicyDocument.of(row.getString("document")),
                        authors == null ? List.of() : authors,
                        row.getObject("written_at", OffsetDateTime.class),
                        row.getString("written_by")));
            }
        }
        return drafts;
    }
}
