package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** Removes closed cases whole, and knows which were removed. */
@ApplicationScoped
class TombstoneStore {

    private static final String REMOVABLE = "SELECT tenant_id, reference FROM cases_closed_before(?, ?)";

    private static final String REMOVE = "SELECT length, hash FROM remove_closed_case(?, ?, ?, ?)";

    private static final String FIND =
            "SELECT site, removed_at FROM case_tombstone WHERE tenant_id = ? AND reference = ?";

    private final TenantTransaction transaction;

    TombstoneStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** A case that may be removed. */
    record Removable(String tenant, String reference) {}

    /** The head of the chain of a case that was removed. */
    record Head(int length, String hash) {}

    /** What is left of a removed case. */
    record Tombstone(@Nullable String site, LocalDate removedOn) {}

    /** Cases that were last closed before a moment; looks across tenants, outside any tenant's transaction. */
    List<Removable> closedBefore(OffsetDateTime moment, int most) {
        return transaction.acrossTenants(
                REMOVABLE, row -> new Removable(row.getString(1), row.getString(2)), moment, most);
    }

    /**
     * Removes a case that was last closed before a moment, with all that only it names; empty where it is in work just
     * now, was opened again, or isn't tied into the audit chain to its end.
     */
    Optional<Head> remove(String reference, OffsetDateTime closedBefore, OffsetDateTime now) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement remove = connection.prepareStatement(REMOVE)) {
                remove.setString(1, tenant);
                remove.setString(2, reference);
                remove.setObject(3, closedBefore);
                remove.setObject(4, now.truncatedTo(ChronoUnit.MICROS));
                try (ResultSet row = remove.executeQuery()) {
                    return row.next()
                            ? Optional.of(new Head(row.getInt(1), HexFormat.of().formatHex(row.getBytes(2))))
                            : Optional.empty();
                }
            }
        });
    }

    /** What is left of a case; empty where none of that reference was removed. */
    Optional<Tombstone> find(String reference) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(FIND)) {
                query.setString(1, tenant);
                query.setString(2, reference);
                try (ResultSet row = query.executeQuery()) {
                    return row.next()
                            ? Optional.of(new Tombstone(
                                    row.getString(1),
                                    row.getObject(2, OffsetDateTime.class).toLocalDate()))
                            : Optional.empty();
                }
            }
        });
    }
}
