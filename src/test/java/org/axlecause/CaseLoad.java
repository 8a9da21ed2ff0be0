package org.axlecause;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringSerializer;

/**
 * Workshops that tell their cases event by event, some over HTTP and some over Kafka. Each sends an event until it is
 * acknowledged and only then the next of its case, so that the ledger says what must be stored, once and in which order.
 */
final class CaseLoad implements AutoCloseable {

    static final String OVER_HTTP = "HTTP-";
    static final String OVER_KAFKA = "KAFKA-";

    private static final int EVENTS_OF_A_CASE = 10;
    private static final int SENDERS_OVER_HTTP = 8;
    private static final int CASES_AT_ONCE_OVER_KAFKA = 10;
    private static final int PAUSE_MILLIS = 100;

    private final List<PackagedService> replicas;
    private final String broker;
    private final String topic;
    private final ExecutorService senders = Executors.newFixedThreadPool(SENDERS_OVER_HTTP + 1);
    private final Map<String, List<String>> ledger = new ConcurrentHashMap<>();
    private final Map<String, AtomicInteger> attempts = new ConcurrentHashMap<>();
    private final Set<String> wrong = new ConcurrentSkipListSet<>();
    private volatile boolean going = true;

    CaseLoad(List<PackagedService> replicas, String broker, String topic) {
        this.replicas = List.copyOf(replicas);
        this.broker = broker;
        this.topic = topic;
        for (int sender = 0; sender < SENDERS_OVER_HTTP; sender++) {
            int own = sender;
            senders.execute(() -> tellOverHttp(own));
        }
        senders.execute(this::tellOverKafka);
    }

    private void tellOverHttp(int sender) {
        for (int number = 0; going; number++) {
            String reference = OVER_HTTP + sender + "-" + number;
            for (int event = 0; event < EVENTS_OF_A_CASE && going; event++) {
                if (!sentOverHttp(reference, event)) {
                    return;
                }
                acknowledged(reference, event);
                pause();
            }
        }
    }

    /** Sends to one replica after the other until one acknowledges; whether one did. */
    private boolean sentOverHttp(String reference, int event) {
        for (int turn = event; !Thread.currentThread().isInterrupted(); turn++) {
            try {
                HttpResponse<String> answer =
                        replicas.get(turn % replicas.size()).take(event(reference, event));
                count(String.valueOf(answer.statusCode()));
                if (answer.statusCode() == 200) {
                    return true;
                }
                if (answer.statusCode() != 503
                        || answer.headers().firstValue("Retry-After").isEmpty()) {
                    wrong.add(answer.statusCode() + " " + answer.body());
                }
            } catch (IOException cutOff) {
                count("cut off");
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
            }
            pause();
        }
        return false;
    }

    private void tellOverKafka() {
        try (KafkaProducer<String, byte[]> producer = new KafkaProducer<>(
                Map.<String, Object>of("bootstrap.servers", broker),
                new StringSerializer(),
                new ByteArraySerializer())) {
            for (int round = 0; going; round++) {
                String prefix = OVER_KAFKA + round + "-";
                List<String> references = IntStream.range(0, CASES_AT_ONCE_OVER_KAFKA)
                        .mapToObj(number -> prefix + number)
                        .toList();
                for (int event = 0; event < EVENTS_OF_A_CASE && going; event++) {
                    sendOverKafka(producer, references, event);
                    pause();
                }
            }
        }
    }

    /** Sends one event of each case until the broker has acknowledged them all. */
    private void sendOverKafka(KafkaProducer<String, byte[]> producer, List<String> references, int event) {
        List<String> left = references;
        while (!left.isEmpty() && !Thread.currentThread().isInterrupted()) {
            List<Future<RecordMetadata>> sending = new ArrayList<>();
            left.forEach(reference -> sending.add(producer.send(message(reference, event))));
            List<String> refused = new ArrayList<>();
            for (int index = 0; index < left.size(); index++) {
                if (isTaken(sending.get(index))) {
                    acknowledged(left.get(index), event);
                } else {
                    refused.add(left.get(index));
                }
            }
            left = refused;
        }
    }

    private ProducerRecord<String, byte[]> message(String reference, int event) {
        ProducerRecord<String, byte[]> message =
                new ProducerRecord<>(topic, reference, event(reference, event).getBytes(StandardCharsets.UTF_8));
        message.headers().add("content-type", "application/cloudevents+json".getBytes(StandardCharsets.UTF_8));
        return message;
    }

    private boolean isTaken(Future<RecordMetadata> sending) {
        try {
            sending.get();
            count("records");
            return true;
        } catch (ExecutionException fault) {
            count("records refused");
            return false;
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private static String event(String reference, int number) {
        return number == 0
                ? Load.presented(reference, id(reference, number))
                : Load.found(reference, id(reference, number), number, number % 2 == 0 ? "worn" : "glazed");
    }

    private static String id(String reference, int number) {
        return reference + "-event-" + number;
    }

    private void acknowledged(String reference, int event) {
        ledger.computeIfAbsent(reference, present -> new ArrayList<>()).add(id(reference, event));
    }

    private void count(String outcome) {
        attempts.computeIfAbsent(outcome, present -> new AtomicInteger()).incrementAndGet();
    }

    private static void pause() {
        try {
            TimeUnit.MILLISECONDS.sleep(PAUSE_MILLIS);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    /** Sends nothing new; what is being sent is sent until it is acknowledged. */
    void stop() throws InterruptedException {
        going = false;
        senders.shutdown();
        if (!senders.awaitTermination(3, TimeUnit.MINUTES)) {
            throw new IllegalStateException("What was being sent was not acknowledged: " + attempts);
        }
    }

    /** Ids of the acknowledged events of each case in the order of sending; complete once stopped. */
    Map<String, List<String>> ledger() {
        return new TreeMap<>(ledger);
    }

    /** How often each outcome of sending came. */
    Map<String, AtomicInteger> attempts() {
        return new TreeMap<>(attempts);
    }

    /** Answers that are neither an acknowledgement nor 503 with Retry-After. */
    Set<String> wrong() {
        return Set.copyOf(wrong);
    }

    @Override
    public void close() {
        going = false;
        senders.shutdownNow();
    }
}
