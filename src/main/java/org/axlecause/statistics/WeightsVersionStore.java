package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.statistics.Timetable.Beginning;

/** The published weights of a tenant; a version never changes. */
@ApplicationScoped
class WeightsVersionStore {

    private static final String COLUMNS = "SELECT version, effective_from, proposal, weights, authors, reason,"
            + " published_at, published_by FROM cause_weights_version WHERE tenant_id = ?";

    private static final String ALL = COLUMNS + " ORDER BY version DESC";

    private static final String FIND = COLUMNS + " AND version = ?";

    private static final String ADD = """
            INSERT INTO cause_weights_version (tenant_id, version, effective_from, proposal, weights, authors, reason,
                                               published_at, published_by)
            VALUES (?, ?, ?, ?, ?::json, ?, ?, ?, ?)
            """;

    /** Whatever began before this transaction is in it. */
    private static final String TIMETABLE = """
            SELECT now(), v.version, v.effective_from
              FROM (VALUES (1)) one (row) LEFT JOIN cause_weights_version v ON v.tenant_id = ?
             ORDER BY v.version
            """;

    private static final String NOW = "SELECT clock_timestamp()";

    private static final String ONE_AT_A_TIME =
            "SELECT pg_advisory_xact_lock(hashtextextended('cause weights of ' || ?, 0))";

    private final TenantTransaction transaction;

    WeightsVersionStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** Lets proposals be begun and versions be published one at a time until the transaction ends. */
    void writeOneAtATime() {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement lock = connection.prepareStatement(ONE_AT_A_TIME)) {
                lock.setString(1, tenant);
                return lock.execute();
            }
        });
    }

    /** The time at the database, by which all replicas go. */
    OffsetDateTime now() {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(NOW);
                    ResultSet row = query.executeQuery()) {
                row.next();
                return row.getObject(1, OffsetDateTime.class);
            }
        });
    }

    /** When each version begins, as of the beginning of the transaction. */
    Timetable timetable() {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(TIMETABLE)) {
                query.setString(1, tenant);
                try (ResultSet row = query.executeQuery()) {
                    List<Beginning> beginnings = new ArrayList<>();
                    OffsetDateTime readAt = OffsetDateTime.MIN;
                    while (row.next()) {
                        readAt = row.getObject(1, OffsetDateTime.class);
                        if (row.getObject(3) != null) {
                            beginnings.add(new Beginning(row.getInt(2), row.getObject(3, OffsetDateTime.class)));
                        }
                    }
                    return new Timetable(readAt, beginnings);
                }
            }
        });
    }

    /** Every version, the newest first. */
    List<WeightsVersion> all() {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(ALL)) {
                query.setString(1, tenant);
                return read(query);
            }
        });
    }

    Optional<WeightsVersion> find(int version) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(FIND)) {
                query.setString(1, tenant);
                query.setInt(2, version);
                return read(query).stream().findFirst();
            }
        });
    }

    void add(WeightsVersion added) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement insert = connection.prepareStatement(ADD)) {
                insert.setString(1, tenant);
                insert.setInt(2, added.version());
                insert.setObject(3, added.effectiveFrom());
                insert.setObject(4, added.proposal());
                insert.setString(5, Json.text(added.weights()));
                insert.setArray(
                        6, connection.createArrayOf("text", added.authors().toArray()));
                insert.setString(7, added.reason());
                insert.setObject(8, added.publishedAt());
                insert.setString(9, added.publishedBy());
                return insert.executeUpdate();
            }
        });
    }

    private static List<WeightsVersion> read(PreparedStatement query) throws SQLException {
        List<WeightsVersion> versions = new ArrayList<>();
        try (ResultSet row = query.executeQuery()) {
            while (row.next()) {
                versions.add(new WeightsVersion(
                        row.getInt("version"),
                        row.getObject("effective_from", OffsetDateTime.class),
                        row.getObject("proposal", UUID.class),
                        weights(row.getString("weights")),
                        List.of((String[]) row.getArray("authors").getArray()),
                        row.getString("reason"),
                        row.getObject("published_at", OffsetDateTime.class),
                        row.getString("published_by")));
            }
        }
        return versions;
    }

    private static List<WeightsVersion.Published> weights(String json) {
        return Stream.of(Json.mapper().convertValue(Json.read(json), WeightsVersion.Published[].class))
                .toList();
    }
}
