package org.axlecause.statistics;

import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.function.IntSupplier;
import org.axlecause.casefile.StatisticsTerms;
import org.axlecause.shared.TenantTransaction;
import org.jboss.logging.Logger;

/**
 * Folds deltas into cells, some at a time and each time in one transaction: a lost replica has either folded them or not
 * begun. One replica at a time folds for a tenant.
 */
@ApplicationScoped
public class FoldDeltas {

    private static final Logger LOG = Logger.getLogger(FoldDeltas.class);
    private static final int AT_ONCE = 2000;

    private final CellStore cells;
    private final RepairCellStore repairCells;
    private final OpenCaseStore openCases;
    private final TenantTransaction transaction;
    private final int returnDays = StatisticsTerms.released().returnDays();

    FoldDeltas(CellStore cells, RepairCellStore repairCells, OpenCaseStore openCases, TenantTransaction transaction) {
        this.cells = cells;
        this.repairCells = repairCells;
        this.openCases = openCases;
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
    public int fold() {
        int folded = 0;
        for (String tenant : cells.waiting()) {
            transaction.run(tenant, cells::prepare);
            folded += all(tenant, () -> cells.fold(AT_ONCE));
            folded += all(tenant, () -> repairCells.fold(AT_ONCE, returnDays));
            folded += all(tenant, () -> openCases.fold(AT_ONCE));
        }
        return folded;
    }

    private int all(String tenant, IntSupplier fold) {
        int folded = 0;
        int some;
        do {
            some = transaction.call(tenant, fold::getAsInt);
            folded += some;
        } while (some == AT_ONCE);
        return folded;
    }
}
