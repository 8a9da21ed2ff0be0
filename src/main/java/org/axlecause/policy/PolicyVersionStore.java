package org.axlecause.policy;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** The published versions of a tenant's policies; a version never changes. */
@ApplicationScoped
public class PolicyVersionStore {

    private static final String COLUMNS =
            "name, version, effective_from, document, covers, authors, reason," + " published_at, published_by";

    /** Of each policy the version in effect, without those that don't cover the site. */
    private static final String IN_EFFECT = """
            SELECT name, version
              FROM (SELECT DISTINCT ON (name) name, version, covers
                      FROM policy_version
                     WHERE tenant_id = ? AND effective_from <= ?
                     ORDER BY name, effective_from DESC, version DESC) v
             WHERE covers IS NULL OR ? = ANY (covers)
             ORDER BY name LIMIT 1
            """;

    private static final String TIMETABLE = """
            SELECT name, version, effective_from, published_at, covers
              FROM policy_version
             WHERE tenant_id = ?
             ORDER BY name, effective_from DESC, version DESC
            """;

    private static final String FIND =
            "SELECT " + COLUMNS + " FROM policy_version WHERE tenant_id = ? AND name = ? AND version = ?";

    private static final String OF_NAME =
            "SELECT " + COLUMNS + " FROM policy_version WHERE tenant_id = ? AND name = ? ORDER BY version DESC";

    private static final String LATEST = "SELECT DISTINCT ON (name) " + COLUMNS
            + " FROM policy_version WHERE tenant_id = ? ORDER BY name, version DESC";

    /** Versions of other names that judge on a day or begin later. */
    private static final String BESIDE = "SELECT " + COLUMNS + " FROM policy_version v"
            + " WHERE tenant_id = ? AND name <> ? AND NOT EXISTS (SELECT 1 FROM policy_version n"
            + " WHERE n.tenant_id = v.tenant_id AND n.name = v.name AND n.version > v.version"
            + " AND n.effective_from <= greatest(v.effective_from, ?)) ORDER BY name, version";

    private static final String ADD = "INSERT INTO policy_version (tenant_id, name, version, effective_from, document,"
            + " covers, authors, reason, published_at, published_by) VALUES (?, ?, ?, ?, ?::json, ?, ?, ?, ?, ?)";

    private static final String ONE_AT_A_TIME = "SELECT pg_advisory_xact_lock(hashtext('axlecause.policy.' || ?))";

    private final TenantTransaction transaction;

    PolicyVersionStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** Lets drafts and versions of a tenant be written one at a time until the transaction ends. */
    void writeOneAtATime() {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement lock = connection.prepareStatement(ONE_AT_A_TIME)) {
                lock.setString(1, tenant);
                return lock.execute();
            }
        });
    }

    /** Name and number of the version in effect at a site on a day. */
    Optional<Key> inEffect(String site, LocalDate day) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(IN_EFFECT)) {
                query.setString(1, tenant);
                query.setObject(2, day);
                query.setString(3, site);
                try (ResultSet row = query.executeQuery()) {
                    return row.next() ? Optional.of(new Key(row.getString(1), row.getInt(2))) : Optional.<Key>empty();
                }
            }
        });
    }

    /** When each version begins; it is read at this moment. */
    PolicyTimetable timetable(OffsetDateTime now) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(TIMETABLE)) {
                query.setString(1, tenant);
                List<PolicyTimetable.Beginning> beginnings = new ArrayList<>();
                try (ResultSet row = query.executeQuery()) {
                    while (row.next()) {
                        beginnings.add(new PolicyTimetable.Beginning(
                                new Key(row.getString(1), row.getInt(2)),
                                row.getObject(3, LocalDate.class),
                                row.getObject(4, OffsetDateTime.class),
                                texts(row.getArray(5))));
                    }
                }
                return new PolicyTimetable(now, beginnings);
            }
        });
    }

    /** One version of a policy. */
    public Optional<PolicyVersion> find(String name, int version) {
        return list(FIND, name, version).stream().findFirst();
    }

    /** Every version of a policy, newest first. */
    public List<PolicyVersion> versions(String name) {
        return list(OF_NAME, name);
    }

    /** The newest version of each policy. */
    List<PolicyVersion> latest() {
        return list(LATEST);
    }

    /** Whether the newest version of any policy wants two persons to publish. */
    public boolean wantTwoPersons() {
        return latest().stream().map(PolicyVersion::document).anyMatch(PolicyDocument::wantsTwoPersons);
    }

    /** The versions of other policies that judge on that day or begin later. */
    List<PolicyVersion> beside(String name, LocalDate day) {
        return list(BESIDE, name, day);
    }

    /** Adds a version. */
    void add(PolicyVersion added) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement insert = connection.prepareStatement(ADD)) {
                insert.setString(1, tenant);
                insert.setString(2, added.name());
                insert.setInt(3, added.version());
                insert.setObject(4, added.effectiveFrom());
                insert.setString(5, added.document().toJson());
                insert.setArray(6, texts(connection, added.covers()));
                insert.setArray(7, texts(connection, added.authors()));
                insert.setString(8, added.reason());
                insert.setObject(9, added.publishedAt());
                insert.setString(10, added.publishedBy());
                return insert.executeUpdate();
            }
        });
    }

    static @Nullable Array texts(Connection connection, @Nullable List<String> texts) throws SQLException {
        return texts == null ? null : connection.createArrayOf("text", texts.toArray());
    }

    static @Nullable List<String> texts(@Nullable Array array) throws SQLException {
        return array == null ? null : Arrays.asList((String[]) array.getArray());
    }

    private List<PolicyVersion> list(String sql, Object... values) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(sql)) {
                query.setString(1, tenant);
                for (int index = 0; index < values.length; index++) {
                    query.setObject(index + 2, values[index]);
                }
                List<PolicyVersion> versions = new ArrayList<>();
                try (ResultSet row = query.executeQuery()) {
                    while (row.next()) {
                        versions.add(read(row));
                    }
                }
                return versions;
            }
        });
    }

    private static PolicyVersion read(ResultSet row) throws SQLException {
        List<String> authors = texts(row.getArray("authors"));
        return new PolicyVersion(
                row.getString("name"),
                row.getInt("version"),
                row.getObject("effective_from", LocalDate.class),
                PolicyDocument.of(row.getString("document")),
                texts(row.getArray("covers")),
                authors == null ? List.of() : authors,
                row.getString("reason"),
                row.getObject("published_at", OffsetDateTime.class),
                row.getString("published_by"));
    }

    /**
     * What names a version.
     *
     * @param name name of the policy
     * @param version its number
     */
    record Key(String name, int version) {}
}
