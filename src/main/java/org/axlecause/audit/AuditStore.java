package org.axlecause.audit;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Array;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.axlecause.shared.TenantTransaction;

/** A tenant's chain, what waits to be tied into it, and its signed heads. */
@ApplicationScoped
class AuditStore {

    private static final int ROWS_AT_ONCE = 1000;
    private static final HexFormat HEX = HexFormat.of();

    private static final String LOCK =
            "SELECT pg_try_advisory_xact_lock(hashtextextended('audit chain of ' || CAST(? AS text), 0))";

    private static final String HEAD =
            "SELECT position, hash FROM audit_entry WHERE tenant_id = ? ORDER BY position DESC LIMIT 1";

    private static final String NOTES = "SELECT note, noted_at, actor, action, object, content FROM audit_note"
            + " WHERE tenant_id = ? ORDER BY note LIMIT ?";

    private static final String REMOVE_NOTES = "DELETE FROM audit_note WHERE tenant_id = ? AND note = ANY (?)";

    private static final String UNCHAINED = """
            SELECT reference, chain_length, chain_hash
              FROM case_file
             WHERE tenant_id = ? AND chained_length < chain_length
             ORDER BY reference LIMIT ? FOR UPDATE SKIP LOCKED
            """;

    private static final String MARK_CHAINED =
            "UPDATE case_file SET chained_length = ? WHERE tenant_id = ? AND reference = ?";

    private static final String ADD = "INSERT INTO audit_entry"
            + " (tenant_id, position, noted_at, actor, action, object, content, previous, hash)"
            + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)";

    private static final String ENTRIES = "SELECT position, noted_at, actor, action, object, content, previous, hash"
            + " FROM audit_entry WHERE tenant_id = ?";

    private static final String ADD_HEAD = "INSERT INTO audit_head"
            + " (tenant_id, position, hash, signed_at, key_id, signature) VALUES (?, ?, ?, ?, ?, ?)"
            + " ON CONFLICT DO NOTHING";

    private static final String HEADS =
            "SELECT tenant_id, position, hash, signed_at, key_id, signature" + " FROM audit_head WHERE tenant_id = ?";

    private static final String HASH_AT = "SELECT hash FROM audit_entry WHERE tenant_id = ? AND position = ?";

    /** The latest chained head of each case whose event is gone or is another, but for cases whose removal is on record. */
    private static final String LOST_CASE_HEADS = """
            WITH latest AS (
              SELECT DISTINCT ON (object) tenant_id, object, content::json AS content
                FROM audit_entry
               WHERE tenant_id = ? AND action = 'case-head'
               ORDER BY object, position DESC),
            removed AS (
              SELECT object, content::json ->> 'hash' AS hash
                FROM audit_entry WHERE tenant_id = ? AND action = 'case-removed'
               UNION ALL
              SELECT object, content::json ->> 'hash'
                FROM audit_note WHERE tenant_id = ? AND action = 'case-removed')
            SELECT l.object, (l.content ->> 'length')::int, c.reference IS NULL, e.hash IS NULL
              FROM latest l
              LEFT JOIN case_file c ON c.tenant_id = l.tenant_id AND c.reference = l.object
              LEFT JOIN event e ON e.tenant_id = l.tenant_id AND e.reference = l.object
                               AND e.position = (l.content ->> 'length')::int
             WHERE e.hash IS DISTINCT FROM decode(l.content ->> 'hash', 'hex')
               AND NOT EXISTS (SELECT 1 FROM removed r
                                WHERE r.object = l.object AND r.hash = l.content ->> 'hash' AND c.reference IS NULL)
             ORDER BY l.object
            """;

    private final TenantTransaction transaction;

    AuditStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** A note that waits, with its number. */
    record Note(long number, OffsetDateTime notedAt, String actor, String action, String object, String content) {}

    /** How far the chain of a case has come. */
    record CaseHead(String reference, int length, String hash) {}

    /** An entry as it is stored. */
    record Stored(AuditEntry entry, String previous, String hash) {}

    /** Tenants for whom something waits; looks across tenants, outside any tenant's transaction. */
    List<String> tenantsToChain() {
        return tenants("SELECT tenant_id FROM tenants_to_chain()");
    }

    /** All tenants; looks across tenants, outside any tenant's transaction. */
    List<String> allTenants() {
        return tenants("SELECT tenant_id FROM all_tenants()");
    }

    private List<String> tenants(String sql) {
        return transaction.acrossTenants(sql, row -> row.getString(1));
    }

    /** Whether this transaction is now the only writer of the tenant's chain. */
    boolean isOnlyWriter() {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement lock = connection.prepareStatement(LOCK)) {
                lock.setString(1, tenant);
                try (ResultSet row = lock.executeQuery()) {
                    return row.next() && row.getBoolean(1);
                }
            }
        });
    }

    ChainHead head() {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(HEAD)) {
                query.setString(1, tenant);
                try (ResultSet row = query.executeQuery()) {
                    return row.next() ? new ChainHead(row.getLong(1), HEX.formatHex(row.getBytes(2))) : ChainHead.NONE;
                }
            }
        });
    }

    List<Note> notes(int most) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(NOTES)) {
                query.setString(1, tenant);
                query.setInt(2, most);
                List<Note> notes = new ArrayList<>();
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        notes.add(new Note(
                                rows.getLong(1),
                                rows.getObject(2, OffsetDateTime.class),
                                rows.getString(3),
                                rows.getString(4),
                                rows.getString(5),
                                rows.getString(6)));
                    }
                }
                return notes;
            }
        });
    }

    void remove(List<Note> notes) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement delete = connection.prepareStatement(REMOVE_NOTES)) {
                Array numbers = connection.createArrayOf(
                        "bigint", notes.stream().map(Note::number).toArray());
                delete.setString(1, tenant);
                delete.setArray(2, numbers);
                return delete.executeUpdate();
            }
        });
    }

    /** Cases whose chain has grown since it was last tied in; those that are in work just now come another time. */
    List<CaseHead> unchained(int most) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(UNCHAINED)) {
                query.setString(1, tenant);
                query.setInt(2, most);
                List<CaseHead> heads = new ArrayList<>();
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        heads.add(new CaseHead(rows.getString(1), rows.getInt(2), HEX.formatHex(rows.getBytes(3))));
                    }
                }
                return heads;
            }
        });
    }

    void markChained(List<CaseHead> heads) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement update = connection.prepareStatement(MARK_CHAINED)) {
                for (CaseHead head : heads) {
                    update.setInt(1, head.length());
                    update.setString(2, tenant);
                    update.setString(3, head.reference());
                    update.addBatch();
                }
                return update.executeBatch().length;
            }
        });
    }

    /** Ties entries to the head, in their order. */
    void add(String previous, List<AuditEntry> entries) {
        transaction.jdbc((connection, tenant) -> {
            String before = previous;
            try (PreparedStatement insert = connection.prepareStatement(ADD)) {
                for (AuditEntry entry : entries) {
                    String hash = entry.hash(before, tenant);
                    insert.setString(1, tenant);
                    insert.setLong(2, entry.position());
                    insert.setObject(3, entry.notedAt().truncatedTo(ChronoUnit.MICROS));
                    insert.setString(4, entry.actor());
                    insert.setString(5, entry.action());
                    insert.setString(6, entry.object());
                    insert.setString(7, entry.content());
                    insert.setBytes(8, HEX.parseHex(before));
                    insert.setBytes(9, HEX.parseHex(hash));
                    insert.addBatch();
                    before = hash;
                }
                return insert.executeBatch().length;
            }
        });
    }

    /** Hands every entry over in the order of the chain, a thousand rows in memory at a time. */
    void eachEntry(Reader reader) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(ENTRIES + " ORDER BY position")) {
                query.setFetchSize(ROWS_AT_ONCE);
                query.setString(1, tenant);
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        reader.read(stored(rows));
                    }
                }
                return tenant;
            }
        });
    }

    /** Entries before a position, the latest first. */
    List<Stored> before(long position, int most) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query =
                    connection.prepareStatement(ENTRIES + " AND position < ? ORDER BY position DESC LIMIT ?")) {
                query.setString(1, tenant);
                query.setLong(2, position);
                query.setInt(3, most);
                List<Stored> entries = new ArrayList<>();
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        entries.add(stored(rows));
                    }
                }
                return entries;
            }
        });
    }

    private static Stored stored(ResultSet row) throws SQLException {
        return new Stored(
                new AuditEntry(
                        row.getLong(1),
                        row.getObject(2, OffsetDateTime.class),
                        row.getString(3),
                        row.getString(4),
                        row.getString(5),
                        row.getString(6)),
                HEX.formatHex(row.getBytes(7)),
                HEX.formatHex(row.getBytes(8)));
    }

    void add(SignedHead head) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement insert = connection.prepareStatement(ADD_HEAD)) {
                insert.setString(1, tenant);
                insert.setLong(2, head.position());
                insert.setBytes(3, HEX.parseHex(head.hash()));
                insert.setObject(4, head.signedAt());
                insert.setString(5, head.keyId());
                insert.setBytes(6, Base64.getDecoder().decode(head.signature()));
                return insert.executeUpdate();
            }
        });
    }

    /** Signed heads, the latest first. */
    List<SignedHead> heads(int most) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(HEADS + " ORDER BY position DESC LIMIT ?")) {
                query.setString(1, tenant);
                query.setInt(2, most);
                List<SignedHead> heads = new ArrayList<>();
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        heads.add(new SignedHead(
                                rows.getString(1),
                                rows.getLong(2),
                                HEX.formatHex(rows.getBytes(3)),
                                rows.getObject(4, OffsetDateTime.class),
                                rows.getString(5),
                                Base64.getEncoder().encodeToString(rows.getBytes(6))));
                    }
                }
                return heads;
            }
        });
    }

    /** The hash of the entry at a position; empty where there is none. */
    Optional<String> hashAt(long position) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(HASH_AT)) {
                query.setString(1, tenant);
                query.setLong(2, position);
                try (ResultSet row = query.executeQuery()) {
                    return row.next() ? Optional.of(HEX.formatHex(row.getBytes(1))) : Optional.empty();
                }
            }
        });
    }

    /** What became of cases whose chain is no longer as far, or no longer the same, as it was when it was tied in. */
    List<String> lostCaseHeads() {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(LOST_CASE_HEADS)) {
                for (int parameter = 1; parameter <= 3; parameter++) {
                    query.setString(parameter, tenant);
                }
                List<String> lost = new ArrayList<>();
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        String event = "event " + rows.getInt(2);
                        lost.add("case " + rows.getString(1)
                                + (rows.getBoolean(3)
                                        ? " was removed; it had come to " + event
                                        : rows.getBoolean(4)
                                                ? " was cut; it had come to " + event
                                                : " was rewritten up to " + event));
                    }
                }
                return lost;
            }
        });
    }

    /** Takes entries one by one. */
    @FunctionalInterface
    interface Reader {
        void read(Stored stored);
    }
}
