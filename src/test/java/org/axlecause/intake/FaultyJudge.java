package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.inject.Alternative;
import jakarta.inject.Singleton;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.axlecause.casefile.CaseColumns;
import org.axlecause.casefile.CaseJudge;
import org.axlecause.casefile.CaseStore;
import org.axlecause.casefile.EventStore;
import org.axlecause.casefile.JudgedCase;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.History;
import org.axlecause.inference.RuleBase;
import org.axlecause.inference.RuleBench;
import org.hibernate.exception.JDBCConnectionException;

/** Judges only that it has judged, and faults when it is told to; not even in the same way each time. */
@Alternative
@Singleton
class FaultyJudge implements CaseJudge {

    enum Mood {
        WELL,
        FAULTS,
        BREAKS_THE_TRANSACTION,
        LOSES_THE_DATABASE,
        RUNS_FOR_EVER
    }

    private static final RuleBase ENDLESS = RuleBench.endless();

    volatile Mood mood = Mood.WELL;

    /** Cases that it judges in another mood. */
    final Map<String, Mood> moodFor = new ConcurrentHashMap<>();

    private final EventStore events;
    private final CaseStore cases;

    FaultyJudge(EventStore events, CaseStore cases) {
        this.events = events;
        this.cases = cases;
    }

    @Override
    public String judgeAndKeep(String reference) {
        OffsetDateTime day = OffsetDateTime.parse("2026-03-02T08:15:00Z");
        Mood mood = moodFor.getOrDefault(reference, this.mood);
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
                        Set.of()),
                day);
        if (mood == Mood.FAULTS) {
            throw new IllegalStateException("a rule has faulted");
        }
        if (mood == Mood.LOSES_THE_DATABASE) {
            throw new JDBCConnectionException("a site can't be read", new SQLException("gone", "08006"));
        }
        if (mood == Mood.RUNS_FOR_EVER) {
            ENDLESS.conclude(List.of(1));
        }
        return document;
    }

    @Override
    public String judge(History history, Map<EntryId, JsonNode> data, LocalDate asOf) {
        throw new IllegalStateException("not asked here");
    }
}
