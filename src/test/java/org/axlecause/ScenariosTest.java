package org.axlecause;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Whole cases through HTTP: what was sent, the whole document that must come back at every stage, and why. Only the hash of the rule
 * files is left out of the comparison. {@code -Dscenarios.write=true} writes what came back; read it before you keep it.
 */
@QuarkusTest
class ScenariosTest {

    private static final Path SCENARIOS = Path.of("src/test/resources/scenarios");
    private static final ObjectMapper PRETTY = Json.mapper().copy().enable(SerializationFeature.INDENT_OUTPUT);

    @BeforeEach
    void the_sites_of_the_scenarios_exist() {
        for (String site : List.of("quay-street", "mill-bridge")) {
            given().contentType("application/json")
                    .body("""
                            {"name": "%s", "timeZone": "Europe/London", "currency": "GBP", "regime": "gb-annual"}
                            """.formatted(site))
                    .put("/v1/sites/" + site)
                    .then()
                    .statusCode(200);
        }
    }

    static List<String> scenarios() throws IOException {
        try (Stream<Path> folders = Files.list(SCENARIOS)) {
            return folders.map(folder -> folder.getFileName().toString())
                    .sorted()
                    .toList();
        }
    }

    @Test
    void there_are_at_least_ten_scenarios_and_each_says_why() throws IOException {
        assertThat(scenarios())
                .hasSizeGreaterThanOrEqualTo(10)
                .allSatisfy(scenario -> assertThat(
                                Files.readAllLines(SCENARIOS.resolve(scenario).resolve("why.md")))
                        .hasSizeBetween(1, 4));
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void the_document_of_the_case_is_what_the_scenario_expects(String scenario) throws IOException {
        for (Path given : stages(scenario)) {
            the_document_is_as_expected(given, Path.of(given.toString().replace("given", "expected")));
        }
    }

    /** A scenario is one batch of events, or several one after the other, each with the document that it leads to. */
    private static List<Path> stages(String scenario) throws IOException {
        try (Stream<Path> files = Files.list(SCENARIOS.resolve(scenario))) {
            return files.filter(file -> file.getFileName().toString().startsWith("given"))
                    .sorted()
                    .toList();
        }
    }

    private static void the_document_is_as_expected(Path events, Path expected) throws IOException {
        String answer = given().header("Prefer", "return=representation")
                .contentType("application/cloudevents-batch+json; charset=UTF-8")
                .body(Files.readString(events))
                .post("/v1/events")
                .then()
                .statusCode(200)
                .extract()
                .asString();

        JsonNode document = withoutRulebook(Json.mapper().readTree(answer));
        if (Boolean.getBoolean("scenarios.write")) {
            Files.writeString(expected, PRETTY.writeValueAsString(document) + "\n");
        }
        assertThat(PRETTY.writeValueAsString(document))
                .as("document after %s", events)
                .isEqualTo(PRETTY.writeValueAsString(Json.mapper().readTree(Files.readString(expected))));
    }

    private static JsonNode withoutRulebook(JsonNode document) {
        assertThat(document.path("rulebook").asText())
                .as("rulebook in %s", document)
                .isNotBlank();
        ((ObjectNode) document).remove("rulebook");
        return document;
    }
}
