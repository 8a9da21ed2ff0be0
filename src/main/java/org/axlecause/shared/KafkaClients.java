package org.axlecause.shared;

import io.smallrye.common.annotation.Identifier;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.HashMap;
import java.util.Map;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.consumer.CooperativeStickyAssignor;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerConfig;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.ByteArraySerializer;

/** Makes clients of the Kafka broker that the settings name; nothing connects before one is made. */
@ApplicationScoped
public class KafkaClients {

    private static final int RECORDS_AT_A_TIME = 200;

    /** How often a broker that is away is tried, and told of in the log. */
    private static final int LONGEST_BACKOFF_MILLIS = 5_000;

    /** How soon the partitions of a replica that died go to the others. */
    private static final int SESSION_MILLIS = 10_000;

    private static final int WAIT_FOR_TOPIC_MILLIS = 3_000;
    private static final int WAIT_FOR_ANSWER_MILLIS = 5_000;
    private static final int WAIT_FOR_DELIVERY_MILLIS = 10_000;

    private final Map<String, Object> settings;

    KafkaClients(@Identifier("default-kafka-broker") Map<String, Object> settings) {
        this.settings = settings;
    }

    /** A consumer of the service's group, from the earliest record on, that commits only when it is told to. */
    public Consumer<byte[], byte[]> consumer() {
        Map<String, Object> wanted = new HashMap<>();
        wanted.put(ConsumerConfig.GROUP_ID_CONFIG, "axlecause");
        wanted.put(ConsumerConfig.AUTO_OFFSET_RESET_CONFIG, "earliest");
        wanted.put(ConsumerConfig.ISOLATION_LEVEL_CONFIG, "read_committed");
        wanted.put(ConsumerConfig.MAX_POLL_RECORDS_CONFIG, RECORDS_AT_A_TIME);
        wanted.put(ConsumerConfig.SESSION_TIMEOUT_MS_CONFIG, SESSION_MILLIS);
        wanted.put(ConsumerConfig.RECONNECT_BACKOFF_MAX_MS_CONFIG, LONGEST_BACKOFF_MILLIS);
        wanted.put(ConsumerConfig.PARTITION_ASSIGNMENT_STRATEGY_CONFIG, CooperativeStickyAssignor.class.getName());
        wanted.putAll(settings);
        wanted.put(ConsumerConfig.ENABLE_AUTO_COMMIT_CONFIG, false);
        return new KafkaConsumer<>(wanted, new ByteArrayDeserializer(), new ByteArrayDeserializer());
    }

    /** A producer that every replica of a partition must have heard and that doubles nothing by itself. */
    public Producer<byte[], byte[]> producer() {
        Map<String, Object> wanted = new HashMap<>();
        wanted.put(ProducerConfig.RECONNECT_BACKOFF_MAX_MS_CONFIG, LONGEST_BACKOFF_MILLIS);
        wanted.put(ProducerConfig.MAX_BLOCK_MS_CONFIG, WAIT_FOR_TOPIC_MILLIS);
        wanted.put(ProducerConfig.REQUEST_TIMEOUT_MS_CONFIG, WAIT_FOR_ANSWER_MILLIS);
        wanted.put(ProducerConfig.DELIVERY_TIMEOUT_MS_CONFIG, WAIT_FOR_DELIVERY_MILLIS);
        wanted.putAll(settings);
        wanted.put(ProducerConfig.ACKS_CONFIG, "all");
        wanted.put(ProducerConfig.ENABLE_IDEMPOTENCE_CONFIG, true);
        return new KafkaProducer<>(wanted, new ByteArraySerializer(), new ByteArraySerializer());
    }
}
