package org.axlecause.intake;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Duration;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.kafka.clients.consumer.CommitFailedException;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerRebalanceListener;
import org.apache.kafka.clients.consumer.ConsumerRecords;
import org.apache.kafka.clients.consumer.OffsetAndMetadata;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.errors.RebalanceInProgressException;
import org.apache.kafka.common.errors.WakeupException;
import org.axlecause.access.TenantStore;
import org.axlecause.shared.KafkaClients;
import org.axlecause.shared.KafkaTopics;
import org.axlecause.shared.KafkaTopics.Topic;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Reads events from Kafka, on one thread per replica; its group shares the partitions out. An offset is committed once
 * all before it is stored or set aside, later where partitions are being shared out just then; what the service couldn't
 * store is read again, with growing pauses.
 */
@ApplicationScoped
class ReadTopics {

    private static final Logger LOG = Logger.getLogger(ReadTopics.class);
    private static final Duration USUAL_WAIT = Duration.ofSeconds(1);
    private static final Duration SHORTEST_PAUSE = Duration.ofMillis(500);
    private static final Duration LONGEST_PAUSE = Duration.ofSeconds(30);
    private static final Duration STOP = Duration.ofSeconds(8);

    private final KafkaTopics topics;
    private final KafkaClients clients;
    private final TakeRecords takeRecords;
    private final TenantStore tenants;
    private final IntakeMeters meters;
    private volatile boolean stopping;
    private volatile @Nullable Consumer<byte[], byte[]> present;
    private @Nullable Thread thread;
    private Duration rest = SHORTEST_PAUSE;

    /** What is stored but not committed, since partitions were being shared out; touched by the reader alone. */
    private final Map<TopicPartition, OffsetAndMetadata> uncommitted = new HashMap<>();

    ReadTopics(
            KafkaTopics topics,
            KafkaClients clients,
            TakeRecords takeRecords,
            TenantStore tenants,
            IntakeMeters meters) {
        this.topics = topics;
        this.clients = clients;
        this.takeRecords = takeRecords;
        this.tenants = tenants;
        this.meters = meters;
    }

    void atStart(@Observes StartupEvent event) {
        if (topics.in().isEmpty()) {
            return;
        }
        topics.in().forEach(topic -> tenants.open(topic.tenant(), topic.tenant()));
        Thread reader = new Thread(this::readUntilStopped, "kafka-reader");
        reader.start();
        thread = reader;
    }

    void atStop(@Observes ShutdownEvent event) throws InterruptedException {
        stopping = true;
        Consumer<byte[], byte[]> reading = present;
        if (reading != null) {
            reading.wakeup();
        }
        Thread reader = thread;
        if (reader != null) {
            reader.join(STOP.toMillis());
        }
    }

    private void readUntilStopped() {
        while (!stopping) {
            try (Consumer<byte[], byte[]> consumer = clients.consumer()) {
                present = consumer;
                read(consumer);
            } catch (WakeupException woken) {
                LOG.debug("The reader was woken up to stop");
            } catch (RuntimeException fault) {
                LOG.error("Reading from Kafka faulted; it begins anew from the last commit", fault);
                rest(rest);
                rest = longer(rest);
            }
        }
    }

    private void read(Consumer<byte[], byte[]> consumer) {
        Map<String, Topic> byName = topics.in().stream().collect(Collectors.toMap(Topic::name, Function.identity()));
        uncommitted.clear();
        consumer.subscribe(byName.keySet(), new ForgetWhatOthersRead());
        Duration pause = SHORTEST_PAUSE;
        Duration wait = USUAL_WAIT;
        while (!stopping) {
            ConsumerRecords<byte[], byte[]> records = consumer.poll(wait);
            consumer.resume(consumer.paused());
            boolean whole = true;
            for (TopicPartition partition : records.partitions()) {
                Topic topic = byName.get(partition.topic());
                if (topic != null) {
                    whole &= take(consumer, topic, partition, records);
                }
            }
            commit(consumer);
            meters.waiting(waiting(consumer));
            wait = USUAL_WAIT;
            if (whole && !records.isEmpty()) {
                pause = SHORTEST_PAUSE;
                rest = SHORTEST_PAUSE;
            } else if (!whole) {
                // Why paused and polled, not slept: whoever doesn't poll is taken out of the group.
                consumer.pause(consumer.assignment());
                wait = pause;
                pause = longer(pause);
            }
        }
    }

    /** Takes the records of one partition, goes back to the first that couldn't be stored, and commits up to there. */
    private boolean take(
            Consumer<byte[], byte[]> consumer,
            Topic topic,
            TopicPartition partition,
            ConsumerRecords<byte[], byte[]> records) {
        long end = Objects.requireNonNull(records.nextOffsets().get(partition)).offset();
        long next = takeRecords.take(topic, records.records(partition)).orElse(end);
        // Why before the commit: where that is refused and the partition stays, the failed record must still come
        // again.
        if (next < end && consumer.assignment().contains(partition)) {
            consumer.seek(partition, next);
        }
        uncommitted.put(partition, new OffsetAndMetadata(next));
        commit(consumer);
        return next == end;
    }

    /** Commits what is stored; while partitions are shared out that is refused, and tried again after the next poll. */
    private void commit(Consumer<byte[], byte[]> consumer) {
        if (uncommitted.isEmpty()) {
            return;
        }
        try {
            consumer.commitSync(Map.copyOf(uncommitted));
            uncommitted.clear();
        } catch (CommitFailedException | RebalanceInProgressException sharedOutAnew) {
            LOG.infof(
                    "Partitions %s are shared out anew; what comes again of them is a duplicate", uncommitted.keySet());
        }
    }

    /** Partitions that went to another replica are no longer committed here. */
    private final class ForgetWhatOthersRead implements ConsumerRebalanceListener {

        @Override
        public void onPartitionsRevoked(Collection<TopicPartition> partitions) {
            uncommitted.keySet().removeAll(partitions);
        }

        @Override
        public void onPartitionsAssigned(Collection<TopicPartition> partitions) {
            uncommitted.keySet().removeAll(partitions);
        }
    }

    private static long waiting(Consumer<byte[], byte[]> consumer) {
        return consumer.assignment().stream()
                .mapToLong(partition -> consumer.currentLag(partition).orElse(0))
                .sum();
    }

    private static Duration longer(Duration pause) {
        Duration twice = pause.multipliedBy(2);
        return twice.compareTo(LONGEST_PAUSE) > 0 ? LONGEST_PAUSE : twice;
    }

    private void rest(Duration time) {
        try {
            Thread.sleep(time.toMillis());
        } catch (InterruptedException e) {
            stopping = true;
            Thread.currentThread().interrupt();
        }
    }
}
