package org.axlecause.intake;

import io.quarkus.runtime.ShutdownEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.enterprise.event.Observes;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.KafkaException;
import org.axlecause.access.Actor;
import org.axlecause.access.Role;
import org.axlecause.shared.Json;
import org.axlecause.shared.KafkaClients;
import org.axlecause.shared.KafkaTopics.Topic;
import org.axlecause.shared.Problem;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** Accepts the events of a partition's records together, and sets aside those that can't be accepted, with the problem. */
@ApplicationScoped
class TakeRecords {

    private static final Logger LOG = Logger.getLogger(TakeRecords.class);

    private final KafkaReception reception;
    private final AcceptEvents acceptEvents;
    private final KafkaClients clients;
    private @Nullable Producer<byte[], byte[]> producer;

    TakeRecords(KafkaReception reception, AcceptEvents acceptEvents, KafkaClients clients) {
        this.reception = reception;
        this.acceptEvents = acceptEvents;
        this.clients = clients;
    }

    /** The offset of the first record that must be read again, since the service failed; empty when all are settled. */
    // Why a context as of a request: entities learn their tenant inside one only.
    @ActivateRequestContext
    OptionalLong take(Topic topic, List<ConsumerRecord<byte[], byte[]>> records) {
        Actor actor = new Actor(topic.tenant(), topic.sender(), Set.of(Role.SENDER), null);
        List<Receipt> receipts =
                acceptEvents.accept(records.stream().map(reception::attempt).toList(), actor);
        List<ConsumerRecord<byte[], byte[]>> refused = new ArrayList<>();
        List<Future<RecordMetadata>> setAside = new ArrayList<>();
        long failed = Long.MAX_VALUE;
        for (int index = 0; index < receipts.size(); index++) {
            Receipt receipt = receipts.get(index);
            Problem problem = receipt.problem();
            if (receipt.standing() == Standing.FAILED) {
                failed = Math.min(failed, records.get(index).offset());
            } else if (problem != null) {
                refused.add(records.get(index));
                setAside.add(producer().send(deadLetter(topic, records.get(index), problem)));
            }
        }
        for (int index = 0; index < refused.size(); index++) {
            if (!isSent(setAside.get(index))) {
                failed = Math.min(failed, refused.get(index).offset());
            }
        }
        return failed == Long.MAX_VALUE ? OptionalLong.empty() : OptionalLong.of(failed);
    }

    private static ProducerRecord<byte[], byte[]> deadLetter(
            Topic topic, ConsumerRecord<byte[], byte[]> refused, Problem problem) {
        ProducerRecord<byte[], byte[]> letter =
                new ProducerRecord<>(topic.deadLetters(), null, refused.key(), refused.value(), refused.headers());
        letter.headers()
                .add("problem", bytes(Json.text(problem)))
                .add("problem-code", bytes(problem.code()))
                .add("problem-topic", bytes(refused.topic()))
                .add("problem-partition", bytes(Integer.toString(refused.partition())))
                .add("problem-offset", bytes(Long.toString(refused.offset())));
        return letter;
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static boolean isSent(Future<RecordMetadata> sending) {
        try {
            sending.get();
            return true;
        } catch (ExecutionException fault) {
            LOG.error("A record couldn't be set aside; it is read again", fault);
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private synchronized Producer<byte[], byte[]> producer() {
        Producer<byte[], byte[]> made = producer;
        if (made == null) {
            made = clients.producer();
            producer = made;
        }
        return made;
    }

    synchronized void atStop(@Observes ShutdownEvent event) {
        Producer<byte[], byte[]> made = producer;
        if (made != null) {
            try {
                made.close();
            } catch (KafkaException e) {
                LOG.warn("The producer of dead letters didn't close", e);
            }
        }
    }
}
