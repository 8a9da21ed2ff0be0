package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/**
 * The proposals of a tenant. Who works on one holds the lock of its row, so that one of a lost replica is free again at
 * once, as far as it was committed.
 */
@ApplicationScoped
class ProposalStore {

    private static final String COLUMNS = "SELECT proposal, state, as_of, terms, position, learning, model, created_at,"
            + " created_by, finished_at FROM cause_weights_proposal WHERE tenant_id = ?";

    private static final String FIND = COLUMNS + " AND proposal = ?";

    private static final String ALL = COLUMNS + " ORDER BY created_at DESC, proposal";

    private static final String AT_WORK = COLUMNS + " AND state IN ('counting', 'scoring')";

    private static final String ADD = """
            INSERT INTO cause_weights_proposal (tenant_id, proposal, state, as_of, terms, position, learning, model,
                                                created_at, created_by, finished_at)
            VALUES (?, ?, ?, ?, ?::json, ?, ?::json, ?::json, ?, ?, ?)
            """;

    private static final String SAVE = """
            UPDATE cause_weights_proposal
               SET state = ?, position = ?, learning = ?::json, model = ?::json, finished_at = ?
             WHERE tenant_id = ? AND proposal = ?
            """;

    private static final String TO_WORK_OUT = "SELECT tenant_id, proposal FROM cause_weights_to_work_out()";

    private final TenantTransaction transaction;

    ProposalStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /**
     * A proposal that is not worked out.
     *
     * @param tenant its tenant
     * @param proposal its id
     */
    record Due(String tenant, UUID proposal) {}

    void add(Proposal proposal) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement insert = connection.prepareStatement(ADD)) {
                insert.setString(1, tenant);
                insert.setObject(2, proposal.id());
                insert.setString(3, proposal.state().toString());
                insert.setObject(4, proposal.asOf());
                insert.setString(5, json(proposal.terms()));
                insert.setString(6, proposal.position());
                insert.setString(7, json(proposal.learning()));
                insert.setString(8, json(proposal.model()));
                insert.setObject(9, proposal.createdAt());
                insert.setString(10, proposal.createdBy());
                insert.setObject(11, proposal.finishedAt(), Types.TIMESTAMP_WITH_TIMEZONE);
                return insert.executeUpdate();
            }
        });
    }

    /** Every proposal, the newest first. */
    List<Proposal> all() {
        return list(ALL);
    }

    Optional<Proposal> find(UUID id) {
        return list(FIND, id).stream().findFirst();
    }

    /** The same, and nobody else changes it until the transaction ends. */
    Optional<Proposal> lock(UUID id) {
        return list(FIND + " FOR UPDATE", id).stream().findFirst();
    }

    /** The same; empty where somebody else is at it. */
    Optional<Proposal> claim(UUID id) {
        return list(FIND + " FOR UPDATE SKIP LOCKED", id).stream().findFirst();
    }

    /** Whether one is being worked out. */
    boolean isOneAtWork() {
        return !list(AT_WORK).isEmpty();
    }

    /** Keeps state and results of a locked proposal. */
    void save(Proposal proposal) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement update = connection.prepareStatement(SAVE)) {
                update.setString(1, proposal.state().toString());
                update.setString(2, proposal.position());
                update.setString(3, json(proposal.learning()));
                update.setString(4, json(proposal.model()));
                update.setObject(5, proposal.finishedAt(), Types.TIMESTAMP_WITH_TIMEZONE);
                update.setString(6, tenant);
                update.setObject(7, proposal.id());
                return update.executeUpdate();
            }
        });
    }

    /** The proposals of all tenants that are not worked out, the oldest first; reads outside any tenant's transaction. */
    List<Due> due() {
        return transaction.acrossTenants(TO_WORK_OUT, row -> new Due(row.getString(1), row.getObject(2, UUID.class)));
    }

    private List<Proposal> list(String sql, UUID... ids) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(sql)) {
                query.setString(1, tenant);
                for (int index = 0; index < ids.length; index++) {
                    query.setObject(index + 2, ids[index]);
                }
                List<Proposal> proposals = new ArrayList<>();
                try (ResultSet row = query.executeQuery()) {
                    while (row.next()) {
                        proposals.add(read(row));
                    }
                }
                return proposals;
            }
        });
    }

    private static Proposal read(ResultSet row) throws SQLException {
        return new Proposal(
                row.getObject("proposal", UUID.class),
                Proposal.State.of(row.getString("state")),
                row.getObject("as_of", OffsetDateTime.class),
                value(row.getString("terms"), LearningTerms.class),
                row.getString("position"),
                Json.mapper().convertValue(Json.read(row.getString("learning")), Learning.class),
                value(row.getString("model"), ProposedModel.class),
                row.getObject("created_at", OffsetDateTime.class),
                row.getString("created_by"),
                row.getObject("finished_at", OffsetDateTime.class));
    }

    private static @Nullable String json(@Nullable Object value) {
        return value == null ? null : Json.text(value);
    }

    private static <T> @Nullable T value(@Nullable String json, Class<T> type) {
        return json == null ? null : Json.mapper().convertValue(Json.read(json), type);
    }
}
