package org.axlecause.outbound;

import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import org.axlecause.shared.KafkaTopics;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/** Removes events that are too old to be sent once more, with their deliveries. */
@ApplicationScoped
class RemoveOldEvents {

    private static final Logger LOG = Logger.getLogger(RemoveOldEvents.class);

    private final OutboxStore outbox;
    private final KafkaTopics topics;
    private final TenantTransaction transaction;
    private final Clock clock;
    private final Duration kept;

    RemoveOldEvents(
            OutboxStore outbox,
            KafkaTopics topics,
            TenantTransaction transaction,
            Clock clock,
            @ConfigProperty(name = "axlecause.outbound.kept") Duration kept) {
        this.outbox = outbox;
        this.topics = topics;
        this.transaction = transaction;
        this.clock = clock;
        this.kept = kept;
    }

    @Scheduled(
            every = "{axlecause.outbound.interval-of-removal}",
            concurrentExecution = ConcurrentExecution.SKIP,
            identity = "removal of old events")
    void remove() {
        OffsetDateTime moment = OffsetDateTime.now(clock).minus(kept);
        for (String tenant : outbox.tenantsWithEventsBefore(moment)) {
            boolean toBePublished =
                    topics.out().stream().anyMatch(topic -> topic.tenant().equals(tenant));
            int removed = transaction.call(tenant, () -> outbox.removeBefore(moment, toBePublished));
            LOG.infof("Removed %d events of %s from before %s", removed, tenant, moment);
        }
    }
}
