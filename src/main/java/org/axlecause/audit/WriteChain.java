package org.axlecause.audit;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.jboss.logging.Logger;

/** Ties what waits into each tenant's chain, off the path of the events; one replica at a time writes a chain. */
@ApplicationScoped
class WriteChain {

    private static final Logger LOG = Logger.getLogger(WriteChain.class);
    private static final int AT_ONCE = 500;
    private static final String SERVICE = "service";

    private final AuditStore store;
    private final TenantTransaction transaction;
    private final Clock clock;

    WriteChain(AuditStore store, TenantTransaction transaction, Clock clock) {
        this.store = store;
        this.transaction = transaction;
        this.clock = clock;
    }

    @Scheduled(
            every = "${axlecause.audit.every}",
            delayed = "5s",
            concurrentExecution = Scheduled.ConcurrentExecution.SKIP,
            identity = "audit-chain")
    void whenDue() {
        try {
            writeAll();
        } catch (RuntimeException fault) {
            LOG.warn("The audit chains could not be written just now; nothing is lost, the next run goes on", fault);
        }
    }

    /** Writes until nothing waits that is not in work elsewhere. */
    void writeAll() {
        for (String tenant : store.tenantsToChain()) {
            while (write(tenant) == AT_ONCE) {
                LOG.debugf("More waits for the audit chain");
            }
        }
    }

    /** Ties what waits of one tenant; how many cases, at most 500, or notes, whichever are more. */
    int write(String tenant) {
        return transaction.call(tenant, () -> {
            if (!store.isOnlyWriter()) {
                return 0;
            }
            ChainHead head = store.head();
            List<AuditStore.Note> notes = store.notes(AT_ONCE);
            List<AuditStore.CaseHead> cases = store.unchained(AT_ONCE);
            store.add(head.hash(), entries(head.position(), notes, cases));
            store.remove(notes);
            store.markChained(cases);
            return Math.max(notes.size(), cases.size());
        });
    }

    private List<AuditEntry> entries(long last, List<AuditStore.Note> notes, List<AuditStore.CaseHead> cases) {
        OffsetDateTime now = OffsetDateTime.now(clock).truncatedTo(ChronoUnit.MICROS);
        List<AuditEntry> entries = new ArrayList<>();
        long position = last;
        for (AuditStore.Note note : notes) {
            position++;
            entries.add(new AuditEntry(
                    position, note.notedAt(), note.actor(), note.action(), note.object(), note.content()));
        }
        for (AuditStore.CaseHead head : cases) {
            position++;
            String content = Json.text(new TreeMap<>(Map.of("hash", head.hash(), "length", head.length())));
            entries.add(new AuditEntry(position, now, SERVICE, AuditEntry.CASE_HEAD, head.reference(), content));
        }
        return entries;
    }
}
