package org.axlecause.statistics;

import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import org.axlecause.shared.TenantTransaction;
import org.jboss.logging.Logger;

/**
 * Folds deltas into cells, some at a time and each time in one transaction: a lost replica has either folded them or not
 * begun. One replica at a time folds for a tenant.
 */
@ApplicationScoped
class FoldDeltas {

    private static final Logger LOG = Logger.getLogger(FoldDeltas.class);
    private static final int AT_ONCE = 2000;

    private final CellStore cells;
    private final TenantTransaction transaction;

    FoldDeltas(CellStore cells, TenantTransaction transaction) {
        this.cells = cells;
        this.transaction = transaction;
    }

    @Scheduled(
            every = "{axlecause.statistics.interval}",
            concurrentExecution = ConcurrentExecution.SKIP,
            identity = "folding of statistics")
    void whenDue() {
        try {
            fold();
        } catch (RuntimeException fault) {
            LOG.warn("Statistics could not be folded just now; the next run goes on", fault);
        }
    }

    /** Folds all that waits, of all tenants; how many deltas. */
    int fold() {
        int folded = 0;
        for (String tenant : cells.waiting()) {
            transaction.run(tenant, cells::prepare);
            int some;
            do {
                some = transaction.call(tenant, () -> cells.fold(AT_ONCE));
                folded += some;
            } while (some == AT_ONCE);
        }
        return folded;
    }
}
