package org.axlecause.statistics;

import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.IntSupplier;
import org.axlecause.casefile.StatisticsTerms;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * Folds deltas into cells, some at a time and each time in one transaction: a lost replica has either folded them or not
 * begun. One replica at a time folds for a tenant, and not for each delta: questions read what waits beside the cells.
 */
@ApplicationScoped
public class FoldDeltas {

    private static final Logger LOG = Logger.getLogger(FoldDeltas.class);
    private static final int AT_ONCE = 2000;

    private final CellStore cells;
    private final RepairCellStore repairCells;
    private final OpenCaseStore openCases;
    private final TenantTransaction transaction;
    private final Clock clock;
    private final int atOnceFrom;
    private final Duration longestWait;
    private final Map<String, Instant> waitingSince = new ConcurrentHashMap<>();
    private final int returnDays = StatisticsTerms.released().returnDays();

    FoldDeltas(
            CellStore cells,
            RepairCellStore repairCells,
            OpenCaseStore openCases,
            TenantTransaction transaction,
            Clock clock,
            @ConfigProperty(name = "axlecause.statistics.fold-from") int atOnceFrom,
            @ConfigProperty(name = "axlecause.statistics.fold-within") Duration longestWait) {
        this.cells = cells;
        this.repairCells = repairCells;
        this.openCases = openCases;
        this.transaction = transaction;
        this.clock = clock;
        this.atOnceFrom = atOnceFrom;
        this.longestWait = longestWait;
    }

    @Scheduled(
            every = "{axlecause.statistics.interval}",
            concurrentExecution = ConcurrentExecution.SKIP,
            identity = "folding of statistics")
    void whenDue() {
        try {
            List<String> tenants = cells.waiting();
            waitingSince.keySet().retainAll(tenants);
            tenants.stream().filter(this::isDue).forEach(this::fold);
        } catch (RuntimeException fault) {
            LOG.warn("Statistics could not be folded just now; the next run goes on", fault);
        }
    }

    /** Folds all that waits, of all tenants; how many deltas. */
    public int fold() {
        return cells.waiting().stream().mapToInt(this::fold).sum();
    }

    /**
     * Whether so much waits, or for so long, that it is worth a fold: what is read from the cells is kept until the next one,
     * and many deltas of the same cells are one change of them.
     */
    private boolean isDue(String tenant) {
        Instant now = clock.instant();
        Instant since = waitingSince.computeIfAbsent(tenant, unknown -> now);
        return !now.isBefore(since.plus(longestWait))
                || transaction.call(tenant, () -> cells.waiting(atOnceFrom)) >= atOnceFrom;
    }

    private int fold(String tenant) {
        waitingSince.remove(tenant);
        transaction.run(tenant, cells::prepare);
        return all(tenant, () -> cells.fold(AT_ONCE))
                + all(tenant, () -> repairCells.fold(AT_ONCE, returnDays))
                + all(tenant, () -> openCases.fold(AT_ONCE));
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
