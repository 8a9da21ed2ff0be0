package org.axlecause.casefile;

import com.fasterxml.jackson.core.JsonProcessingException;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.EntryType;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.measurement.MeasureTest;
import org.axlecause.shared.Json;

/** Makes the figures of a case's roller tests once and keeps them with the tests. */
@ApplicationScoped
public class MeasureTests {

    private final EventStore events;
    private final FiguresStore figures;

    MeasureTests(EventStore events, FiguresStore figures) {
        this.events = events;
        this.figures = figures;
    }

    /** Keeps the figures of those of these entries that are roller tests; the case is locked. */
    public void keep(String reference, Map<EntryId, Entry> entries) {
        Map<EntryId, String> made = new TreeMap<>();
        entries.forEach((id, entry) -> {
            if (entry instanceof RollerTestRecorded test) {
                made.put(id, Json.text(MeasureTest.of(id, test)));
            }
        });
        figures.save(reference, made);
    }

    /** Keeps the figures of roller tests of a locked case that have none, because measuring them had faulted. */
    void keepMissing(String reference) {
        Map<EntryId, String> kept = figures.find(reference);
        List<StoredEvent> without = events.history(reference).stream()
                .filter(event -> event.type().equals(EntryType.ROLLER_TEST_RECORDED.toString()))
                .filter(event -> !kept.containsKey(event.id()))
                .toList();
        Map<EntryId, Entry> entries = new TreeMap<>();
        without.forEach(event -> entries.put(event.id(), entry(event)));
        keep(reference, entries);
    }

    private static Entry entry(StoredEvent event) {
        try {
            return EntryReader.read(
                    EntryType.ROLLER_TEST_RECORDED,
                    Json.mapper().readTree(event.body()).path("data"));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("stored event " + event.id() + " can't be read", e);
        }
    }
}
