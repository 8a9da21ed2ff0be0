package org.axlecause.outbound;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.axlecause.outbound.OutboxStore.Unpublished;
import org.axlecause.outbound.SendToKafka.Outcome;
import org.axlecause.shared.KafkaTopics;
import org.axlecause.shared.KafkaTopics.Topic;
import org.axlecause.shared.TenantTransaction;
import org.jboss.logging.Logger;

/**
 * Sends the outbox of each tenant that has a topic to Kafka. Events are claimed, sent outside any transaction, and marked
 * once the broker has them; a case's next event is claimed only then, so that none overtakes another on any replica.
 */
@ApplicationScoped
class PublishEvents {

    private static final Logger LOG = Logger.getLogger(PublishEvents.class);
    private static final int AT_A_TIME = 500;
    private static final int THREADS = 8;
    private static final int STOP_SECONDS = 5;

    /** Well beyond the longest that the broker is waited for, so that nothing is sent twice while its replica lives. */
    private static final Duration CLAIM = Duration.ofMinutes(1);

    private final KafkaTopics topics;
    private final OutboxStore outbox;
    private final SendToKafka sendToKafka;
    private final TenantTransaction transaction;
    private final Clock clock;
    private final Set<Topic> running = ConcurrentHashMap.newKeySet();
    private final Set<Topic> failing = ConcurrentHashMap.newKeySet();
    private final ExecutorService threads = Executors.newFixedThreadPool(THREADS);

    PublishEvents(
            KafkaTopics topics,
            OutboxStore outbox,
            SendToKafka sendToKafka,
            TenantTransaction transaction,
            Clock clock) {
        this.topics = topics;
        this.outbox = outbox;
        this.sendToKafka = sendToKafka;
        this.transaction = transaction;
        this.clock = clock;
    }

    @Scheduled(
            every = "{axlecause.kafka.interval}",
            concurrentExecution = ConcurrentExecution.SKIP,
            identity = "events to Kafka")
    void publish() {
        if (!threads.isShutdown()) {
            round();
        }
    }

    /** Begins to send to every topic but those that are being sent to already. */
    List<CompletableFuture<Void>> round() {
        return topics.out().stream()
                .filter(running::add)
                .map(topic -> CompletableFuture.runAsync(() -> publish(topic), threads))
                .toList();
    }

    void atStop(@Observes ShutdownEvent event) throws InterruptedException {
        threads.shutdown();
        if (!threads.awaitTermination(STOP_SECONDS, TimeUnit.SECONDS)) {
            LOG.info("Events on their way to Kafka are left to their claims");
        }
        sendToKafka.close();
    }

    private void publish(Topic topic) {
        try {
            boolean goOn = true;
            while (goOn && !threads.isShutdown()) {
                goOn = publishSome(topic);
            }
        } catch (RuntimeException fault) {
            LOG.errorf(fault, "Sending to topic %s of %s faulted", topic.name(), topic.tenant());
        } finally {
            running.remove(topic);
        }
    }

    /** Whether there may be more to send at once. */
    private boolean publishSome(Topic topic) {
        OffsetDateTime now = OffsetDateTime.now(clock);
        List<Unpublished> claimed =
                transaction.call(topic.tenant(), () -> outbox.claim(now, now.plus(CLAIM), AT_A_TIME));
        if (claimed.isEmpty()) {
            return false;
        }
        Outcome outcome = sendToKafka.send(topic, claimed);
        tellOfChange(topic, outcome);
        List<UUID> left = claimed.stream()
                .map(Unpublished::id)
                .filter(id -> !outcome.taken().contains(id))
                .toList();
        transaction.run(topic.tenant(), () -> {
            outbox.published(outcome.taken(), OffsetDateTime.now(clock));
            outbox.release(left);
        });
        return left.isEmpty();
    }

    private void tellOfChange(Topic topic, Outcome outcome) {
        if (outcome.fault() == null) {
            if (failing.remove(topic)) {
                LOG.infof("Topic %s of %s takes events again", topic.name(), topic.tenant());
            }
        } else if (failing.add(topic)) {
            LOG.warnf(
                    outcome.fault(),
                    "Topic %s of %s did not take all events; they are sent again until it does",
                    topic.name(),
                    topic.tenant());
        }
    }
}
