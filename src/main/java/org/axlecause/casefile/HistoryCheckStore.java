package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.shared.ChainHash;
import org.axlecause.shared.TenantTransaction;

/** Finds what in the histories of a tenant is not as it was written; reads row by row, whatever their number. */
@ApplicationScoped
public class HistoryCheckStore {

    private static final int ROWS_AT_ONCE = 1000;
    private static final int MOST_BREAKS = 1000;

    private static final String EVENTS = "SELECT reference, " + EventStore.LINK_COLUMNS
            + " FROM event WHERE tenant_id = ? ORDER BY reference, position";

    private static final String HEADS_WITHOUT_EVENT = """
            SELECT c.reference
              FROM case_file c
              LEFT JOIN event e
                     ON e.tenant_id = c.tenant_id AND e.reference = c.reference AND e.position = c.chain_length
             WHERE c.tenant_id = ? AND c.chain_length > 0 AND e.hash IS DISTINCT FROM c.chain_hash
             ORDER BY c.reference
            """;

    private static final String EVENTS_BEYOND_HEAD = """
            SELECT DISTINCT e.reference
              FROM event e
              JOIN case_file c ON c.tenant_id = e.tenant_id AND c.reference = e.reference
             WHERE e.tenant_id = ? AND e.position > c.chain_length
             ORDER BY e.reference
            """;

    private static final String EVENTS_WITHOUT_IDENTITY = """
            SELECT DISTINCT e.reference
              FROM event e
              LEFT JOIN event_identity i
                     ON i.tenant_id = e.tenant_id AND i.source = e.source AND i.id = e.id
             WHERE e.tenant_id = ? AND (i.digest IS DISTINCT FROM e.digest OR i.reference <> e.reference)
             ORDER BY e.reference
            """;

    private final TenantTransaction transaction;

    HistoryCheckStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /**
     * What the check of a tenant's histories found.
     *
     * @param cases how many cases were read
     * @param events how many events
     * @param breaks what is not as it was written, a sentence each; at most 1000
     */
    public record Checked(long cases, long events, List<String> breaks) {

        public Checked {
            breaks = List.copyOf(breaks);
        }
    }

    /** Checks every history of the open transaction's tenant. */
    public Checked check() {
        return transaction.jdbc((connection, tenant) -> {
            Reading reading = new Reading(tenant);
            try (PreparedStatement query = connection.prepareStatement(EVENTS)) {
                query.setFetchSize(ROWS_AT_ONCE);
                query.setString(1, tenant);
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        reading.next(rows.getString("reference"), EventStore.link(rows));
                    }
                }
            }
            List<String> breaks = reading.breaks;
            references(connection, HEADS_WITHOUT_EVENT, tenant)
                    .forEach(reference -> breaks.add(
                            "case " + reference + ": its last event is missing or is not the one that the case names"));
            references(connection, EVENTS_BEYOND_HEAD, tenant)
                    .forEach(reference -> breaks.add("case " + reference + ": it has events that nobody accepted"));
            references(connection, EVENTS_WITHOUT_IDENTITY, tenant)
                    .forEach(reference -> breaks.add(
                            "case " + reference + ": an event's identity is missing or belongs to other content"));
            return new Checked(reading.cases, reading.events, breaks.subList(0, Math.min(breaks.size(), MOST_BREAKS)));
        });
    }

    private static List<String> references(Connection connection, String sql, String tenant) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(sql)) {
            query.setString(1, tenant);
            List<String> references = new ArrayList<>();
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next() && references.size() < MOST_BREAKS) {
                    references.add(rows.getString(1));
                }
            }
            return references;
        }
    }

    /** Follows the chains of one case after the other. */
    private static final class Reading {

        private final String tenant;
        private final List<String> breaks = new ArrayList<>();
        private String reference = "";
        private String previous = ChainHash.start();
        private int position;
        private long cases;
        private long events;

        Reading(String tenant) {
            this.tenant = tenant;
        }

        void next(String ofCase, ChainLink link) {
            if (!ofCase.equals(reference)) {
                reference = ofCase;
                previous = ChainHash.start();
                position = 0;
                cases++;
            }
            events++;
            position++;
            int found = link.event().position();
            if (found != position) {
                say("event " + position + " is missing");
            } else if (!link.isBehind(previous, tenant, reference, position)) {
                say("event " + position + " is not what was written");
            }
            position = found;
            previous = link.hash();
        }

        private void say(String what) {
            if (breaks.size() < MOST_BREAKS) {
                breaks.add("case " + reference + ": " + what);
            }
        }
    }
}
