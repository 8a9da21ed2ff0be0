package org.axlecause;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.axlecause.shared.Json;

/** The events of the scenarios, to be sent of another case. */
final class ScenarioEvents {

    /** As many as there are. */
    static final int ALL = Integer.MAX_VALUE;

    private static final Path SCENARIOS = Path.of("src/test/resources/scenarios");

    private ScenarioEvents() {}

    /** The first events of a scenario, told of the case with this reference; each in an event with an id of its own. */
    static ArrayNode of(String scenario, String reference, int first) throws IOException {
        ArrayNode events = Json.mapper().createArrayNode();
        for (Path file : files(SCENARIOS.resolve(scenario))) {
            for (JsonNode event : Json.mapper().readTree(Files.readString(file))) {
                if (events.size() < first) {
                    events.add(((ObjectNode) event)
                            .put("subject", reference)
                            .put("id", reference + "-" + event.path("id").asText()));
                }
            }
        }
        return events;
    }

    private static List<Path> files(Path scenario) throws IOException {
        try (Stream<Path> files = Files.list(scenario)) {
            return files.filter(file -> file.getFileName().toString().startsWith("given"))
                    .sorted()
                    .toList();
        }
    }
}
