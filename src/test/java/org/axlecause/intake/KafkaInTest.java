package org.axlecause.intake;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.intake.Messages.STRUCTURED;
import static org.axlecause.intake.Messages.aFinding;
import static org.axlecause.intake.Messages.aPresentation;
import static org.axlecause.intake.Messages.aReference;
import static org.axlecause.intake.Messages.anId;
import static org.axlecause.intake.Messages.anImpossibleTest;
import static org.axlecause.intake.Messages.post;

import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.cloudevents.CloudEvent;
import io.cloudevents.core.message.Encoding;
import io.cloudevents.core.provider.EventFormatProvider;
import io.cloudevents.jackson.JsonFormat;
import io.cloudevents.kafka.CloudEventSerializer;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.header.Header;
import org.apache.kafka.common.header.Headers;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.axlecause.access.SiteStore;
import org.axlecause.shared.Await;
import org.axlecause.shared.Broker;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.shared.TestDatabase;
import org.axlecause.shared.WithBroker;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Events over a real broker, sent by the Java SDK of CloudEvents. */
@QuarkusTest
@TestProfile(WithBroker.class)
class KafkaInTest {

    private static Broker broker;

    @Inject
    TenantTransaction transaction;

    @Inject
    SiteStore sites;

    @Inject
    MeterRegistry registry;

    @BeforeAll
    static void startBroker() throws Exception {
        broker = Broker.started();
    }

    @AfterAll
    static void stopBroker() throws Exception {
        broker.close();
    }

    @BeforeEach
    void makeSites() {
        Messages.makeSites(transaction, sites);
    }

    @Test
    void events_are_read_in_both_content_modes_and_judged() {
        String reference = aReference();

        send(Encoding.STRUCTURED, aPresentation(reference, anId()));
        send(Encoding.BINARY, aFinding(reference, anId()));

        awaitEvents(reference, 2);
        assertThat(given().get("/v1/cases/" + reference + "/events").jsonPath().getList("events.actor"))
                .containsExactly("workshops", "workshops");
        assertThat(given().get("/v1/cases/" + reference).jsonPath().getInt("version"))
                .isEqualTo(2);
        assertThat(given().get("/v1/cases/" + reference).jsonPath().getString("site"))
                .isEqualTo("quay-street");
    }

    @Test
    void what_comes_again_over_kafka_or_http_is_stored_once() {
        String reference = aReference();
        String event = aFinding(reference, anId());

        send(Encoding.BINARY, event);
        send(Encoding.STRUCTURED, event);
        send(Encoding.STRUCTURED, aPresentation(reference, anId()));
        awaitEvents(reference, 2);

        assertThat(post(STRUCTURED, event).jsonPath().getString("standing")).isEqualTo("duplicate");
        assertThat(ids(reference)).hasSize(2);
    }

    @Test
    void what_cannot_be_accepted_is_set_aside_with_its_problem_and_holds_up_nothing() {
        String reference = aReference();
        String conflicting = anId();
        send(Encoding.BINARY, aFinding(reference, conflicting));

        sendBytes(reference, "no json", Map.of("content-type", STRUCTURED));
        sendBytes(reference, "[]", Map.of("content-type", "application/cloudevents-batch+json"));
        sendBytes(reference, "{}", Map.of("content-type", "application/cloudevents+avro"));
        sendBytes(reference, "{}", Map.of("content-type", "application/json", "ce_id", "x"));
        sendBytes(reference, null, Map.of("content-type", STRUCTURED));
        sendBytes(reference, anImpossibleTest(reference, anId()), Map.of("content-type", STRUCTURED));
        sendBytes(
                reference,
                aFinding(reference, conflicting).replace("leaking", "sound"),
                Map.of("content-type", STRUCTURED));
        send(Encoding.BINARY, aPresentation(reference, anId()));
        awaitEvents(reference, 2);

        List<ConsumerRecord<String, String>> letters = read(WithBroker.IN + ".dead-letter", reference, 7);
        assertThat(letters.stream().map(letter -> header(letter.headers(), "problem-code")))
                .containsExactly(
                        "malformed-request",
                        "unsupported-format",
                        "unsupported-format",
                        "invalid-envelope",
                        "malformed-request",
                        "invalid-payload",
                        "identity-conflict");
        assertThat(letters.get(0).value()).isEqualTo("no json");
        Headers headers = letters.get(0).headers();
        assertThat(header(headers, "content-type")).isEqualTo(STRUCTURED);
        assertThat(header(headers, "problem-topic")).isEqualTo(WithBroker.IN);
        assertThat(header(headers, "problem")).contains("\"status\":400");
        assertThat(Arrays.stream(headers.toArray()).map(Header::key).filter(name -> name.startsWith("problem")))
                .containsExactlyInAnyOrderElementsOf(headersOfTheContract());
        assertThat(letters.get(4).value()).isNull();
    }

    @Test
    void what_the_service_cannot_store_just_now_is_read_again_and_nothing_of_it_is_lost() throws SQLException {
        String reference = "FAIL-" + aReference();
        List<String> sent = IntStream.range(0, 5).mapToObj(number -> anId()).toList();
        execute(
                "CREATE SEQUENCE tries",
                "CREATE FUNCTION fail_on_purpose() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER AS $$ BEGIN"
                        + " PERFORM nextval('public.tries'); RAISE EXCEPTION 'disk full' USING ERRCODE = '53100';"
                        + " END $$",
                "CREATE TRIGGER fail_on_purpose BEFORE INSERT ON event FOR EACH ROW WHEN (NEW.reference LIKE 'FAIL-%')"
                        + " EXECUTE FUNCTION fail_on_purpose()");
        try {
            sent.forEach(id -> send(Encoding.BINARY, aFinding(reference, id)));
            String other = aReference();
            send(Encoding.BINARY, aFinding(other, anId()));

            Await.until("storing was tried and failed more than once", () -> tries() > 2);
            awaitEvents(other, 1);
            assertThat(ids(reference)).isEmpty();
            Await.until("what failed counts as waiting", () -> waiting() >= 5);
        } finally {
            execute("DROP TRIGGER fail_on_purpose ON event", "DROP FUNCTION fail_on_purpose", "DROP SEQUENCE tries");
        }

        awaitEvents(reference, 5);
        assertThat(ids(reference)).isEqualTo(sent);
        Await.until("nothing waits any more", () -> waiting() == 0);
    }

    @Test
    void the_events_of_each_case_keep_their_order() {
        long seed = 20260302L;
        System.out.println("seed of the order of sending: " + seed);
        Map<String, List<String>> sent = new TreeMap<>();
        List<String> turns = new ArrayList<>();
        for (int number = 0; number < 20; number++) {
            String reference = aReference();
            sent.put(reference, new ArrayList<>());
            turns.addAll(Collections.nCopies(10, reference));
        }
        Collections.shuffle(turns, new Random(seed));
        List<Future<RecordMetadata>> sending = new ArrayList<>();

        try (KafkaProducer<String, CloudEvent> producer = producer(Encoding.BINARY)) {
            for (String reference : turns) {
                String id = anId();
                Objects.requireNonNull(sent.get(reference)).add(id);
                sending.add(
                        producer.send(new ProducerRecord<>(WithBroker.IN, reference, event(aFinding(reference, id)))));
            }
        }

        sending.forEach(KafkaInTest::acknowledged);
        sent.forEach((reference, ids) -> {
            awaitEvents(reference, ids.size());
            assertThat(ids(reference)).isEqualTo(ids);
        });
    }

    private double waiting() {
        return registry.get("axlecause.kafka.waiting").gauge().value();
    }

    private static void awaitEvents(String reference, int count) {
        Await.until(
                count + " events of " + reference + " are stored",
                () -> ids(reference).size() == count);
    }

    /** Ids of the stored events in the order of their arrival. */
    private static List<String> ids(String reference) {
        Response answer = given().queryParam("limit", 200).get("/v1/cases/" + reference + "/events");
        if (answer.statusCode() != 200) {
            return List.of();
        }
        List<String> ids = new ArrayList<>(answer.jsonPath().getList("events.event.id", String.class));
        Collections.reverse(ids);
        return ids;
    }

    private static void send(Encoding encoding, String json) {
        CloudEvent event = event(json);
        try (KafkaProducer<String, CloudEvent> producer = producer(encoding)) {
            acknowledged(producer.send(new ProducerRecord<>(WithBroker.IN, event.getSubject(), event)));
        }
    }

    private static CloudEvent event(String json) {
        return EventFormatProvider.getInstance()
                .resolveFormat(JsonFormat.CONTENT_TYPE)
                .deserialize(json.getBytes(StandardCharsets.UTF_8));
    }

    private static KafkaProducer<String, CloudEvent> producer(Encoding encoding) {
        Map<String, Object> settings = Map.of(
                "bootstrap.servers",
                Broker.address(),
                CloudEventSerializer.ENCODING_CONFIG,
                encoding,
                CloudEventSerializer.EVENT_FORMAT_CONFIG,
                JsonFormat.CONTENT_TYPE);
        CloudEventSerializer serializer = new CloudEventSerializer();
        serializer.configure(settings, false);
        return new KafkaProducer<>(Map.of("bootstrap.servers", Broker.address()), new StringSerializer(), serializer);
    }

    private static void sendBytes(String key, String value, Map<String, String> headers) {
        try (KafkaProducer<String, byte[]> producer = new KafkaProducer<>(
                Map.<String, Object>of("bootstrap.servers", Broker.address()),
                new StringSerializer(),
                new ByteArraySerializer())) {
            ProducerRecord<String, byte[]> record = new ProducerRecord<>(
                    WithBroker.IN, key, value == null ? null : value.getBytes(StandardCharsets.UTF_8));
            headers.forEach((name, text) -> record.headers().add(name, text.getBytes(StandardCharsets.UTF_8)));
            acknowledged(producer.send(record));
        }
    }

    private static void acknowledged(Future<RecordMetadata> sending) {
        try {
            sending.get();
        } catch (ExecutionException | InterruptedException e) {
            throw new IllegalStateException("the broker didn't take a record", e);
        }
    }

    private static List<ConsumerRecord<String, String>> read(String topic, String key, int count) {
        List<ConsumerRecord<String, String>> found = new ArrayList<>();
        try (KafkaConsumer<String, String> consumer = new KafkaConsumer<>(
                Map.<String, Object>of(
                        "bootstrap.servers", Broker.address(), "group.id", anId(), "auto.offset.reset", "earliest"),
                new StringDeserializer(),
                new StringDeserializer())) {
            consumer.subscribe(List.of(topic));
            Await.until(count + " records of " + key + " in " + topic, () -> {
                consumer.poll(Duration.ofSeconds(1)).forEach(record -> {
                    if (key.equals(record.key())) {
                        found.add(record);
                    }
                });
                return found.size() >= count;
            });
        }
        return found;
    }

    private static List<String> headersOfTheContract() {
        try {
            return new YAMLMapper()
                            .readTree(Path.of("openapi", "events.yaml").toFile())
                            .at("/channels/deadLetters/messages/deadLetter/headers/properties")
                            .properties()
                            .stream()
                            .map(Map.Entry::getKey)
                            .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String header(Headers headers, String name) {
        return new String(headers.lastHeader(name).value(), StandardCharsets.UTF_8);
    }

    private static long tries() {
        try (Connection connection = TestDatabase.superuser();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT last_value FROM tries")) {
            row.next();
            return row.getLong(1);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void execute(String... statements) throws SQLException {
        try (Connection connection = TestDatabase.superuser();
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }
}
