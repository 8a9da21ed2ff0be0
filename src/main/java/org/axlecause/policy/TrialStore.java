package org.axlecause.policy;

import com.fasterxml.jackson.core.JsonProcessingException;
import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.axlecause.judgement.PastCases.Run;
import org.axlecause.judgement.PastCases.Wanted;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;

/**
 * The trials of a tenant and the batches that are still to be done. A batch is held by the lock of its row, so that one of
 * a lost replica is free again at once.
 */
@ApplicationScoped
class TrialStore {

    private static final String ADD = """
            INSERT INTO policy_trial (tenant_id, trial, name, document, covers, sites, from_day, to_day, cause, state, cases,
                                      tried, rulebook, result, created_at, created_by)
            VALUES (?, ?, ?, ?::json, ?, ?, ?, ?, ?, ?, ?, 0, ?, ?::json, ?, ?)
            """;

    private static final String ADD_BATCH =
            "INSERT INTO policy_trial_batch (tenant_id, trial, batch, first, last) VALUES (?, ?, ?, ?, ?)";

    private static final String FIND = """
            SELECT trial, name, document, sites, from_day, to_day, cause, state, cases, tried, rulebook, result, created_at,
                   created_by, finished_at
              FROM policy_trial WHERE tenant_id = ? AND trial = ?
            """;

    private static final String CLAIM = """
            SELECT batch, first, last FROM policy_trial_batch
             WHERE tenant_id = ? AND trial = ? ORDER BY batch LIMIT 1 FOR UPDATE SKIP LOCKED
            """;

    private static final String REMOVE_BATCH =
            "DELETE FROM policy_trial_batch WHERE tenant_id = ? AND trial = ? AND batch = ?";

    /** The batches that nobody is doing; what is being done is thrown away by the one who does it. */
    private static final String REMOVE_FREE = """
            DELETE FROM policy_trial_batch b USING (
              SELECT batch FROM policy_trial_batch WHERE tenant_id = ? AND trial = ? FOR UPDATE SKIP LOCKED) free
             WHERE b.tenant_id = ? AND b.trial = ? AND b.batch = free.batch
            """;

    private static final String LEFT =
            "SELECT EXISTS (SELECT FROM policy_trial_batch WHERE tenant_id = ? AND trial = ?)";

    private static final String MERGE = """
            UPDATE policy_trial SET result = ?::json, tried = ?, state = ?, finished_at = ?
             WHERE tenant_id = ? AND trial = ?
            """;

    private static final String RUNNING = "SELECT count(*) FROM policy_trial WHERE tenant_id = ? AND state = 'running'";

    private static final String TO_RUN = "SELECT tenant_id, trial FROM trials_to_run()";

    private final TenantTransaction transaction;

    TrialStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /**
     * A trial that still runs.
     *
     * @param tenant its tenant
     * @param trial its id
     */
    record Due(String tenant, UUID trial) {}

    /**
     * A part of a trial that one worker does at a time.
     *
     * @param number its number
     * @param run its cases
     */
    record Batch(int number, Run run) {}

    void add(Trial trial, List<Run> runs) {
        transaction.jdbc((connection, tenant) -> {
            Wanted wanted = trial.wanted();
            try (PreparedStatement insert = connection.prepareStatement(ADD)) {
                insert.setString(1, tenant);
                insert.setObject(2, trial.id());
                insert.setString(3, trial.name());
                insert.setString(4, trial.document().toJson());
                insert.setArray(
                        5, PolicyVersionStore.texts(connection, trial.document().covers()));
                insert.setArray(6, PolicyVersionStore.texts(connection, wanted.sites()));
                insert.setObject(7, wanted.from());
                insert.setObject(8, wanted.to());
                insert.setString(9, wanted.cause());
                insert.setString(10, trial.state().toString());
                insert.setInt(11, trial.cases());
                insert.setString(12, trial.rulebook());
                insert.setString(13, Json.text(trial.result()));
                insert.setObject(14, trial.createdAt());
                insert.setString(15, trial.createdBy());
                insert.executeUpdate();
            }
            addBatches(connection, tenant, trial.id(), runs);
            return runs.size();
        });
    }

    private static void addBatches(Connection connection, String tenant, UUID trial, List<Run> runs)
            throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(ADD_BATCH)) {
            int number = 0;
            for (Run run : runs) {
                insert.setString(1, tenant);
                insert.setObject(2, trial);
                insert.setInt(3, ++number);
                insert.setString(4, run.first());
                insert.setString(5, run.last());
                insert.addBatch();
            }
            insert.executeBatch();
        }
    }

    Optional<Trial> find(UUID id) {
        return find(id, FIND);
    }

    /** The same, and nobody else changes it until the transaction ends. */
    Optional<Trial> lock(UUID id) {
        return find(id, FIND + " FOR UPDATE");
    }

    private Optional<Trial> find(UUID id, String sql) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(sql)) {
                query.setString(1, tenant);
                query.setObject(2, id);
                try (ResultSet row = query.executeQuery()) {
                    return row.next() ? Optional.of(read(row)) : Optional.<Trial>empty();
                }
            }
        });
    }

    /** How many trials of the tenant run. */
    int running() {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(RUNNING)) {
                query.setString(1, tenant);
                return number(query);
            }
        });
    }

    /** A batch that nobody is doing, held until the transaction ends; empty where all are done or being done. */
    Optional<Batch> claim(UUID trial) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(CLAIM)) {
                query.setString(1, tenant);
                query.setObject(2, trial);
                try (ResultSet row = query.executeQuery()) {
                    return row.next()
                            ? Optional.of(new Batch(row.getInt(1), new Run(row.getString(2), row.getString(3), 0)))
                            : Optional.<Batch>empty();
                }
            }
        });
    }

    void remove(UUID trial, int batch) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement delete = connection.prepareStatement(REMOVE_BATCH)) {
                delete.setString(1, tenant);
                delete.setObject(2, trial);
                delete.setInt(3, batch);
                return delete.executeUpdate();
            }
        });
    }

    void removeFree(UUID trial) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement delete = connection.prepareStatement(REMOVE_FREE)) {
                delete.setString(1, tenant);
                delete.setObject(2, trial);
                delete.setString(3, tenant);
                delete.setObject(4, trial);
                return delete.executeUpdate();
            }
        });
    }

    /** Whether no batch is left to do. */
    boolean isWorkedOff(UUID trial) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(LEFT)) {
                query.setString(1, tenant);
                query.setObject(2, trial);
                try (ResultSet row = query.executeQuery()) {
                    row.next();
                    return !row.getBoolean(1);
                }
            }
        });
    }

    /** Keeps state, progress and result of a locked trial. */
    void save(Trial trial) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement update = connection.prepareStatement(MERGE)) {
                update.setString(1, Json.text(trial.result()));
                update.setInt(2, trial.tried());
                update.setString(3, trial.state().toString());
                update.setObject(4, trial.finishedAt(), Types.TIMESTAMP_WITH_TIMEZONE);
                update.setString(5, tenant);
                update.setObject(6, trial.id());
                return update.executeUpdate();
            }
        });
    }

    /** The trials of all tenants that run, the oldest first; reads outside any tenant's transaction. */
    List<Due> due() {
        return transaction.acrossTenants(TO_RUN, row -> new Due(row.getString(1), row.getObject(2, UUID.class)));
    }

    private static int number(PreparedStatement query) throws SQLException {
        try (ResultSet row = query.executeQuery()) {
            row.next();
            return row.getInt(1);
        }
    }

    private static Trial read(ResultSet row) throws SQLException {
        return new Trial(
                row.getObject("trial", UUID.class),
                row.getString("name"),
                PolicyDocument.of(row.getString("document")),
                new Wanted(
                        PolicyVersionStore.texts(row.getArray("sites")),
                        row.getObject("from_day", LocalDate.class),
                        row.getObject("to_day", LocalDate.class),
                        row.getString("cause")),
                Trial.State.of(row.getString("state")),
                row.getInt("cases"),
                row.getInt("tried"),
                row.getString("rulebook"),
                result(row.getString("result")),
                row.getObject("created_at", OffsetDateTime.class),
                row.getString("created_by"),
                row.getObject("finished_at", OffsetDateTime.class));
    }

    private static TrialResult result(String json) {
        try {
            return Json.mapper().readValue(json, TrialResult.class);
        } catch (JsonProcessingException broken) {
            throw new IllegalStateException("The kept result of a trial can't be read", broken);
        }
    }
}
