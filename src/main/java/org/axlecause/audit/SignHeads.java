package org.axlecause.audit;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/** Signs the heads of the tenants' chains now and then, and exports them where a folder is named. */
@ApplicationScoped
class SignHeads {

    private static final Logger LOG = Logger.getLogger(SignHeads.class);

    private final AuditStore store;
    private final HeadKey key;
    private final TenantTransaction transaction;
    private final Clock clock;
    private final Optional<Path> export;

    SignHeads(
            AuditStore store,
            HeadKey key,
            TenantTransaction transaction,
            Clock clock,
            @ConfigProperty(name = "axlecause.audit.export-folder") Optional<Path> export) {
        this.store = store;
        this.key = key;
        this.transaction = transaction;
        this.clock = clock;
        this.export = export;
    }

    @Scheduled(
            every = "${axlecause.audit.sign-every}",
            delayed = "1m",
            concurrentExecution = Scheduled.ConcurrentExecution.SKIP,
            identity = "audit-heads")
    void whenDue() {
        try {
            signAll();
        } catch (RuntimeException fault) {
            LOG.warn("The heads of the audit chains could not be signed just now; the next run goes on", fault);
        }
    }

    /** Signs the head of each tenant's chain that has grown since; does nothing without a key. */
    void signAll() {
        if (key.isThere()) {
            store.allTenants().forEach(tenant -> sign(tenant).ifPresent(this::export));
        }
    }

    private Optional<SignedHead> sign(String tenant) {
        return transaction.call(tenant, () -> {
            ChainHead head = store.head();
            List<SignedHead> last = store.heads(1);
            if (head.position() == 0 || (!last.isEmpty() && last.get(0).position() >= head.position())) {
                return Optional.empty();
            }
            SignedHead signed = key.sign(tenant, head, OffsetDateTime.now(clock));
            store.add(signed);
            return Optional.of(signed);
        });
    }

    private void export(SignedHead head) {
        export.ifPresent(folder -> {
            try {
                Files.createDirectories(folder);
                Files.writeString(
                        folder.resolve(head.tenant() + ".jsonl"),
                        Json.text(head) + "\n",
                        StandardCharsets.UTF_8,
                        StandardOpenOption.CREATE,
                        StandardOpenOption.APPEND);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }
}
