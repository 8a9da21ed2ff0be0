package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.inject.Alternative;
import jakarta.inject.Singleton;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import org.axlecause.casefile.CaseColumns;
import org.axlecause.casefile.CaseJudge;
import org.axlecause.casefile.CaseStore;
import org.axlecause.casefile.EventStore;
import org.axlecause.casefile.JudgedCase;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.History;

/** Judges only that it has judged, and faults when it is told to; not even in the same way each time. */
@Alternative
@Singleton
class FaultyJudge implements CaseJudge {

    enum Mood {
        WELL,
        FAULTS,
        BREAKS_THE_TRANSACTION
    }

    volatile Mood mood = Mood.WELL;

    private final EventStore events;
    private final CaseStore cases;

    FaultyJudge(EventStore events, CaseStore cases) {
        this.events = events;
        this.cases = cases;
    }

    @Override
    public String judgeAndKeep(String reference) {
        OffsetDateTime day = OffsetDateTime.parse("2026-03-02T08:15:00Z");
        int version = events.history(reference).size();
        String status = mood == Mood.BREAKS_THE_TRANSACTION ? null : "open";
        String document = "{\"reference\":\"" + reference + "\",\"status\":\"open\",\"version\":" + version + "}";
        cases.save(
                reference,
                new JudgedCase(
                        new CaseColumns(null, status, day, day.toLocalDate(), version, null, null),
                        document,
                        "policy",
                        "rulebook",
                        List.of(),
                        List.of()),
                day);
        if (mood == Mood.FAULTS) {
            throw new IllegalStateException("a rule has faulted");
        }
        return document;
    }

    @Override
    public String judge(History history, Map<EntryId, JsonNode> data, LocalDate asOf) {
        throw new IllegalStateException("not asked here");
    }
}
