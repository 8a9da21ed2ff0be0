package org.axlecause.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.intake.Messages.BATCH;
import static org.axlecause.intake.Messages.STRUCTURED;
import static org.axlecause.intake.Messages.aFinding;
import static org.axlecause.intake.Messages.aReference;
import static org.axlecause.intake.Messages.anId;
import static org.axlecause.intake.Messages.batch;
import static org.axlecause.intake.Messages.post;
import static org.axlecause.intake.Messages.request;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.cloudevents.CloudEvent;
import io.cloudevents.core.builder.CloudEventBuilder;
import io.cloudevents.core.message.MessageWriter;
import io.cloudevents.http.HttpMessageFactory;
import io.cloudevents.jackson.JsonFormat;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.UnaryOperator;
import org.axlecause.access.SiteStore;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * CloudEvents 1.0.2, its JSON format and its HTTP binding, with the Java SDK of the CloudEvents project as the sender.
 * What needs no wire is in {@link ReceptionTest}, a hundred sends of one event at once in {@link EventsApiTest}.
 */
@QuarkusTest
class CloudEventsConformanceTest {

    private static final String DATA =
            "{\"stage\":\"as-found\",\"component\":\"hub-seal\",\"condition\":\"leaking\",\"axle\":2,\"side\":\"right\"}";
    private static final String NO_VALUE = "";

    @Inject
    TenantTransaction transaction;

    @Inject
    SiteStore sites;

    private final String reference = aReference();

    @BeforeEach
    void the_sites_exist() {
        Messages.makeSites(transaction, sites);
    }

    /** HTTP binding, 3.1 and 3.2: the same event in binary and in structured mode is one event. */
    @Test
    void an_event_of_the_sdk_is_the_same_in_binary_and_in_structured_mode() {
        CloudEvent event = anEvent(with -> with.withExtension("comexampleextension", "value"));

        assertThat(sent(event, true).path("standing").asText()).isEqualTo("accepted");
        assertThat(sent(event, false).path("standing").asText()).isEqualTo("duplicate");
        assertThat(stored().path(0).path("event").path("comexampleextension").asText())
                .isEqualTo("value");
    }

    /** Core, 3.1: id, source, specversion and type are required and never empty. */
    @ParameterizedTest
    @ValueSource(strings = {"id", "source", "specversion", "type"})
    void a_required_attribute_that_is_missing_or_empty_is_named(String attribute) throws IOException {
        ObjectNode event = (ObjectNode) Json.mapper().readTree(aFinding(reference, anId()));
        Response missing = post(STRUCTURED, event.deepCopy().without(attribute).toString());
        Response empty =
                post(STRUCTURED, event.deepCopy().put(attribute, NO_VALUE).toString());
        Response noHeader = binary(Map.of(attribute, NO_VALUE)).post("/v1/events");

        for (Response answer : List.of(missing, empty, noHeader)) {
            assertThat(answer.statusCode()).isEqualTo(400);
            assertThat(answer.jsonPath().getList("causes.pointer", String.class))
                    .contains("/" + attribute);
        }
    }

    /** Core, 3.1: names are small letters and digits, more than 20 are only advised against; extensions are kept. */
    @Test
    void an_extension_of_any_length_is_kept_and_given_back() {
        CloudEvent event = anEvent(
                with -> with.withExtension("averyveryverylongextensionname", 7).withExtension("urgent", true));

        sent(event, true);

        JsonNode kept = stored().path(0).path("event");
        assertThat(kept.path("averyveryverylongextensionname").asText()).isEqualTo("7");
        assertThat(kept.path("urgent").asText()).isEqualTo("true");
    }

    /** HTTP binding, 3: the content type chooses the mode, in any case; batch before structured; others are not read. */
    @ParameterizedTest
    @CsvSource({
        "application/cloudevents+json, 200",
        "APPLICATION/CloudEvents+JSON; charset=UTF-8, 200",
        "application/cloudevents+avro, 415",
        "application/cloudevents+xml, 415",
        "application/cloudevents-batch+json, 400"
    })
    void the_content_type_chooses_the_mode(String contentType, int status) {
        assertThat(post(contentType, aFinding(reference, anId())).statusCode()).isEqualTo(status);
    }

    /** HTTP binding, 3.1.3.2, with its own example: Euro sign and smiling face in percent-encoding. */
    @Test
    void a_header_value_in_percent_encoding_is_decoded_once() {
        binary(Map.of("remark", "Euro%20%E2%82%AC%20%F0%9F%98%80", "quoted", "\"a%20%22b%22 %2525\""))
                .post("/v1/events")
                .then()
                .statusCode(200);

        JsonNode kept = stored().path(0).path("event");
        assertThat(kept.path("remark").asText()).isEqualTo("Euro € 😀");
        assertThat(kept.path("quoted").asText()).isEqualTo("a \"b\" %25");
        assertThat(binary(Map.of("remark", "%C0%A0")).post("/v1/events").statusCode())
                .isEqualTo(400);
        assertThat(binary(Map.of("datacontenttype", "application/json"))
                        .post("/v1/events")
                        .statusCode())
                .isEqualTo(400);
    }

    /** JSON format, 2.2, 2.4 and 3.1: null is absent, data and data_base64 exclude each other, base64 is decoded. */
    @Test
    void null_members_are_absent_and_data_comes_in_one_of_two_forms() throws IOException {
        ObjectNode event = (ObjectNode) Json.mapper().readTree(aFinding(reference, anId()));
        ObjectNode encoded = event.deepCopy();
        encoded.remove("data");
        encoded.put("data_base64", DATA.getBytes(StandardCharsets.UTF_8)).putNull("traceparent");

        assertThat(post(STRUCTURED, encoded.toString()).statusCode()).isEqualTo(200);
        assertThat(post(STRUCTURED, event.toString()).jsonPath().getString("standing"))
                .isEqualTo("duplicate");
        assertThat(stored().path(0).path("event").has("traceparent")).isFalse();
        assertThat(post(
                                STRUCTURED,
                                encoded.deepCopy()
                                        .set("data", event.get("data"))
                                        .toString())
                        .statusCode())
                .isEqualTo(400);
        assertThat(post(STRUCTURED, event.deepCopy().put("data", DATA).toString())
                        .statusCode())
                .as("a text under a JSON content type stays a text")
                .isEqualTo(422);
    }

    /** JSON format, 4: a batch is an array, may be empty, and a bad event in it sinks no other. */
    @Test
    void a_batch_of_the_sdks_events_is_taken_one_by_one() {
        String first = json(anEvent(with -> with));
        String second = json(anEvent(with -> with));

        Response answer = post(BATCH, batch(first, second.replace("\"1.0\"", "\"0.3\""), first));

        assertThat(answer.statusCode()).isEqualTo(207);
        assertThat(answer.jsonPath().getList("standing", String.class))
                .containsExactly("accepted", "refused", "duplicate");
        assertThat(post(BATCH, "[]").statusCode()).isEqualTo(200);
    }

    /** Core, 5: an event of 64 KiB must be taken. */
    @Test
    void an_event_of_exactly_64_kibibytes_is_taken() {
        String event = aFinding(reference, anId());
        String padded = event + " ".repeat(65_536 - event.length());

        assertThat(padded.getBytes(StandardCharsets.UTF_8)).hasSize(65_536);
        assertThat(post(STRUCTURED, padded).statusCode()).isEqualTo(200);
    }

    /** Extensions for partitioning, sequence, recorded time and distributed tracing: kept as they were sent. */
    @Test
    void the_documented_extensions_are_kept_and_change_no_identity() {
        CloudEvent event = anEvent(with -> with.withExtension("partitionkey", "lane-1")
                .withExtension("sequence", "0001")
                .withExtension("recordedtime", "2026-03-02T08:16:00Z")
                .withExtension("traceparent", "00-4bf92f3577b34da6a3ce929d0e0e4736-00f067aa0ba902b7-01"));
        sent(event, false);

        CloudEvent again = CloudEventBuilder.v1(event)
                .withExtension("traceparent", "another")
                .build();

        assertThat(sent(again, false).path("standing").asText()).isEqualTo("duplicate");
        JsonNode kept = stored().path(0).path("event");
        assertThat(List.of(
                        kept.path("partitionkey").asText(),
                        kept.path("sequence").asText(),
                        kept.path("recordedtime").asText()))
                .containsExactly("lane-1", "0001", "2026-03-02T08:16:00Z");
    }

    /** HTTP 1.1 web hooks, 2.2: 200 with a body, 415 for what isn't read, never a redirect. */
    @Test
    void answers_are_those_of_the_web_hook_profile() {
        Response taken = post(STRUCTURED, aFinding(reference, anId()));
        Response unread = request()
                .redirects()
                .follow(false)
                .contentType("text/plain")
                .body("x")
                .post("/v1/events");

        assertThat(taken.statusCode()).isEqualTo(200);
        assertThat(taken.asString()).isNotEmpty();
        assertThat(unread.statusCode()).isEqualTo(415);
    }

    private CloudEvent anEvent(UnaryOperator<CloudEventBuilder> with) {
        return with.apply(CloudEventBuilder.v1()
                        .withId(anId())
                        .withSource(URI.create("/sites/quay-street"))
                        .withType("org.axlecause.finding.recorded.v1")
                        .withSubject(reference)
                        .withTime(OffsetDateTime.parse("2026-03-02T08:15:00Z"))
                        .withDataContentType("application/json")
                        .withData(DATA.getBytes(StandardCharsets.UTF_8)))
                .build();
    }

    private static String json(CloudEvent event) {
        return new String(new JsonFormat().serialize(event), StandardCharsets.UTF_8);
    }

    /** The receipt of an event as the SDK puts it on the wire. */
    private static JsonNode sent(CloudEvent event, boolean binary) {
        Map<String, String> headers = new TreeMap<>();
        AtomicReference<byte[]> body = new AtomicReference<>(new byte[0]);
        MessageWriter<?, ?> writer = HttpMessageFactory.createWriter(headers::put, body::set);
        if (binary) {
            writer.writeBinary(event);
        } else {
            writer.writeStructured(event, new JsonFormat());
        }
        RequestSpecification request = request();
        headers.forEach((name, value) -> {
            if (name.equalsIgnoreCase("content-type")) {
                request.contentType(value);
            } else {
                request.header(name, value);
            }
        });
        Response answer = request.body(body.get()).post("/v1/events");
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        return answer.as(JsonNode.class);
    }

    /** A finding in binary mode with these attributes beside its own or in their place; an empty one is left out. */
    private RequestSpecification binary(Map<String, String> attributes) {
        Map<String, String> all = new TreeMap<>(Map.of(
                "specversion", "1.0",
                "id", anId(),
                "source", "/sites/quay-street",
                "type", "org.axlecause.finding.recorded.v1",
                "subject", reference,
                "time", "2026-03-02T08:15:00Z"));
        all.putAll(attributes);
        RequestSpecification request = request().contentType("application/json").body(DATA);
        all.forEach((name, value) -> {
            if (!value.isEmpty()) {
                request.header("Ce-" + name, value);
            }
        });
        return request;
    }

    private JsonNode stored() {
        return request()
                .get("/v1/cases/" + reference + "/events")
                .as(JsonNode.class)
                .path("events");
    }
}
