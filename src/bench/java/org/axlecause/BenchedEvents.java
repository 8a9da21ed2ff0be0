package org.axlecause;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.axlecause.shared.Json;

/** Events of told cases under any reference, as a workshop's system posts them. */
final class BenchedEvents {

    private static final Path SCENARIOS = Path.of("src/test/resources/scenarios");
    private static final String TEST = "wet-rollers-say-nothing";
    private static final String REPAIR = "oiled-lining-and-seized-cable-repaired";
    private static final String REFERENCE = "\u0000reference";
    private static final List<String> MORE_THAN_PEAKS = List.of("drag", "fluctuation", "locked");

    private final List<String> peaksOnly =
            texts(events(TEST).stream().map(BenchedEvents::peaksAlone).toList());
    private final List<String> repair = texts(events(REPAIR));

    /** How many events a whole repair has. */
    int repairLength() {
        return repair.size();
    }

    /** The presentation of the case whose roller test gives ten facts. */
    String presented(String reference) {
        return named(peaksOnly.get(0), reference);
    }

    /** The roller test, peaks and axle loads alone. */
    String tested(String reference) {
        return named(peaksOnly.get(1), reference);
    }

    /** A batch of these events. */
    static String batch(List<String> events) {
        return "[" + String.join(",", events) + "]";
    }

    /** Events of a repair, from the first up to but without the last of these numbers. */
    List<String> repair(String reference, int from, int to) {
        return repair.subList(from, to).stream()
                .map(event -> named(event, reference))
                .collect(Collectors.toCollection(ArrayList::new));
    }

    private static String named(String event, String reference) {
        return event.replace(REFERENCE, reference);
    }

    private static List<JsonNode> events(String scenario) {
        try {
            List<JsonNode> events = new ArrayList<>();
            Json.mapper()
                    .readTree(Files.readString(SCENARIOS.resolve(scenario).resolve("given.json")))
                    .forEach(events::add);
            return events;
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static JsonNode peaksAlone(JsonNode event) {
        ObjectNode data = (ObjectNode) event.path("data");
        if (data.path("axles") instanceof ArrayNode axles) {
            data.remove(List.of("conditions", "surface"));
            for (JsonNode axle : axles) {
                for (String side : List.of("left", "right")) {
                    ((ObjectNode) axle.path(side)).remove(MORE_THAN_PEAKS);
                }
            }
        }
        return event;
    }

    /** Ids are unique by the reference that they begin with. */
    private static List<String> texts(List<JsonNode> events) {
        List<String> texts = new ArrayList<>();
        for (int number = 0; number < events.size(); number++) {
            ObjectNode event = events.get(number).deepCopy();
            event.put("subject", REFERENCE);
            event.put("id", REFERENCE + "-" + number);
            texts.add(event.toString().replace("\\u0000", "\u0000"));
        }
        return List.copyOf(texts);
    }
}
