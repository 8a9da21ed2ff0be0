package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.access.SiteStore;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.EntryType;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** Reads all that a case is judged from in one question to the database. */
@ApplicationScoped
class HistoryStore {

    /** The sites at which the vehicle was presented, each with the version of its newest price list. */
    private static final String SITES = "SELECT " + SiteStore.COLUMNS + """
            , (SELECT max(p.version) FROM price_list p WHERE p.tenant_id = s.tenant_id AND p.site = s.site) AS prices
              FROM site s
             WHERE s.tenant_id = ? AND s.site IN (SELECT e.body #>> '{data,site}' FROM event e
                                                   WHERE e.tenant_id = ? AND e.reference = ? AND e.type = ?)
            """;

    /** The digest of the document, or the document itself where the digest is not of its last change. */
    private static final String LAST = """
            SELECT status,
                   CASE WHEN digested_at = changed_at THEN document_digest END AS digest,
                   CASE WHEN digested_at IS DISTINCT FROM changed_at THEN document END AS document
              FROM case_file
             WHERE tenant_id = ? AND reference = ? AND chain_length > 0
            """;

    private static final String ALL = EventStore.HISTORY + ";\n" + FiguresStore.FIND + ";\n" + LAST + ";\n" + SITES;

    private final TenantTransaction transaction;

    HistoryStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** Events, figures and last judgement of a case, and the sites that it names. */
    StoredHistory find(String reference) {
        String tenant = transaction.tenant();
        return transaction.ask(
                ALL,
                results -> {
                    List<StoredEvent> events = EventStore.inOrder(EventStore.links(results.next()));
                    Map<EntryId, String> figures = FiguresStore.figures(results.next());
                    LastJudgement last = last(results.next());
                    return new StoredHistory(events, figures, last, sites(results.next()));
                },
                tenant,
                reference,
                tenant,
                reference,
                tenant,
                reference,
                tenant,
                tenant,
                reference,
                EntryType.VEHICLE_PRESENTED.toString());
    }

    private static @Nullable LastJudgement last(ResultSet cases) throws SQLException {
        try (ResultSet row = cases) {
            if (!row.next()) {
                return null;
            }
            String digest = row.getString("digest");
            String document = row.getString("document");
            return new LastJudgement(
                    row.getString("status"),
                    digest != null
                            ? DocumentDigest.read(digest)
                            : document == null ? DocumentDigest.NONE : DocumentDigest.of(Json.members(document)));
        }
    }

    private static Map<String, StoredSite> sites(ResultSet sites) throws SQLException {
        try (ResultSet row = sites) {
            Map<String, StoredSite> found = new TreeMap<>();
            while (row.next()) {
                StoredSite site = new StoredSite(SiteStore.site(row), row.getObject("prices", Integer.class));
                found.put(site.site().site(), site);
            }
            return found;
        }
    }
}
