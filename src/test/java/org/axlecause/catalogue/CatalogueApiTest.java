package org.axlecause.catalogue;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

@QuarkusTest
class CatalogueApiTest {

    private static final Set<String> STANDINGS =
            Set.of("published", "secondary", "from-memory", "common-practice", "judgement", "derived");

    @ParameterizedTest
    @EnumSource
    void every_list_answers_with_words_and_a_tag(CatalogueKind kind) {
        Response first = given().get("/v1/catalogue/" + kind);
        Response again = given().header("If-None-Match", first.header("ETag")).get("/v1/catalogue/" + kind);

        assertThat(first.statusCode()).isEqualTo(200);
        assertThat(first.contentType()).startsWith("application/json");
        assertThat(first.header("ETag")).matches("\"[0-9a-f]{32}\"");
        assertThat(first.header("Cache-Control")).isEqualTo("private, no-cache");
        assertThat(again.statusCode()).isEqualTo(304);
        assertThat(again.asString()).isEmpty();
    }

    static Stream<Arguments> codesOnTheWire() {
        return Stream.of(
                codes("components", Component.values()),
                codes("conditions", Condition.values()),
                codes("checks", CheckCode.values()),
                codes("causes", CauseCode.values()),
                codes("symptoms", SymptomCode.values()),
                codes("cautions", CautionCode.values()),
                codes("steps", StepCode.values()));
    }

    private static Arguments codes(String list, Enum<?>... codes) {
        return Arguments.of(list, Arrays.stream(codes).map(Enum::toString).toList());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("codesOnTheWire")
    void every_code_on_the_wire_has_its_words_standing_and_place_in_the_list(String list, List<String> codes)
            throws IOException {
        JsonNode entries = entries(list);

        assertThat(entries.findValuesAsText("code")).containsAll(codes);
        assertThat(entries).hasSize(codes.size()).allSatisfy(entry -> {
            assertThat(entry.path("text").asText()).isNotBlank();
            assertThat(STANDINGS).contains(entry.path("standing").asText());
        });
    }

    @ParameterizedTest
    @EnumSource
    void what_is_published_or_quoted_names_its_source(CatalogueKind kind) throws IOException {
        List<JsonNode> known = new ArrayList<>();
        collectKnown(entries(kind.toString()), known);

        assertThat(known).allSatisfy(value -> {
            String standing = value.path("standing").asText();
            assertThat(STANDINGS).contains(standing);
            if (Set.of("published", "secondary", "from-memory", "derived").contains(standing)) {
                assertThat(value.path("source").asText())
                        .as("source of %s", value)
                        .isNotBlank();
            }
        });
        if (kind != CatalogueKind.RULES) {
            assertThat(known).isNotEmpty();
        }
    }

    @Test
    void a_cause_says_where_it_applies_what_tells_it_and_what_it_makes_the_scope() throws IOException {
        JsonNode cause = entry("causes", "hub-seal-leaking");

        assertThat(cause.path("text").asText()).isEqualTo("A hub or axle seal leaks onto the lining");
        assertThat(cause.path("at").asText()).isEqualTo("wheel");
        assertThat(texts(cause.path("brakes"))).containsExactly("drum-simplex", "drum-duplex", "drum-duo-servo");
        assertThat(cause.at("/weights/drum-old/value").decimalValue()).isEqualByComparingTo("4");
        assertThat(cause.at("/weights/drum-old/standing").asText()).isEqualTo("judgement");
        assertThat(cause.path("weights").has("disc-old")).isFalse();
        assertThat(cause.at("/provedBy/0/0/code").asText()).isEqualTo("seal-leaking");
        assertThat(cause.path("evidence").findValuesAsText("code")).contains("one-wheel-low", "seal-leaking");
        assertThat(cause.path("makesScope").findValuesAsText("item")).contains("hub-seal", "shoe-set");
        assertThat(cause.path("leadsTo")).isNotEmpty();
        assertThat(cause.path("standing").asText()).isEqualTo("published");
        assertThat(cause.path("source").asText()).contains("TM 9-2330-335-14&P");
    }

    @Test
    void a_check_lists_its_possible_answers_and_always_that_the_place_was_not_accessible() throws IOException {
        for (JsonNode check : entries("checks")) {
            if (!check.has("minutes")) {
                continue;
            }
            List<String> conditions = check.path("answers").findValuesAsText("condition");
            assertThat(check.path("answers"))
                    .as("answers of %s", check.path("code"))
                    .isNotEmpty();
            if (!check.has("rollerTest")) {
                assertThat(conditions).contains("not-accessible");
            }
            check.path("answers")
                    .forEach(answer -> assertThat(answer.has("measure")).isEqualTo(answer.has("unit")));
        }
    }

    @Test
    void a_rule_has_its_layer_sentence_reason_and_source() throws IOException {
        JsonNode rules = entries("rules");
        Set<String> layers = new TreeSet<>(rules.findValuesAsText("layer"));

        assertThat(layers).containsExactly("causes", "deficiencies", "outcome", "scope", "symptoms", "work");
        assertThat(rules).allSatisfy(rule -> {
            assertThat(rule.path("id").asText()).matches("(DEF|SYM|CAU|SCO|WRK|OUT)-[0-9]{3}");
            assertThat(rule.path("text").asText()).isNotBlank();
            assertThat(rule.path("reason").asText()).isNotBlank();
            assertThat(rule.path("source").asText()).isNotBlank();
        });
    }

    @Test
    void a_regime_shows_each_value_with_the_conditions_under_which_it_holds() throws IOException {
        JsonNode imbalance = null;
        for (JsonNode value : entry("regimes", "gb-annual").path("values")) {
            if (value.at("/says/deficiency").asText().equals("service-imbalance")
                    && value.at("/says/percent").asInt() == 30) {
                imbalance = value;
            }
        }

        assertThat(imbalance).isNotNull();
        assertThat(imbalance.at("/says/place").asText()).isEqualTo("axle");
        assertThat(imbalance.at("/says/bound").asText()).isEqualTo("maximum");
        assertThat(imbalance.path("source").asText()).isEqualTo("testing agency's notice of June 2013");
    }

    @Test
    void the_settings_show_what_a_workshop_can_tune() throws IOException {
        List<String> codes = entries("settings").findValuesAsText("code");

        assertThat(codes)
                .doesNotHaveDuplicates()
                .contains("expected-faults", "strengths", "swing-worth-noting", "twin-parking-cable")
                .containsAll(texts(ThresholdCode.values()));
        assertThat(entry("settings", "drag-force").at("/says/unit").asText()).isEqualTo("kN");
    }

    @ParameterizedTest
    @EnumSource
    void a_code_that_is_not_in_the_list_is_not_found(CatalogueKind kind) {
        Response answer = given().get("/v1/catalogue/" + kind + "/flux-capacitor");

        assertThat(answer.statusCode()).isEqualTo(404);
        assertThat(answer.contentType()).startsWith("application/problem+json");
        assertThat(answer.jsonPath().getString("code")).isEqualTo("not-found");
        assertThat(answer.jsonPath().getString("detail"))
                .isEqualTo(
                        "There is no 'flux-capacitor' among the " + kind + "; /v1/catalogue/" + kind + " lists them.");
    }

    @Test
    void a_list_that_is_not_there_names_those_that_are() {
        Response answer = given().get("/v1/catalogue/wheels/tyre");

        assertThat(answer.statusCode()).isEqualTo(404);
        assertThat(answer.jsonPath().getString("detail")).contains("components, conditions, checks, causes");
    }

    @Test
    void an_entry_is_the_one_of_its_list() throws IOException {
        for (CatalogueKind kind : CatalogueKind.values()) {
            JsonNode first = entries(kind.toString()).get(0);
            String code =
                    first.path(kind == CatalogueKind.RULES ? "id" : "code").asText();
            assertThat(entry(kind.toString(), code)).isEqualTo(first);
        }
    }

    /** A value as its file writes it may speak of another standing: whose limit it is. */
    private static void collectKnown(JsonNode node, List<JsonNode> known) {
        if (node.has("standing")) {
            known.add(node);
        }
        node.properties().stream()
                .filter(member -> !member.getKey().equals("says"))
                .forEach(member -> collectKnown(member.getValue(), known));
        if (node.isArray()) {
            node.forEach(item -> collectKnown(item, known));
        }
    }

    private static JsonNode entries(String list) throws IOException {
        return read("/v1/catalogue/" + list);
    }

    private static JsonNode entry(String list, String code) throws IOException {
        return read("/v1/catalogue/" + list + "/" + code);
    }

    private static JsonNode read(String path) throws IOException {
        Response answer = given().get(path);
        assertThat(answer.statusCode()).isEqualTo(200);
        return Json.mapper().readTree(answer.asString());
    }

    private static List<String> texts(JsonNode array) {
        List<String> texts = new ArrayList<>();
        array.forEach(item -> texts.add(item.asText()));
        return texts;
    }

    private static List<String> texts(Enum<?>... codes) {
        return Arrays.stream(codes).map(Enum::toString).toList();
    }
}
