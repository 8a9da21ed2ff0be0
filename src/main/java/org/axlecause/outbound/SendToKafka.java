package org.axlecause.outbound;

import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.errors.RetriableException;
import org.axlecause.outbound.OutboxStore.Unpublished;
import org.axlecause.shared.KafkaClients;
import org.axlecause.shared.KafkaTopics.Topic;
import org.jspecify.annotations.Nullable;

/** Sends events to a topic, keyed by case, and waits until the broker has acknowledged or refused each. */
@ApplicationScoped
class SendToKafka {

    private static final byte[] MEDIA_TYPE = bytes("application/cloudevents+json; charset=UTF-8");

    private final KafkaClients clients;
    private @Nullable Producer<byte[], byte[]> present;

    SendToKafka(KafkaClients clients) {
        this.clients = clients;
    }

    /**
     * What became of the events.
     *
     * @param taken those that the broker has acknowledged
     * @param fault why it hasn't taken another; null when it has taken all
     */
    record Outcome(Set<UUID> taken, @Nullable Throwable fault) {}

    /** Sends events of different cases. */
    Outcome send(Topic topic, List<Unpublished> events) {
        Producer<byte[], byte[]> producer;
        try {
            producer = producer();
        } catch (KafkaException fault) {
            return new Outcome(Set.of(), fault);
        }
        Set<UUID> taken = new HashSet<>();
        Throwable fault = null;
        List<Future<RecordMetadata>> sending = begun(producer, topic, events);
        for (int index = 0; index < sending.size(); index++) {
            Throwable refusal = refusal(sending.get(index));
            if (refusal == null) {
                taken.add(events.get(index).id());
            } else {
                fault = refusal;
            }
        }
        if (fault != null && !(fault instanceof RetriableException)) {
            discard(producer);
        }
        return new Outcome(taken, fault);
    }

    /** Stops at the first that is refused at once: a broker that is away would be waited for anew with each. */
    private static List<Future<RecordMetadata>> begun(
            Producer<byte[], byte[]> producer, Topic topic, List<Unpublished> events) {
        List<Future<RecordMetadata>> sending = new ArrayList<>();
        for (Unpublished event : events) {
            Future<RecordMetadata> one = begun(producer, message(topic, event));
            sending.add(one);
            if (one.isDone() && refusal(one) != null) {
                break;
            }
        }
        return sending;
    }

    private static Future<RecordMetadata> begun(
            Producer<byte[], byte[]> producer, ProducerRecord<byte[], byte[]> message) {
        try {
            return producer.send(message);
        } catch (KafkaException fault) {
            return CompletableFuture.failedFuture(fault);
        }
    }

    private static @Nullable Throwable refusal(Future<RecordMetadata> sending) {
        try {
            sending.get();
            return null;
        } catch (ExecutionException fault) {
            return fault.getCause();
        } catch (InterruptedException interruption) {
            Thread.currentThread().interrupt();
            return interruption;
        }
    }

    private static ProducerRecord<byte[], byte[]> message(Topic topic, Unpublished event) {
        ProducerRecord<byte[], byte[]> message =
                new ProducerRecord<>(topic.name(), bytes(event.reference()), bytes(event.body()));
        message.headers().add("content-type", MEDIA_TYPE);
        return message;
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private synchronized Producer<byte[], byte[]> producer() {
        Producer<byte[], byte[]> made = present;
        if (made == null) {
            made = clients.producer();
            present = made;
        }
        return made;
    }

    /** A producer may not heal from a fault that isn't marked as passing. */
    private synchronized void discard(Producer<byte[], byte[]> producer) {
        if (producer.equals(present)) {
            present = null;
        }
        producer.close(Duration.ZERO);
    }

    /** Drops what is still on its way. */
    synchronized void close() {
        if (present != null) {
            discard(present);
        }
    }
}
