package org.axlecause;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.vertx.core.buffer.Buffer;
import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.StreamSupport;
import org.axlecause.Contract.Operation;

/** Grows requests from the contract, and breaks many of them in one or several places; the same seed gives the same. */
final class RandomRequests {

    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;
    private static final int DEEPEST = 6;
    private static final List<String> ODD_TEXTS = List.of(
            "",
            " ",
            "\u0000",
            "\ud800",
            "null",
            "0",
            "-1",
            "1e400",
            "NaN",
            "ä€😀",
            "'; DROP TABLE event; --",
            "<script>alert(1)</script>",
            "${7*7}",
            "../../etc/passwd",
            "%00",
            "2026-13-45",
            "2026-02-30T25:61:61Z",
            "\u202eabc",
            "a".repeat(5000));
    private static final List<String> ODD_TYPES = List.of(
            "text/plain",
            "application/xml",
            "application/json; charset=utf-16",
            "application/cloudevents+avro",
            "application/cloudevents+json; charset=utf-8",
            "multipart/form-data; boundary=x",
            "nonsense",
            "");

    private final Random random;
    private final List<JsonNode> events;
    private final Map<String, List<String>> pathValues;

    /**
     * Requests of this seed.
     *
     * @param events sound events to start from
     * @param pathValues values of path parameters that exist, here or with another tenant
     */
    RandomRequests(long seed, List<JsonNode> events, Map<String, List<String>> pathValues) {
        random = new Random(seed);
        this.events = List.copyOf(events);
        this.pathValues = Map.copyOf(pathValues);
    }

    /**
     * A request as bytes, without its key.
     *
     * @param operation the one it was grown from; the path may lead elsewhere after mutation
     */
    record Request(Operation operation, String method, String target, String headers, Buffer body) {

        byte[] bytes(String key) {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            bytes.writeBytes((method + " " + target + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
                            + "Authorization: Bearer " + key + "\r\n" + headers
                            + (body.length() > 0 ? "Content-Length: " + body.length() + "\r\n" : "") + "\r\n")
                    .getBytes(StandardCharsets.ISO_8859_1));
            bytes.writeBytes(body.getBytes());
            return bytes.toByteArray();
        }

        @Override
        public String toString() {
            String text = new String(bytes("…"), StandardCharsets.UTF_8);
            return text.length() > 3000 ? text.substring(0, 3000) + "…" : text;
        }
    }

    Request next() {
        List<Operation> operations = Contract.committed().operations();
        Operation operation = random.nextInt(4) == 0 && !events.isEmpty()
                ? Contract.committed()
                        .operation("POST", random.nextBoolean() ? "/v1/events" : "/v1/assessments")
                        .orElseThrow()
                : operations.get(random.nextInt(operations.size()));
        StringBuilder headers = new StringBuilder();
        byte[] body = new byte[0];
        JsonNode content = operation.content().path("requestBody").path("content");
        if (!content.isMissingNode()) {
            String type = oneOf(names(content));
            body = bytes(type, content.path(type).path("schema"), headers);
            if (random.nextInt(25) == 0) {
                type = oneOf(ODD_TYPES);
            }
            headers.append("Content-Type: ").append(type).append("\r\n");
        }
        if (random.nextInt(8) == 0) {
            headers.append("Accept: ")
                    .append(oneOf(List.of("text/html", "application/pdf", "text/csv", "*/*", "application/json")))
                    .append("\r\n");
        }
        if (random.nextInt(10) == 0) {
            headers.append(oneOf(List.of(
                    "Prefer: return=representation\r\n",
                    "If-None-Match: *\r\n",
                    "If-Match: \"1\"\r\n",
                    "If-None-Match: \"nonsense\r\n",
                    "X-Forwarded-For: 10.0.0.1\r\n",
                    "traceparent: 00-0-0-0\r\n")));
        }
        String method = random.nextInt(40) == 0
                ? oneOf(List.of("GET", "POST", "PUT", "DELETE", "PATCH", "HEAD", "OPTIONS", "TRACE", "QUERY"))
                : operation.method();
        return new Request(operation, method, target(operation), headers.toString(), Buffer.buffer(body));
    }

    private String target(Operation operation) {
        String path = operation.path();
        for (String name : operation.pathParameters()) {
            path = path.replace("{" + name + "}", random.nextInt(5) == 0 ? encoded(oddText()) : known(name));
        }
        if (random.nextInt(60) == 0) {
            path = oneOf(
                    List.of(path + "/", path + "/..", "/" + path, path + "%2f", path + "%zz", path + ";a=b", "/v1"));
        }
        StringBuilder query = new StringBuilder();
        for (JsonNode parameter : operation.content().path("parameters")) {
            if (parameter.path("in").asText().equals("query") && random.nextInt(3) == 0) {
                query.append(query.length() == 0 ? '?' : '&')
                        .append(parameter.path("name").asText())
                        .append('=')
                        .append(encoded(queryValue(parameter)));
            }
        }
        return path + query;
    }

    private String queryValue(JsonNode parameter) {
        if (random.nextInt(4) == 0) {
            return oddText();
        }
        List<String> known = pathValues.get(parameter.path("name").asText());
        JsonNode value = known != null ? JSON.textNode(oneOf(known)) : value(parameter.path("schema"), 0);
        return value.asText();
    }

    private String known(String name) {
        return encoded(oneOf(pathValues.getOrDefault(name, List.of("x"))));
    }

    private byte[] bytes(String type, JsonNode schema, StringBuilder headers) {
        JsonNode sound = type.contains("cloudevents-batch")
                ? batch()
                : type.contains("cloudevents") ? event() : binary(schema, headers);
        JsonNode sent = sound.deepCopy();
        for (int mutation = random.nextInt(4); mutation > 1; mutation--) {
            sent = mutated(sent);
        }
        byte[] bytes = sent.toString().getBytes(StandardCharsets.UTF_8);
        return random.nextInt(12) == 0 ? damaged(bytes) : bytes;
    }

    private JsonNode batch() {
        ArrayNode batch = JSON.arrayNode();
        for (int more = random.nextInt(4); more >= 0; more--) {
            batch.add(event());
        }
        return batch;
    }

    private JsonNode event() {
        ObjectNode event = oneOf(events).deepCopy();
        event.put("subject", "RANDOM-" + random.nextInt(50));
        event.put("id", "random-" + random.nextInt(100_000));
        return event;
    }

    private JsonNode binary(JsonNode schema, StringBuilder headers) {
        if (schema.has("$ref")) {
            return value(schema, 0);
        }
        JsonNode event = event();
        event.properties().stream()
                .filter(member -> !member.getKey().startsWith("data"))
                .forEach(member -> headers.append("ce-")
                        .append(member.getKey())
                        .append(": ")
                        .append(encoded(member.getValue().asText()))
                        .append("\r\n"));
        return event.path("data");
    }

    /** A value that fits the schema, as far as the schema tells. */
    private JsonNode value(JsonNode schema, int depth) {
        if (schema.has("$ref")) {
            String name = schema.path("$ref").asText();
            return value(Contract.committed().component(name.substring(name.lastIndexOf('/') + 1)), depth);
        }
        if (schema.has("enum")) {
            return schema.path("enum").get(random.nextInt(schema.path("enum").size()));
        }
        JsonNode types = schema.path("type");
        String type = types.isArray() ? types.path(0).asText() : types.asText("object");
        return switch (type) {
            case "string" -> JSON.textNode(text(schema.path("format").asText()));
            case "integer" -> JSON.numberNode(random.nextInt(300) - 20);
            case "number" -> JSON.numberNode(BigDecimal.valueOf(random.nextInt(100_000) - 1000, 2));
            case "boolean" -> JSON.booleanNode(random.nextBoolean());
            case "array" -> array(schema, depth);
            default -> object(schema, depth);
        };
    }

    private String text(String format) {
        return switch (format) {
            case "date" -> "2026-03-%02d".formatted(1 + random.nextInt(28));
            case "date-time" -> "2026-03-%02dT08:15:00Z".formatted(1 + random.nextInt(28));
            case "uri" -> "https://hooks.example.org/in";
            default -> oneOf(List.of("quay-street", "Europe/London", "GBP", "gb-annual", "desk", "north", "x y"));
        };
    }

    private ArrayNode array(JsonNode schema, int depth) {
        ArrayNode array = JSON.arrayNode();
        for (int more = depth > DEEPEST ? 0 : random.nextInt(3); more > 0; more--) {
            array.add(value(schema.path("items"), depth + 1));
        }
        return array;
    }

    private ObjectNode object(JsonNode schema, int depth) {
        ObjectNode object = JSON.objectNode();
        List<String> required = StreamSupport.stream(schema.path("required").spliterator(), false)
                .map(JsonNode::asText)
                .toList();
        schema.path("properties").properties().forEach(member -> {
            if (depth <= DEEPEST && (required.contains(member.getKey()) || random.nextInt(4) > 0)) {
                object.set(member.getKey(), value(member.getValue(), depth + 1));
            }
        });
        if (schema.has("additionalProperties")
                && schema.path("additionalProperties").isObject()) {
            object.set("wheel-cylinder", value(schema.path("additionalProperties"), depth + 1));
        }
        return object;
    }

    /** The document with one place changed. */
    private JsonNode mutated(JsonNode document) {
        List<JsonNode> places = new ArrayList<>();
        collect(document, places);
        if (places.isEmpty()) {
            return oddValue();
        }
        JsonNode place = oneOf(places);
        if (place instanceof ObjectNode object && !object.isEmpty()) {
            String name = oneOf(names(object));
            switch (random.nextInt(4)) {
                case 0 -> object.remove(name);
                case 1 -> object.set(oddText(), object.get(name));
                default -> object.set(name, oddValue());
            }
        } else if (place instanceof ArrayNode array && !array.isEmpty()) {
            int index = random.nextInt(array.size());
            switch (random.nextInt(3)) {
                case 0 -> array.remove(index);
                case 1 -> array.add(array.get(index).deepCopy());
                default -> array.set(index, oddValue());
            }
        }
        return document;
    }

    private static void collect(JsonNode node, List<JsonNode> places) {
        if (node.isContainerNode()) {
            places.add(node);
            node.forEach(child -> collect(child, places));
        }
    }

    private JsonNode oddValue() {
        return switch (random.nextInt(9)) {
            case 0 -> JSON.nullNode();
            case 1 -> JSON.booleanNode(random.nextBoolean());
            case 2 -> JSON.numberNode(new BigDecimal("1e" + random.nextInt(60)));
            case 3 -> JSON.numberNode(-random.nextInt());
            case 4 -> JSON.arrayNode();
            case 5 -> JSON.objectNode();
            case 6 -> nested(random.nextInt(100));
            default -> JSON.textNode(oddText());
        };
    }

    private static JsonNode nested(int depth) {
        ArrayNode outer = JSON.arrayNode();
        ArrayNode inner = outer;
        for (int level = 0; level < depth; level++) {
            inner = inner.addArray();
        }
        return outer;
    }

    private byte[] damaged(byte[] bytes) {
        byte[] damaged = bytes.clone();
        switch (random.nextInt(3)) {
            case 0 -> {
                return Arrays.copyOf(bytes, random.nextInt(bytes.length + 1));
            }
            case 1 -> damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
            default -> {
                byte[] longer = Arrays.copyOf(bytes, bytes.length + 3);
                longer[longer.length - 2] = (byte) 0xC0;
                return longer;
            }
        }
        return damaged;
    }

    private String oddText() {
        return oneOf(ODD_TEXTS);
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }

    private static List<String> names(JsonNode object) {
        return object.properties().stream().map(Map.Entry::getKey).toList();
    }

    private <T> T oneOf(List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }
}
