package org.axlecause.intake;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.LongStream;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.EntryType;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class CanonicalTest {

    /** Examples of RFC 8785 sections 3.2.2 and 3.2.3. */
    @Test
    void texts_numbers_and_members_are_written_as_rfc_8785_writes_them() {
        assertThat(Canonical.text(
                        json("{\"numbers\": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],"
                                + " \"string\": \"\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\\"\\/\","
                                + " \"literals\": [null, true, false]}")))
                .isEqualTo("{\"literals\":[null,true,false],\"numbers\":[333333333.3333333,1e+30,4.5,0.002,1e-27],"
                        + "\"string\":\"\u20ac$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}");
        assertThat(Canonical.text(json("{\"\\u20ac\": 1, \"\\r\": 2, \"\\ufb33\": 3, \"1\": 4, \"\\ud83d\\ude00\": 5,"
                        + " \"\\u0080\": 6, \"\\u00f6\": 7}")))
                .isEqualTo(
                        "{\"\\r\":2,\"1\":4,\"\u0080\":6,\"\u00f6\":7,\"\u20ac\":1,\"\ud83d\ude00\":5,\"\ufb33\":3}");
    }

    @ParameterizedTest(name = "{0} and {1}")
    @CsvSource({"1, 1.0", "1, 1e0", "100, 1E+2", "0.10, 1e-1", "0, -0.0", "1610, 1610.000"})
    void the_same_number_has_the_same_digest_however_it_is_written(String one, String other) {
        assertThat(digest("{\"a\": " + one + "}", "2026-03-02T08:15:00Z"))
                .isEqualTo(digest("{\"a\": " + other + "}", "2026-03-02T08:15:00Z"));
    }

    @Test
    void the_same_instant_has_the_same_digest_whatever_its_offset() {
        assertThat(digest("{}", "2026-03-02T08:15:00Z")).isEqualTo(digest("{}", "2026-03-02T09:15:00+01:00"));
        assertThat(digest("{}", "2026-03-02T08:15:00Z")).isNotEqualTo(digest("{}", "2026-03-02T08:15:00.000000001Z"));
    }

    @Test
    void the_digest_is_what_any_tool_computes() {
        // printf '{"data":{},"subject":"QS-1","time":"2026-03-02T08:15:00Z","type":"org.axlecause.obstacle.met.v1"}' |
        // sha256sum
        assertThat(digest("{}", "2026-03-02T08:15:00Z"))
                .isEqualTo("4dc80571dc3b65389349824394760f90e1ea5c7d09a6b23360334f30bbc61844");
    }

    static LongStream seeds() {
        return LongStream.range(1, 101);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void members_in_any_order_have_the_same_digest_and_any_change_has_another(long seed) {
        Random random = new Random(seed);
        JsonNode data = anyObject(random, 3);
        ObjectNode changed = data.deepCopy();
        changed.put("one more", random.nextInt());

        assertThat(digest(shuffled(data, random)))
                .as("seed %s", seed)
                .isEqualTo(digest(data))
                .isNotEqualTo(digest(changed));
    }

    private static ObjectNode anyObject(Random random, int depth) {
        ObjectNode object = Json.mapper().createObjectNode();
        int members = 1 + random.nextInt(6);
        for (int i = 0; i < members; i++) {
            object.set("m" + random.nextInt(1000) + (random.nextBoolean() ? "\u00e9" : ""), anyValue(random, depth));
        }
        return object;
    }

    private static JsonNode anyValue(Random random, int depth) {
        return switch (random.nextInt(depth > 0 ? 6 : 4)) {
            case 0 -> Json.mapper().getNodeFactory().numberNode(random.nextInt());
            case 1 ->
                Json.mapper()
                        .getNodeFactory()
                        .numberNode(new BigDecimal(random.nextInt(1_000_000)).movePointLeft(random.nextInt(9)));
            case 2 -> Json.mapper().getNodeFactory().textNode("t\"\n" + random.nextInt());
            case 3 -> Json.mapper().getNodeFactory().booleanNode(random.nextBoolean());
            case 4 -> anyObject(random, depth - 1);
            default -> {
                ArrayNode list = Json.mapper().createArrayNode();
                for (int i = random.nextInt(4); i > 0; i--) {
                    list.add(anyValue(random, depth - 1));
                }
                yield list;
            }
        };
    }

    private static JsonNode shuffled(JsonNode value, Random random) {
        if (value.isArray()) {
            ArrayNode list = Json.mapper().createArrayNode();
            value.forEach(item -> list.add(shuffled(item, random)));
            return list;
        }
        if (!value.isObject()) {
            return value;
        }
        List<Map.Entry<String, JsonNode>> members = new ArrayList<>(value.properties());
        Collections.shuffle(members, random);
        ObjectNode object = Json.mapper().createObjectNode();
        members.forEach(member -> object.set(member.getKey(), shuffled(member.getValue(), random)));
        return object;
    }

    private static String digest(JsonNode data) {
        return digest(data.toString(), "2026-03-02T08:15:00Z");
    }

    private static String digest(String data, String time) {
        JsonNode read = json(data);
        return Canonical.digest(
                new IncomingEvent(
                        new EntryId("/sites/quay-street", "e-1"),
                        EntryType.OBSTACLE_MET,
                        "QS-1",
                        OffsetDateTime.parse(time),
                        Json.mapper().createObjectNode(),
                        read),
                read);
    }

    private static JsonNode json(String text) {
        try {
            return Json.mapper().readTree(text);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException(text, e);
        }
    }
}
