package org.axlecause.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.tuple;

import io.cloudevents.CloudEvent;
import io.cloudevents.core.builder.CloudEventBuilder;
import io.cloudevents.jackson.JsonFormat;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.EntryType;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Conformance points of CloudEvents 1.0.2: core specification, JSON format and HTTP protocol binding. */
class ReceptionTest {

    private static final Reception RECEPTION = new Reception(new EnvelopeCheck(new PayloadCheck()));
    private static final String STRUCTURED = "application/cloudevents+json";
    private static final String BATCH = "application/cloudevents-batch+json";
    private static final String DATA = "{\"component\": \"bleed-nipple\", \"condition\": \"sheared\"}";

    @Test
    void a_structured_event_is_taken_with_its_extensions() {
        Attempt attempt =
                structured("{%s, 'data': %s, 'traceparent': 'x', 'sequence': 7, 'urgent': true}".formatted(CORE, DATA));

        IncomingEvent event = passed(attempt);
        assertThat(event.id()).isEqualTo(new EntryId("/sites/quay-street", "e-1"));
        assertThat(event.type()).isEqualTo(EntryType.OBSTACLE_MET);
        assertThat(event.subject()).isEqualTo("QS-1");
        assertThat(event.time()).isEqualTo(OffsetDateTime.parse("2026-03-02T08:15:00+01:00"));
        assertThat(event.attributes().toString())
                .isEqualTo(
                        "{\"specversion\":\"1.0\",\"type\":\"org.axlecause.obstacle.met.v1\","
                                + "\"source\":\"/sites/quay-street\",\"id\":\"e-1\",\"subject\":\"QS-1\","
                                + "\"time\":\"2026-03-02T08:15:00+01:00\",\"traceparent\":\"x\",\"sequence\":7,\"urgent\":true}");
        assertThat(event.data().toString()).isEqualTo("{\"component\":\"bleed-nipple\",\"condition\":\"sheared\"}");
    }

    private static final String CORE = "'specversion': '1.0', 'type': 'org.axlecause.obstacle.met.v1', 'source':"
            + " '/sites/quay-street', 'id': 'e-1', 'subject': 'QS-1', 'time': '2026-03-02T08:15:00+01:00'";

    @Test
    void an_event_written_by_another_implementation_is_taken() {
        CloudEvent event = CloudEventBuilder.v1()
                .withId("e-1")
                .withSource(URI.create("/sites/quay-street"))
                .withType("org.axlecause.obstacle.met.v1")
                .withSubject("QS-1")
                .withTime(OffsetDateTime.parse("2026-03-02T08:15:00Z"))
                .withDataContentType("application/json")
                .withData(DATA.getBytes(StandardCharsets.UTF_8))
                .withExtension("comexampleextension", "value")
                .build();

        Attempt attempt = single(STRUCTURED, new JsonFormat().serialize(event));

        assertThat(passed(attempt).id()).isEqualTo(new EntryId("/sites/quay-street", "e-1"));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '#',
            value = {
                "'specversion': '1.0' | 'specversion': '0.3' | /specversion | `specversion` is \"0.3\"; expected is \"1.0\". Send CloudEvents 1.0.",
                "'specversion': '1.0' | 'specversion': 1.0 | /specversion | `specversion` is 1.0; expected is \"1.0\". Correct it.",
                "'id': 'e-1' | 'id': '' | /id | `id` is \"\"; expected is an id of 1 to 200 characters, unique at its source. Correct it.",
                "'id': 'e-1' | 'id': null | /id | `id` is missing; expected is an id of 1 to 200 characters, unique at its source. Add it.",
                "'id': 'e-1' | 'id': 'a\\u0000b' | /id | `id` is",
                "'source': '/sites/quay-street' | 'source': 'quay street' | /source | `source` is \"quay street\"; expected is a URI reference of 1 to 500 characters",
                "'source': '/sites/quay-street' | 'source': 7 | /source | `source` is 7; expected is a URI reference",
                "'subject': 'QS-1' | 'subject': 'QS/1' | /subject | `subject` is \"QS/1\"; expected is the case reference, 1 to 64 letters, digits and . _ ~ -. Correct it.",
                "'time': '2026-03-02T08:15:00+01:00' | 'time': '2026-03-02T08:15:00' | /time | `time` is \"2026-03-02T08:15:00\"; expected is a time by RFC 3339 with its offset, such as 2026-03-02T08:15:00Z. Send when it happened in the workshop.",
                "'time': '2026-03-02T08:15:00+01:00' | 'dataschema': 'x' | /time | `time` is missing; expected is a time by RFC 3339 with its offset",
                "'id': 'e-1' | 'id': 'e-1', 'Urgent': true | /Urgent | `Urgent` is no attribute name; expected are small letters a to z and digits.",
                "'id': 'e-1' | 'id': 'e-1', 'extra': {'a': 1} | /extra | `extra` is an object; an extension is a text of at most 2000 characters, a whole number or true or false.",
                "'id': 'e-1' | 'id': 'e-1', 'data_base64': 'e30=' | /data_base64 | `data` and `data_base64` are both there; expected is one. Leave `data_base64` out."
            })
    void a_wrong_envelope_is_refused_with_the_attribute(String right, String wrong, String pointer, String text) {
        Attempt attempt = structured(("{" + CORE.replace(right, wrong) + ", 'data': %s}").formatted(DATA));

        Problem problem = refused(attempt);
        assertThat(problem.status()).isEqualTo(400);
        assertThat(problem.code()).isEqualTo("invalid-envelope");
        assertThat(problem.causes()).singleElement().satisfies(cause -> {
            assertThat(cause.pointer()).isEqualTo(pointer);
            assertThat(cause.text()).startsWith(text);
        });
    }

    @Test
    void envelope_and_data_are_said_at_once() {
        Problem problem = refused(structured("{'type': 'org.axlecause.obstacle.met.v1', 'data': {'component': 'x'}}"));

        assertThat(problem.status()).isEqualTo(400);
        assertThat(problem.causes())
                .extracting(Problem.Cause::pointer)
                .containsExactly(
                        "/specversion", "/source", "/id", "/subject", "/time", "/data/component", "/data/condition");
    }

    @Test
    void an_unknown_type_is_refused_by_its_own_code() {
        Problem problem = refused(structured("{" + CORE.replace("obstacle.met", "obstacle.seen") + ", 'data': {}}"));

        assertThat(problem.status()).isEqualTo(422);
        assertThat(problem.code()).isEqualTo("unknown-event-type");
        assertThat(problem.causes()).singleElement().satisfies(cause -> {
            assertThat(cause.pointer()).isEqualTo("/type");
            assertThat(cause.text())
                    .startsWith(
                            "`type` is \"org.axlecause.obstacle.seen.v1\", which is unknown here; expected is one of"
                                    + " org.axlecause.vehicle.presented.v1, ");
        });
    }

    @Test
    void a_wrong_payload_points_into_the_data() {
        Problem problem = refused(
                structured("{%s, 'data': {'component': 'drum', 'condition': 'oval', 'axle': 0}}".formatted(CORE)));

        assertThat(problem.status()).isEqualTo(422);
        assertThat(problem.code()).isEqualTo("invalid-payload");
        assertThat(problem.causes()).extracting(Problem.Cause::pointer).containsExactly("/data/axle");
    }

    @Test
    void data_of_another_format_is_refused() {
        Problem problem =
                refused(structured("{%s, 'datacontenttype': 'application/xml', 'data': %s}".formatted(CORE, DATA)));

        assertThat(problem.status()).isEqualTo(415);
        assertThat(problem.causes()).extracting(Problem.Cause::pointer).containsExactly("/datacontenttype");
    }

    @Test
    void a_text_under_a_json_content_type_stays_a_text() {
        Problem problem = refused(structured("{%s, 'data': '{}'}".formatted(CORE)));

        assertThat(problem.causes())
                .containsExactly(new Problem.Cause(
                        "/data", "`data` is \"{}\"; expected is Something stood in the way of the work.. Correct it."));
    }

    @Test
    void data_in_base64_is_decoded() {
        String encoded = Base64.getEncoder().encodeToString(DATA.getBytes(StandardCharsets.UTF_8));

        assertThat(passed(structured("{%s, 'data_base64': '%s'}".formatted(CORE, encoded)))
                        .data()
                        .toString())
                .isEqualTo("{\"component\":\"bleed-nipple\",\"condition\":\"sheared\"}");
        assertThat(refused(structured("{%s, 'data_base64': '???'}".formatted(CORE)))
                        .causes())
                .extracting(Problem.Cause::pointer)
                .containsExactly("/data_base64");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '#',
            value = {
                "{'a': 1, 'a': 2} | /a | Duplicate",
                "{'a': {'b': [{'c': 1, 'c': 2}]}} | /a/b/0/c | Duplicate",
                "{'a': NaN} | /a | NaN",
                "{'a': 1 | /a | Unexpected end-of-input",
                "{} {} | | more behind",
                "{'a': 10000000000000000000000000000000000000000000000000000000000000000} | /a | number",
                "{'a': 1e99999999999} | /a | 99999999999"
            })
    void json_that_breaks_the_rules_is_malformed(String body, String pointer, String words) {
        assertThatExceptionOfType(RefusedException.class)
                .isThrownBy(() -> structured(body))
                .satisfies(refused -> {
                    assertThat(refused.problem().status()).isEqualTo(400);
                    assertThat(refused.problem().code()).isEqualTo("malformed-request");
                    assertThat(refused.problem().causes()).singleElement().satisfies(cause -> {
                        assertThat(cause.pointer()).isEqualTo(pointer == null ? "" : pointer);
                        assertThat(cause.text()).containsIgnoringCase(words);
                    });
                });
    }

    @ParameterizedTest
    @ValueSource(ints = {64, 65, 900})
    void nesting_ends_at_64(int depth) {
        String body = "[".repeat(depth) + "]".repeat(depth);

        if (depth <= 64) {
            assertThat(refused(structured(body)).code()).isEqualTo("invalid-envelope");
        } else {
            assertThatExceptionOfType(RefusedException.class)
                    .isThrownBy(() -> structured(body))
                    .returns(400, refused -> refused.problem().status());
        }
    }

    @Test
    void bytes_that_are_no_utf_8_are_malformed() {
        byte[] latin1 = "{\"id\": \"caf\u00e9\"}".getBytes(StandardCharsets.ISO_8859_1);
        byte[] utf16 = "{}".getBytes(StandardCharsets.UTF_16LE);

        assertThatExceptionOfType(RefusedException.class)
                .isThrownBy(() -> single(STRUCTURED, latin1))
                .satisfies(refused -> assertThat(
                                refused.problem().causes().get(0).text())
                        .isEqualTo("The body is not UTF-8; JSON in UTF-8 is expected. Send it in that encoding."));
        assertThatExceptionOfType(RefusedException.class).isThrownBy(() -> single(STRUCTURED, utf16));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '#',
            value = {
                "{'component': 'drum', 'condition': 'oval', 'note': 'a\\u0000b'} | /data/note | The text holds a NUL or half of a surrogate pair",
                "{'component': 'drum', 'condition': 'oval', 'note': 'a\\ud800'} | /data/note | The text holds a NUL or half of a surrogate pair",
                "{'component': 'drum', 'condition': 'oval', 'note': '\\udc00\\ud800'} | /data/note | The text holds a NUL or half of a surrogate pair",
                "{'component': 'drum', 'condition': 'oval', 'axle': 1e999999} | /data/axle | The number 1E+999999 has more digits than computers exchange safely",
                "{'component': 'drum', 'condition': 'oval', 'axle': 1.00000000000000000001} | /data/axle | The number 1.00000000000000000001 has more digits"
            })
    void what_cannot_be_stored_unchanged_is_refused(String data, String pointer, String text) {
        Problem problem = refused(structured("{" + CORE + ", 'data': " + data + "}"));

        assertThat(problem.status()).isEqualTo(422);
        assertThat(problem.causes()).singleElement().satisfies(cause -> {
            assertThat(cause.pointer()).isEqualTo(pointer);
            assertThat(cause.text()).startsWith(text);
        });
    }

    @Test
    void whole_characters_beyond_the_basic_plane_are_fine() {
        assertThat(passed(structured(
                                "{%s, 'data': {'component': 'drum', 'condition': 'oval', 'note': '\\ud83d\\ude97'}}"
                                        .formatted(CORE)))
                        .data()
                        .path("note")
                        .asText())
                .isEqualTo("\ud83d\ude97");
    }

    @Test
    void a_batch_keeps_its_order_and_a_poison_event_does_not_sink_the_others() {
        String body = "[{" + CORE + ", 'data': " + DATA + "}, 7, {" + CORE.replace("e-1", "e-2") + ", 'data': " + DATA
                + "}, {'id': 'e-3'}]";

        Reception.Message message = RECEPTION.message(BATCH, Map.of(), bytes(body));

        assertThat(message.batch()).isTrue();
        assertThat(message.attempts())
                .extracting(Attempt::id, attempt -> attempt.event() != null)
                .containsExactly(tuple("e-1", true), tuple(null, false), tuple("e-2", true), tuple("e-3", false));
    }

    @Test
    void a_batch_may_be_empty_or_hold_500_events_and_no_more() {
        assertThat(RECEPTION.message(BATCH, Map.of(), bytes("[]")).attempts()).isEmpty();
        assertThat(RECEPTION.message(BATCH, Map.of(), bytes(list(500))).attempts())
                .hasSize(500);
        assertThatExceptionOfType(RefusedException.class)
                .isThrownBy(() -> RECEPTION.message(BATCH, Map.of(), bytes(list(501))))
                .returns(413, refused -> refused.problem().status());
    }

    private static String list(int size) {
        return IntStream.range(0, size).mapToObj(i -> "{}").collect(Collectors.joining(",", "[", "]"));
    }

    @Test
    void a_batch_that_is_no_list_is_malformed() {
        assertThatExceptionOfType(RefusedException.class)
                .isThrownBy(() -> RECEPTION.message(BATCH, Map.of(), bytes("{}")))
                .returns(400, refused -> refused.problem().status());
    }

    @ParameterizedTest(name = "{0} bytes with {1}")
    @CsvSource({
        "65536, pad, true",
        "1048576, pad, true",
        "1048577, pad, false",
        "1048577, p\\u0061d, false",
        "1048577, trace, true",
        "1048577, tr\\u0061ce, true",
        "8388608, trace, true",
        "8388609, trace, false"
    })
    void a_mebibyte_is_taken_and_eight_with_traces(int size, String name, boolean taken) {
        String head = "[{\"" + name + "\":[]}";
        byte[] body = (head + " ".repeat(size - head.length() - 1) + "]").getBytes(StandardCharsets.UTF_8);

        if (taken) {
            assertThat(RECEPTION.message(BATCH, Map.of(), body).attempts()).hasSize(1);
        } else {
            assertThatExceptionOfType(RefusedException.class)
                    .isThrownBy(() -> RECEPTION.message(BATCH, Map.of(), body))
                    .returns(413, refused -> refused.problem().status())
                    .returns("too-large", refused -> refused.problem().code());
        }
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "application/json",
                "application/json; charset=UTF-8",
                "APPLICATION/JSON",
                "text/json",
                "application/vnd.example+json"
            })
    void a_binary_event_is_taken_with_any_json_content_type(String contentType) {
        Map<String, List<String>> headers = headers();
        headers.put("CE-Comexample", List.of("Euro%20%E2%82%AC%20%f0%9f%98%80"));

        Reception.Message message = RECEPTION.message(contentType, headers, bytes(DATA));

        assertThat(message.batch()).isFalse();
        IncomingEvent event = passed(message.attempts().get(0));
        assertThat(event.id()).isEqualTo(new EntryId("/sites/quay-street", "e-1"));
        assertThat(event.attributes().path("comexample").asText()).isEqualTo("Euro \u20ac \ud83d\ude00");
        assertThat(event.attributes().path("datacontenttype").asText()).isEqualTo(contentType);
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "ce-datacontenttype | application/json | /datacontenttype",
                "ce-extra | %C0%A0 | /extra",
                "ce-extra | 100% | /extra",
                "ce-extra | %4 | /extra",
                "ce-Bad_Name | x | /bad_name"
            })
    void a_wrong_header_is_refused(String header, String value, String pointer) {
        Map<String, List<String>> headers = headers();
        headers.put(header, List.of(value));

        Problem problem = refused(RECEPTION
                .message("application/json", headers, bytes(DATA))
                .attempts()
                .get(0));

        assertThat(problem.status()).isEqualTo(400);
        assertThat(problem.causes()).extracting(Problem.Cause::pointer).containsExactly(pointer);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '#',
            value = {"\"a b\" | a b", "\"a\\\"b\" | a\"b", "%22a%22 | \"a\"", "a%2fb | a/b", "a%2525 | a%25", "%41 | A"
            })
    void a_header_value_loses_its_quotes_and_one_round_of_encoding(String header, String value) {
        assertThat(HeaderValue.decoded(header)).contains(value);
    }

    @Test
    void a_body_without_any_envelope_is_told_what_is_missing() {
        Problem problem = refused(RECEPTION
                .message("application/json", Map.of(), bytes("{'stage': 'arrival'}"))
                .attempts()
                .get(0));

        assertThat(problem.causes())
                .extracting(Problem.Cause::pointer)
                .containsExactly("/specversion", "/source", "/id", "/type", "/subject", "/time");
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "application/cloudevents+avro",
                "application/cloudevents",
                "application/cloudevents-batch+xml",
                "application/xml",
                "application/json; charset=iso-8859-1"
            })
    void a_format_that_is_not_read_here_is_refused(String contentType) {
        assertThatExceptionOfType(RefusedException.class)
                .isThrownBy(() -> RECEPTION.message(contentType, Map.of(), bytes("{}")))
                .returns(415, refused -> refused.problem().status());
    }

    @ParameterizedTest(name = "{0} is {1}")
    @CsvSource({
        "2026-03-02T08:15:00Z, 2026-03-02T08:15Z",
        "2026-03-02t08:15:00z, 2026-03-02T08:15Z",
        "2026-03-02T08:15:00.1Z, 2026-03-02T08:15:00.100Z",
        "2026-03-02T08:15:00.123456789+09:00, 2026-03-02T08:15:00.123456789+09:00",
        "2026-03-02T08:15:00-00:00, 2026-03-02T08:15Z",
        "2016-12-31T23:59:60Z, 2017-01-01T00:00Z",
        "1990-12-31T15:59:60-08:00, 1990-12-31T16:00-08:00",
        "2024-02-29T00:00:00Z, 2024-02-29T00:00Z"
    })
    void a_time_by_rfc_3339_is_read(String text, String time) {
        assertThat(EventTime.of(text)).contains(OffsetDateTime.parse(time));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2026-03-02",
                "2026-03-02T08:15Z",
                "2026-03-02 08:15:00Z",
                "2026-03-02T08:15:00",
                "2026-02-29T08:15:00Z",
                "2026-03-02T24:00:00Z",
                "2026-03-02T08:15:60Z",
                "2026-03-02T08:15:61Z",
                "2026-03-02T08:15:00.Z",
                "2026-03-02T08:15:00.1234567890Z",
                "2026-03-02T08:15:00+0100",
                "2026-03-02T08:15:00+19:00",
                "26-03-02T08:15:00Z",
                "0001-01-01T00:00:00Z",
                "9999-12-31T23:59:60Z"
            })
    void what_is_no_time_by_rfc_3339_is_refused(String text) {
        assertThat(EventTime.of(text)).isEmpty();
    }

    private static Map<String, List<String>> headers() {
        Map<String, List<String>> headers = new TreeMap<>();
        headers.put("ce-specversion", List.of("1.0"));
        headers.put("Ce-Type", List.of("org.axlecause.obstacle.met.v1"));
        headers.put("ce-source", List.of("/sites/quay-street"));
        headers.put("ce-id", List.of("e-1"));
        headers.put("ce-subject", List.of("QS-1"));
        headers.put("ce-time", List.of("2026-03-02T08:15:00Z"));
        headers.put("X-Other", List.of("a", "b"));
        return headers;
    }

    private static Attempt structured(String body) {
        return single(STRUCTURED, bytes(body));
    }

    private static Attempt single(String contentType, byte[] body) {
        return RECEPTION.message(contentType, Map.of(), body).attempts().get(0);
    }

    private static IncomingEvent passed(Attempt attempt) {
        assertThat(attempt.problem()).isNull();
        return attempt.event();
    }

    private static Problem refused(Attempt attempt) {
        assertThat(attempt.event()).isNull();
        return attempt.problem();
    }

    private static byte[] bytes(String text) {
        return text.replace('\'', '"').getBytes(StandardCharsets.UTF_8);
    }
}
