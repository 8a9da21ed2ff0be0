package org.axlecause.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.entry;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JsonTest {

    private static final Figure FIGURE = new Figure(
            FigureKind.PEAK,
            new EntryId("/sites/quay-street", "rt-1"),
            Stage.ARRIVAL,
            BrakeSystem.SERVICE,
            Place.ofWheel(2, Side.LEFT),
            new BigDecimal("1E+3"),
            null,
            true,
            null);

    @Test
    void a_place_is_written_by_its_members_alone_and_codes_in_kebab_case() throws JsonProcessingException {
        assertThat(Json.mapper().writeValueAsString(FIGURE))
                .isEqualTo("{\"kind\":\"peak\",\"test\":{\"source\":\"/sites/quay-street\",\"id\":\"rt-1\"},"
                        + "\"stage\":\"arrival\",\"brake\":\"service\",\"place\":{\"axle\":2,\"side\":\"left\"},"
                        + "\"value\":1000,\"observable\":true}");
    }

    @Test
    void the_members_of_a_record_are_written_one_by_one_as_they_are_in_the_whole() {
        assertThat(Json.members(FIGURE)).isEqualTo(Json.members(Json.text(FIGURE)));
        assertThat(Json.members(FIGURE).keySet())
                .containsExactly("kind", "test", "stage", "brake", "place", "value", "observable");
    }

    @Test
    void what_is_written_is_read_back_as_the_same_value() throws JsonProcessingException {
        Figure read = Json.mapper().readValue(Json.mapper().writeValueAsString(FIGURE), Figure.class);

        assertThat(read)
                .usingComparatorForType(BigDecimal::compareTo, BigDecimal.class)
                .usingRecursiveComparison()
                .isEqualTo(FIGURE);
    }

    @ParameterizedTest
    @ValueSource(doubles = {8.40363933172e-65, Double.MIN_VALUE})
    void the_smallest_number_that_is_written_is_read_again_here_and_taken_from_nobody(double smallest) {
        String text = Json.text(Map.of("pValue", BigDecimal.valueOf(smallest)));

        JsonNode read = Json.read(text);

        assertThat(read.path("pValue").decimalValue()).isEqualByComparingTo(BigDecimal.valueOf(smallest));
        assertThatThrownBy(() -> Json.mapper().readTree(text)).hasMessageContaining("Number value length");
    }

    @Test
    void the_members_of_an_object_are_told_as_they_are_written() {
        String text = "{\"a\":-1.50,\"b\":{\"c\":[1,{\"d\":\"}\"}]},\"e\":\"a \\\"quoted\\\" \u00e9 text\",\"f\":[],"
                + "\"g\":null,\"h\":true,\"i\":12}";

        Map<String, String> members = Json.members(text);

        assertThat(members)
                .containsExactly(
                        entry("a", "-1.50"),
                        entry("b", "{\"c\":[1,{\"d\":\"}\"}]}"),
                        entry("e", "\"a \\\"quoted\\\" \u00e9 text\""),
                        entry("f", "[]"),
                        entry("g", "null"),
                        entry("h", "true"),
                        entry("i", "12"));
    }

    /** Long texts are read by the piece, so that what lies on the edge of a piece is told as well. */
    @Test
    void the_members_of_a_long_object_are_told_as_they_are_written() {
        Map<String, String> expected = new LinkedHashMap<>();
        for (int i = 0; i < 20_000; i++) {
            expected.put("m" + i, i % 2 == 0 ? String.valueOf(i) : "\"" + "x".repeat(i % 7) + "\"");
        }
        String text = expected.entrySet().stream()
                .map(member -> "\"" + member.getKey() + "\":" + member.getValue())
                .collect(Collectors.joining(",", "{", "}"));

        assertThat(Json.members(text)).containsExactlyEntriesOf(expected);
    }
}
