package org.axlecause.outbound;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toList;
import static org.assertj.core.api.Assertions.assertThat;

import io.cloudevents.CloudEvent;
import io.cloudevents.kafka.CloudEventDeserializer;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.axlecause.access.Actor;
import org.axlecause.access.Role;
import org.axlecause.shared.Await;
import org.axlecause.shared.Broker;
import org.axlecause.shared.KafkaClients;
import org.axlecause.shared.KafkaTopics;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.shared.TestDatabase;
import org.axlecause.shared.WithBroker;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The outbox of a tenant with a topic at a real broker, read by the Java SDK of CloudEvents. */
@QuarkusTest
@TestProfile(WithBroker.class)
class KafkaOutTest {

    private static final Actor DEMO = new Actor("demo", "open", Set.of(Role.ADMIN), null);

    private static Broker broker;

    @Inject
    Outbound outbound;

    @Inject
    PublishEvents publishEvents;

    @Inject
    ManageSubscriptions manage;

    @Inject
    Dispatch dispatch;

    @Inject
    OutboxStore outbox;

    @Inject
    TenantTransaction transaction;

    @Inject
    KafkaTopics topics;

    @Inject
    KafkaClients clients;

    @BeforeAll
    static void startBroker() throws Exception {
        broker = Broker.started();
    }

    @AfterAll
    static void stopBroker() throws Exception {
        broker.close();
    }

    @Test
    void events_come_keyed_by_case_in_their_order_with_the_bytes_of_the_webhooks() {
        String mark = UUID.randomUUID().toString();
        List<OutgoingEvent> announced = announced(mark);

        publish(publishEvents);

        List<ConsumerRecord<String, CloudEvent>> told = read(mark, announced.size());
        assertThat(told).hasSize(announced.size());
        assertThat(idsByCase(told))
                .isEqualTo(announced.stream()
                        .collect(groupingBy(
                                OutgoingEvent::reference,
                                mapping(event -> event.id().toString(), toList()))));
        assertThat(told.get(0).value())
                .returns(Outbound.JUDGED, CloudEvent::getType)
                .returns("/tenants/demo", event -> event.getSource().toString())
                .returns(told.get(0).key(), CloudEvent::getSubject)
                .returns(told.get(0).key(), event -> event.getExtension("partitionkey"));
        assertThat(new String(told.get(0).headers().lastHeader("content-type").value(), StandardCharsets.UTF_8))
                .isEqualTo("application/cloudevents+json; charset=UTF-8");
    }

    @Test
    void replicas_that_publish_at_once_send_each_event_once() throws Exception {
        String mark = UUID.randomUUID().toString();
        int count = announced(mark).size();
        List<PublishEvents> replicas =
                Stream.generate(() -> replica(Clock.systemUTC())).limit(4).toList();

        List<CompletableFuture<Void>> rounds =
                replicas.stream().flatMap(replica -> replica.round().stream()).toList();
        rounds.forEach(CompletableFuture::join);
        stop(replicas);
        publish(publishEvents);
        String last = UUID.randomUUID().toString();
        outbound.announce(DEMO, last);
        publish(publishEvents);

        read(last, 1);
        assertThat(rounds).hasSize(4);
        assertThat(read(mark, count)).hasSize(count);
    }

    @Test
    void a_tenant_without_a_topic_is_told_of_to_nobody() {
        String mark = UUID.randomUUID().toString();
        outbound.announce(outbound.aTenant(), "other-" + mark);
        outbound.announce(DEMO, "demo-" + mark);

        publish(publishEvents);

        assertThat(read(mark, 1)).singleElement().returns("demo-" + mark, ConsumerRecord::key);
    }

    @Test
    void what_a_lost_replica_had_claimed_is_sent_by_another_once_its_claim_has_run_out() throws Exception {
        String mark = UUID.randomUUID().toString();
        List<OutgoingEvent> announced = List.of(outbound.announce(DEMO, mark), outbound.announce(DEMO, mark));
        OffsetDateTime now = OffsetDateTime.now(ZoneOffset.UTC);
        int claimed = transaction.call(
                DEMO.tenant(), () -> outbox.claim(now, now.plusMinutes(1), 500).size());
        PublishEvents another = replica(Clock.systemUTC());
        PublishEvents later = replica(Clock.offset(Clock.systemUTC(), Duration.ofMinutes(2)));

        publish(another);
        boolean untouched = unpublished(mark) == 2;
        publish(later);
        stop(List.of(another, later));

        assertThat(claimed).isPositive();
        assertThat(untouched).isTrue();
        assertThat(read(mark, 2).stream().map(told -> told.value().getId()))
                .containsExactlyElementsOf(
                        announced.stream().map(event -> event.id().toString()).toList());
    }

    @Test
    void a_broker_that_dies_holds_no_connection_and_no_webhook_while_it_is_waited_for() throws Exception {
        String mark = UUID.randomUUID().toString();
        outbound.announce(DEMO, "before-" + mark);
        publish(publishEvents);
        try (Receiver receiver = Receiver.open()) {
            outbound.subscribe(DEMO, receiver.address());
            broker.kill();
            outbound.announce(DEMO, mark);

            List<CompletableFuture<Void>> waiting = publishEvents.round();
            Await.until("the event is claimed", () -> claimed(mark) == 1);
            Await.until("no transaction is open", () -> openTransactions() == 0);
            dispatch.round(false).forEach(CompletableFuture::join);

            assertThat(waiting).singleElement().returns(false, CompletableFuture::isDone);
            assertThat(receiver.messages())
                    .singleElement()
                    .satisfies(message -> assertThat(message.body()).contains(mark));
            waiting.forEach(CompletableFuture::join);
            assertThat(unpublished(mark)).isEqualTo(1);
            assertThat(claimed(mark)).isZero();
        } finally {
            manage.all(DEMO).forEach(made -> manage.remove(made.id(), made.version(), DEMO));
            broker.start();
        }
        publishUntilTaken(mark);

        assertThat(read(mark, 2)).hasSizeGreaterThanOrEqualTo(2);
    }

    @Test
    void what_a_dead_broker_did_not_take_is_sent_when_it_is_back() throws Exception {
        String mark = UUID.randomUUID().toString();
        outbound.announce(DEMO, "before-" + mark);
        publish(publishEvents);
        broker.kill();
        List<OutgoingEvent> announced = announced(mark);

        publish(publishEvents);
        long left = unpublished(mark);
        broker.start();
        publishUntilTaken(mark);

        assertThat(left).isEqualTo(announced.size());
        Map<String, List<String>> told = idsByCase(read(mark, announced.size() + 1));
        announced.stream()
                .collect(groupingBy(
                        OutgoingEvent::reference, mapping(event -> event.id().toString(), toList())))
                .forEach((reference, ids) -> assertThat(new LinkedHashSet<>(told.get(reference)))
                        .as("events of %s, each at least once and first in their order", reference)
                        .containsExactlyElementsOf(ids));
    }

    private static void publish(PublishEvents replica) {
        replica.round().forEach(CompletableFuture::join);
    }

    private void publishUntilTaken(String mark) {
        Await.until("the broker has taken all", () -> {
            publish(publishEvents);
            return unpublished(mark) == 0;
        });
    }

    private PublishEvents replica(Clock clock) {
        return new PublishEvents(topics, outbox, new SendToKafka(clients), transaction, clock);
    }

    private static void stop(List<PublishEvents> replicas) throws InterruptedException {
        for (PublishEvents replica : replicas) {
            replica.atStop(new ShutdownEvent());
        }
    }

    private static long unpublished(String mark) {
        return count("SELECT count(*) FROM outbox WHERE published_at IS NULL AND aggregateid LIKE '%" + mark + "'");
    }

    private static long claimed(String mark) {
        return count("SELECT count(*) FROM outbox WHERE claimed_until IS NOT NULL AND published_at IS NULL"
                + " AND aggregateid LIKE '%" + mark + "'");
    }

    private static long openTransactions() {
        return count("SELECT count(*) FROM pg_stat_activity WHERE usename = 'axlecause_service' AND state <> 'idle'");
    }

    private static long count(String sql) {
        try (Connection connection = TestDatabase.superuser();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getLong(1);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Thirty events of five cases, in turn. */
    private List<OutgoingEvent> announced(String mark) {
        return IntStream.range(0, 30)
                .mapToObj(number -> outbound.announce(DEMO, "case-" + number % 5 + "-" + mark))
                .toList();
    }

    private static Map<String, List<String>> idsByCase(List<ConsumerRecord<String, CloudEvent>> records) {
        return records.stream()
                .collect(groupingBy(
                        ConsumerRecord::key, mapping(record -> record.value().getId(), toList())));
    }

    /** All records whose key holds the mark, once there are that many and no more come for a while. */
    private static List<ConsumerRecord<String, CloudEvent>> read(String mark, int count) {
        List<ConsumerRecord<String, CloudEvent>> found = new ArrayList<>();
        try (KafkaConsumer<String, CloudEvent> consumer = new KafkaConsumer<>(
                Map.<String, Object>of(
                        "bootstrap.servers",
                        Broker.address(),
                        "group.id",
                        UUID.randomUUID().toString(),
                        "auto.offset.reset",
                        "earliest"),
                new StringDeserializer(),
                new CloudEventDeserializer())) {
            consumer.subscribe(List.of(WithBroker.OUT));
            Await.until(count + " records of " + mark, () -> {
                var records = consumer.poll(Duration.ofSeconds(2));
                records.forEach(record -> {
                    if (record.key().contains(mark)) {
                        found.add(record);
                    }
                });
                return records.isEmpty() && found.size() >= count;
            });
        }
        return found;
    }
}
