package org.axlecause.statistics;

import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BooleanSupplier;
import org.axlecause.shared.TenantTransaction;
import org.jboss.logging.Logger;

/** Reads again what was asked for within the hour and a fold has changed since, so that nobody waits for it. */
@ApplicationScoped
class RenewKept {

    private static final Logger LOG = Logger.getLogger(RenewKept.class);

    /** More questions than these are not read again at once; the next run goes on. */
    private static final int MOST = 100;

    private final CountStore counts;
    private final RepairStore repairs;
    private final TenantTransaction transaction;

    RenewKept(CountStore counts, RepairStore repairs, TenantTransaction transaction) {
        this.counts = counts;
        this.repairs = repairs;
        this.transaction = transaction;
    }

    @Scheduled(
            every = "{axlecause.statistics.interval-of-renewal}",
            concurrentExecution = ConcurrentExecution.SKIP,
            identity = "renewal of what was read from cells")
    void whenDue() {
        try {
            renew();
        } catch (RuntimeException fault) {
            LOG.warn(
                    "What was asked of the statistics could not be read again just now; who asks next waits for it",
                    fault);
        }
    }

    /** Reads again what has changed, one question a transaction; how many. */
    int renew() {
        Set<String> tenants = new TreeSet<>(counts.keptTenants());
        tenants.addAll(repairs.keptTenants());
        int renewed = 0;
        for (String tenant : tenants) {
            renewed += all(tenant, counts::renewOne) + all(tenant, repairs::renewOne);
        }
        return renewed;
    }

    private int all(String tenant, BooleanSupplier one) {
        int renewed = 0;
        while (renewed < MOST
                && transaction.snapshot(tenant, () -> {
                    counts.gatherInMemory();
                    return one.getAsBoolean();
                })) {
            renewed++;
        }
        return renewed;
    }
}
