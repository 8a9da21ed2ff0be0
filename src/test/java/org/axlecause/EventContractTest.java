package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.axlecause.facts.EntryType;
import org.junit.jupiter.api.Test;

/** The contract of the events by AsyncAPI 3.0: it lists what is taken and told, and every reference in it leads somewhere. */
class EventContractTest {

    private static final Path FOLDER = Path.of("openapi");

    private final JsonNode document = read();

    @Test
    void every_type_of_event_that_is_taken_is_a_message_in() {
        assertThat(names("eventsIn"))
                .containsExactlyInAnyOrderElementsOf(Arrays.stream(EntryType.values())
                        .map(EntryType::toString)
                        .toList());
    }

    @Test
    void kafka_carries_the_events_of_http_in_and_of_webhooks_out() {
        assertThat(names("recordsIn")).isNotEmpty().isEqualTo(names("eventsIn"));
        assertThat(names("recordsOut")).isNotEmpty().isEqualTo(names("eventsOut"));
    }

    @Test
    void a_message_names_its_type_and_its_schema_alike() {
        document.path("components").path("messages").forEach(message -> {
            JsonNode own = message.path("payload").path("allOf").path(1).path("properties");
            String name = message.path("name").asText();
            String schema = own.path("data").path("$ref").asText();

            assertThat(own.path("type").path("const").asText()).isEqualTo(name);
            if (schema.startsWith("schemas/")) {
                assertThat("org.axlecause." + schema.substring("schemas/".length()))
                        .isEqualTo(name + ".json");
            }
        });
    }

    @Test
    void every_reference_leads_somewhere() {
        List<String> references = new ArrayList<>();
        collect(document, references);

        assertThat(references).hasSizeGreaterThan(30).allSatisfy(reference -> {
            if (reference.startsWith("#")) {
                assertThat(document.at(reference.substring(1)).isMissingNode())
                        .as(reference)
                        .isFalse();
            } else {
                assertThat(Files.exists(FOLDER.resolve(reference)))
                        .as(reference)
                        .isTrue();
            }
        });
    }

    private List<String> names(String channel) {
        List<String> names = new ArrayList<>();
        document.path("channels")
                .path(channel)
                .path("messages")
                .forEach(message ->
                        names.add(document.at(message.path("$ref").asText().substring(1))
                                .path("name")
                                .asText()));
        return names;
    }

    private static void collect(JsonNode node, List<String> references) {
        node.properties().forEach(member -> {
            if (member.getKey().equals("$ref")) {
                references.add(member.getValue().asText());
            }
        });
        node.forEach(child -> collect(child, references));
    }

    private static JsonNode read() {
        try {
            return new YAMLMapper().readTree(FOLDER.resolve("events.yaml").toFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
