package org.axlecause.casefile;

import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.Period;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.axlecause.access.Act;
import org.axlecause.access.ActStore;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/** Removes closed cases whole once they are as old as the operator says; nothing is removed where nothing is said. */
@ApplicationScoped
class RemoveClosedCases {

    private static final Logger LOG = Logger.getLogger(RemoveClosedCases.class);
    private static final int AT_ONCE = 500;
    private static final String SERVICE = "service";

    private final TombstoneStore tombstones;
    private final ActStore acts;
    private final TenantTransaction transaction;
    private final Clock clock;
    private final Optional<Period> kept;

    RemoveClosedCases(
            TombstoneStore tombstones,
            ActStore acts,
            TenantTransaction transaction,
            Clock clock,
            @ConfigProperty(name = "axlecause.closed-cases.kept") Optional<Period> kept) {
        this.tombstones = tombstones;
        this.acts = acts;
        this.transaction = transaction;
        this.clock = clock;
        this.kept = kept;
    }

    @Scheduled(
            every = "{axlecause.closed-cases.interval-of-removal}",
            concurrentExecution = ConcurrentExecution.SKIP,
            identity = "removal of closed cases")
    void whenDue() {
        try {
            kept.ifPresent(this::removeOlderThan);
        } catch (RuntimeException fault) {
            LOG.warn("Closed cases could not be removed just now; the next run goes on", fault);
        }
    }

    /** Removes what was last closed longer ago than that; how many cases. */
    int removeOlderThan(Period age) {
        OffsetDateTime now = OffsetDateTime.now(clock);
        OffsetDateTime moment = now.minus(age);
        int removed = 0;
        List<TombstoneStore.Removable> found;
        int before;
        do {
            before = removed;
            found = tombstones.closedBefore(moment, AT_ONCE);
            for (TombstoneStore.Removable due : found) {
                removed += transaction.call(due.tenant(), () -> remove(due.reference(), moment, now)) ? 1 : 0;
            }
        } while (found.size() == AT_ONCE && removed > before);
        if (removed > 0) {
            LOG.infof("Removed %d cases that were closed before %s", removed, moment);
        }
        return removed;
    }

    private boolean remove(String reference, OffsetDateTime closedBefore, OffsetDateTime now) {
        Optional<TombstoneStore.Head> head = tombstones.remove(reference, closedBefore, now);
        head.ifPresent(last -> acts.note(
                SERVICE,
                Act.CASE_REMOVED,
                reference,
                Map.of("length", String.valueOf(last.length()), "hash", last.hash())));
        return head.isPresent();
    }
}
