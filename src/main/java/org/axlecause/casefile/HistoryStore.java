package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.EntryId;
import org.axlecause.shared.TenantTransaction;

/** Reads all that a case is judged from in one question to the database. */
@ApplicationScoped
class HistoryStore {

    private static final String ALL = EventStore.HISTORY + ";\n" + FiguresStore.FIND + ";\n" + CaseStore.FIND;

    private final TenantTransaction transaction;

    HistoryStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** Events, figures and last judgement of a case. */
    StoredHistory find(String reference) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(ALL)) {
                for (int question = 0; question < 3; question++) {
                    query.setString(2 * question + 1, tenant);
                    query.setString(2 * question + 2, reference);
                }
                query.execute();
                List<StoredEvent> events = EventStore.inOrder(EventStore.links(query.getResultSet()));
                query.getMoreResults();
                Map<EntryId, String> figures = FiguresStore.figures(query.getResultSet());
                query.getMoreResults();
                List<StoredCase> last = CaseStore.cases(query.getResultSet());
                return new StoredHistory(events, figures, last.isEmpty() ? null : last.get(0));
            }
        });
    }
}
