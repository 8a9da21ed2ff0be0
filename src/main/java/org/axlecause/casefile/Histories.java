package org.axlecause.casefile;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.EntryType;
import org.axlecause.facts.EntryWithdrawn;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.TestFigures;
import org.axlecause.shared.Json;
import org.jspecify.annotations.Nullable;

/** Reads stored events and kept figures back into entries. */
final class Histories {

    private Histories() {}

    /** The entries that the events of a case say. */
    static List<Recorded> read(List<StoredEvent> events, Map<EntryId, String> figures) {
        List<Recorded> entries = new ArrayList<>();
        for (StoredEvent event : events) {
            EntryType type = Objects.requireNonNull(EntryType.of(event.type()), event.type());
            entries.add(new Recorded(
                    event.id(),
                    event.time(),
                    EntryReader.read(type, Json.read(event.body()).path("data")),
                    testFigures(figures.get(event.id()))));
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

    static @Nullable TestFigures testFigures(@Nullable String kept) {
        try {
            return kept == null ? null : Json.mapper().readValue(kept, TestFigures.class);
        } catch (JsonProcessingException broken) {
            throw new IllegalStateException("Kept figures can't be read", broken);
        }
    }
}
