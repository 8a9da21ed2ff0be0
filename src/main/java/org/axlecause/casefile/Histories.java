package org.axlecause.casefile;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.EntryType;
import org.axlecause.facts.EntryWithdrawn;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.TestFigures;
import org.axlecause.shared.Json;
import org.axlecause.shared.Recent;

/**
 * Reads stored events and kept figures back into entries. What was read lately is kept by its text, since a case is read
 * anew with each event; long texts, such as traces, are not.
 */
final class Histories {

    private static final int MOST_KEPT = 2_000;
    private static final int LONGEST_KEPT = 8_192;
    private static final Recent<String, Entry> ENTRIES = new Recent<>(MOST_KEPT);
    private static final Recent<String, TestFigures> FIGURES = new Recent<>(MOST_KEPT);

    private Histories() {}

    /** The entries that the events of a case say. */
    static List<Recorded> read(List<StoredEvent> events, Map<EntryId, String> figures) {
        List<Recorded> entries = new ArrayList<>();
        for (StoredEvent event : events) {
            String kept = figures.get(event.id());
            entries.add(new Recorded(
                    event.id(),
                    event.time(),
                    known(ENTRIES, event.body(), body -> entry(event.type(), body)),
                    kept == null ? null : known(FIGURES, kept, Histories::testFigures)));
        }
        entries.sort(null);
        return entries;
    }

    /** The entries of one type that were not taken back. */
    static List<Recorded> standing(List<Recorded> entries, Class<? extends Entry> type) {
        List<EntryId> withdrawn = entries.stream()
                .filter(recorded -> recorded.entry() instanceof EntryWithdrawn)
                .map(recorded -> ((EntryWithdrawn) recorded.entry()).target())
                .toList();
        return entries.stream()
                .filter(recorded -> type.isInstance(recorded.entry()) && !withdrawn.contains(recorded.id()))
                .toList();
    }

    /** What the presentations of a case say, as it was sent. */
    static Map<EntryId, JsonNode> presentations(List<StoredEvent> events) {
        return events.stream()
                .filter(event -> event.type().equals(EntryType.VEHICLE_PRESENTED.toString()))
                .collect(Collectors.toMap(StoredEvent::id, event -> data(event.body())));
    }

    private static <T> T known(Recent<String, T> recent, String text, Function<String, T> reader) {
        if (text.length() > LONGEST_KEPT) {
            return reader.apply(text);
        }
        T known = recent.find(text);
        return known == null ? recent.keep(text, reader.apply(text)) : known;
    }

    private static Entry entry(String code, String body) {
        EntryType type = Objects.requireNonNull(EntryType.of(code), code);
        return EntryReader.read(type, data(body));
    }

    private static JsonNode data(String body) {
        return Json.read(body).path("data");
    }

    private static TestFigures testFigures(String kept) {
        try {
            return Json.mapper().readValue(kept, TestFigures.class);
        } catch (JsonProcessingException broken) {
            throw new IllegalStateException("Kept figures can't be read", broken);
        }
    }
}
