package org.axlecause;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toList;
import static java.util.stream.Collectors.toSet;
import static org.assertj.core.api.Assertions.assertThat;

import io.cloudevents.CloudEvent;
import io.cloudevents.kafka.CloudEventDeserializer;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.axlecause.shared.Await;
import org.axlecause.shared.Broker;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two replicas of the packaged service on one database and one broker, with events in over HTTP and Kafka, while replicas
 * or the broker are killed. What was acknowledged is compared with what is stored and with what a consumer of the topic
 * of events out is told: nothing lost, no effect doubled, each case in its order.
 */
class KafkaDurabilityIT {

    private static final Logger CLIENTS = Logger.getLogger("org.apache.kafka");
    private static final String IN = "demo.events";
    private static final String OUT = "demo.told";
    private static final int PARTITIONS = 4;
    private static final Duration BETWEEN_KILLS = Duration.ofSeconds(10);

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    private Path folder;

    private Installation installation;
    private Broker broker;

    @BeforeAll
    static void the_clients_of_the_test_say_nothing_of_a_broker_that_is_away() {
        CLIENTS.setLevel(Level.SEVERE);
    }

    @BeforeEach
    void a_database_and_a_broker_stand_alone() throws Exception {
        installation = new Installation(folder);
        broker = Broker.started();
        try (Admin admin = Admin.create(Map.of("bootstrap.servers", Broker.address()))) {
            admin.createTopics(Stream.of(IN, IN + ".dead-letter", OUT)
                            .map(name -> new NewTopic(name, PARTITIONS, (short) 1))
                            .toList())
                    .all()
                    .get();
        }
    }

    @AfterEach
    void they_end() throws IOException {
        broker.close();
        installation.close();
    }

    @Test
    void two_kills_of_replicas_lose_and_double_nothing_and_keep_the_order_of_each_case() throws Exception {
        replicasAreKilled(BETWEEN_KILLS.multipliedBy(2));
    }

    @Test
    @Tag("durability")
    void five_minutes_of_kills_of_replicas_lose_and_double_nothing_and_keep_the_order_of_each_case() throws Exception {
        replicasAreKilled(Duration.ofMinutes(5));
    }

    @Test
    void a_kill_of_the_broker_and_a_rebalance_lose_and_double_nothing_and_the_lag_drains() throws Exception {
        theBrokerIsKilled(Duration.ZERO);
    }

    @Test
    @Tag("durability")
    void five_minutes_of_kills_of_the_broker_and_rebalances_lose_and_double_nothing_and_the_lag_drains()
            throws Exception {
        theBrokerIsKilled(Duration.ofMinutes(5));
    }

    /** Kills one replica every ten seconds, the one that has been back the longest; none waits for the one before. */
    private void replicasAreKilled(Duration time) throws Exception {
        ExecutorService restarts = Executors.newCachedThreadPool();
        try (PackagedService one = started();
                PackagedService other = started();
                CaseLoad load = new CaseLoad(List.of(one, other), Broker.address(), IN)) {
            BlockingQueue<PackagedService> back = new LinkedBlockingQueue<>(List.of(one, other));
            List<Future<Boolean>> begun = new ArrayList<>();
            long began = System.nanoTime();
            for (Duration due = BETWEEN_KILLS; due.compareTo(time) <= 0; due = due.plus(BETWEEN_KILLS)) {
                TimeUnit.MILLISECONDS.sleep(due.minus(since(began)).toMillis());
                PackagedService killed = back.poll(5, TimeUnit.MINUTES);
                assertThat(killed).as("a replica that is back").isNotNull();
                killed.process().destroyForcibly().waitFor();
                begun.add(restarts.submit(() -> back.add(killed.start())));
            }
            System.out.printf(
                    "%d kills of replicas in %d s%n", begun.size(), since(began).toSeconds());
            for (Future<Boolean> restart : begun) {
                restart.get();
            }
            awaitMoreOverKafka();

            nothingIsLostDoubledOrReordered(load);
        } finally {
            restarts.shutdown();
        }
    }

    private static Duration since(long began) {
        return Duration.ofNanos(System.nanoTime() - began);
    }

    /** Kills the broker again and again while records are read, and every other time a replica beside it. */
    private void theBrokerIsKilled(Duration time) throws Exception {
        try (PackagedService one = started();
                PackagedService other = started();
                CaseLoad load = new CaseLoad(List.of(one, other), Broker.address(), IN)) {
            long began = System.nanoTime();
            int kills = 0;
            do {
                awaitMoreOverKafka();
                broker.kill();
                broker.start();
                awaitMoreOverKafka();
                if (kills % 2 == 0) {
                    PackagedService killed = kills % 4 == 0 ? one : other;
                    killed.process().destroyForcibly().waitFor();
                    killed.start();
                }
                kills++;
            } while (since(began).compareTo(time) < 0);

            System.out.printf(
                    "%d kills of the broker and %d of replicas in %d s%n",
                    kills, (kills + 1) / 2, since(began).toSeconds());
            nothingIsLostDoubledOrReordered(load);
        }
    }

    private void nothingIsLostDoubledOrReordered(CaseLoad load) throws Exception {
        load.stop();
        Map<String, List<String>> ledger = load.ledger();
        int sent = ledger.values().stream().mapToInt(List::size).sum();
        int behind = sent - storedEvents("");
        long began = System.nanoTime();
        while (storedEvents("") < sent) {
            int before = storedEvents("");
            Await.until("more is stored", () -> storedEvents("") > before || before >= sent);
        }
        Await.until("the lag has drained", () -> lag() == 0);
        Await.until(
                "everything is announced",
                () -> texts("SELECT id FROM outbox WHERE tenant_id = 'demo' AND published_at IS NULL LIMIT 1")
                        .isEmpty());
        List<Told> told = told();
        Map<String, Told> once = new LinkedHashMap<>();
        told.forEach(one -> once.putIfAbsent(one.id(), one));
        System.out.printf(
                "%d events of %d cases acknowledged, attempts %s; %d behind at the end of sending, drained in %d s;"
                        + " %d records out, %d of them again%n",
                sent,
                ledger.size(),
                load.attempts(),
                behind,
                since(began).toSeconds(),
                told.size(),
                told.size() - once.size());

        assertThat(load.wrong()).isEmpty();
        assertThat(grouped("SELECT reference || ' ' || id FROM event WHERE tenant_id = 'demo' ORDER BY position"))
                .as("stored events of each case, in their order")
                .isEqualTo(ledger);
        installation.nothingIsLostOrDoubled(
                ledger.values().stream().flatMap(List::stream).collect(toSet()));
        assertThat(ofEachCase(once, Told::id))
                .as("events out of each case, in their order")
                .isEqualTo(grouped(
                        "SELECT aggregateid || ' ' || id FROM outbox WHERE tenant_id = 'demo' ORDER BY position"));
        everyJudgedVersionIsToldOf(ofEachCase(once, one -> String.valueOf(one.version())), ledger);
        assertThat(ends(IN + ".dead-letter"))
                .allSatisfy((partition, end) -> assertThat(end).isZero());
    }

    /** Over HTTP each event is judged by itself; over Kafka those that were read together are judged together. */
    private static void everyJudgedVersionIsToldOf(
            Map<String, List<String>> versions, Map<String, List<String>> ledger) {
        assertThat(versions.keySet()).isEqualTo(ledger.keySet());
        ledger.forEach((reference, ids) -> {
            List<Integer> told =
                    versions.get(reference).stream().map(Integer::valueOf).toList();
            assertThat(told).as(reference).isSorted().doesNotHaveDuplicates();
            assertThat(told.get(told.size() - 1)).as(reference).isEqualTo(ids.size());
            if (reference.startsWith(CaseLoad.OVER_HTTP)) {
                assertThat(told)
                        .as(reference)
                        .isEqualTo(IntStream.rangeClosed(1, ids.size()).boxed().toList());
            }
        });
    }

    private PackagedService started() throws Exception {
        PackagedService replica = installation
                .replica()
                .with("KAFKA_BOOTSTRAP_SERVERS", Broker.address())
                .with("AXLECAUSE_KAFKA_IN", IN + "=demo:workshops")
                .with("AXLECAUSE_KAFKA_OUT", OUT + "=demo")
                .start();
        replica.putSite();
        return replica;
    }

    private void awaitMoreOverKafka() {
        int before = storedEvents(CaseLoad.OVER_KAFKA);
        Await.until("more records are stored", () -> storedEvents(CaseLoad.OVER_KAFKA) >= before + 100);
    }

    private int storedEvents(String prefix) {
        return Integer.parseInt(
                texts("SELECT count(*) FROM event WHERE tenant_id = 'demo' AND reference LIKE '" + prefix + "%'")
                        .get(0));
    }

    private List<String> texts(String sql) {
        try {
            return installation.texts(sql);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Rows of a reference and an id, by reference. */
    private Map<String, List<String>> grouped(String sql) {
        return texts(sql).stream()
                .map(row -> row.split(" ", 2))
                .collect(groupingBy(row -> row[0], TreeMap::new, mapping(row -> row[1], toList())));
    }

    private static Map<String, List<String>> ofEachCase(Map<String, Told> once, Function<Told, String> part) {
        return once.values().stream().collect(groupingBy(Told::reference, TreeMap::new, mapping(part, toList())));
    }

    /** An event out, as a consumer of its topic gets it. */
    private record Told(String reference, String id, int version) {

        static Told of(String key, CloudEvent event) {
            try {
                return new Told(
                        key,
                        event.getId(),
                        Json.mapper()
                                .readTree(event.getData().toBytes())
                                .path("version")
                                .asInt());
            } catch (IOException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    private static List<Told> told() {
        List<Told> told = new ArrayList<>();
        try (KafkaConsumer<String, CloudEvent> consumer = new KafkaConsumer<>(
                Map.<String, Object>of("bootstrap.servers", Broker.address()),
                new StringDeserializer(),
                new CloudEventDeserializer())) {
            Map<TopicPartition, Long> ends = consumer.endOffsets(partitions(OUT));
            consumer.assign(ends.keySet());
            consumer.seekToBeginning(ends.keySet());
            while (ends.entrySet().stream().anyMatch(end -> consumer.position(end.getKey()) < end.getValue())) {
                consumer.poll(Duration.ofSeconds(1)).forEach(one -> told.add(Told.of(one.key(), one.value())));
            }
        }
        return told;
    }

    /** How many records of the topic the group hasn't committed yet. */
    private static long lag() {
        try (Admin admin = Admin.create(Map.of("bootstrap.servers", Broker.address()))) {
            var committed = admin.listConsumerGroupOffsets("axlecause")
                    .partitionsToOffsetAndMetadata()
                    .get();
            return ends(IN).entrySet().stream()
                    .mapToLong(end -> end.getValue()
                            - (committed.get(end.getKey()) == null
                                    ? 0
                                    : committed.get(end.getKey()).offset()))
                    .sum();
        } catch (ExecutionException | InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Map<TopicPartition, Long> ends(String topic) {
        try (KafkaConsumer<String, String> consumer = new KafkaConsumer<>(
                Map.<String, Object>of("bootstrap.servers", Broker.address()),
                new StringDeserializer(),
                new StringDeserializer())) {
            return consumer.endOffsets(partitions(topic));
        }
    }

    private static List<TopicPartition> partitions(String topic) {
        return IntStream.range(0, PARTITIONS)
                .mapToObj(number -> new TopicPartition(topic, number))
                .toList();
    }
}
