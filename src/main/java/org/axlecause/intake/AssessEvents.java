package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.access.Actor;
import org.axlecause.casefile.CaseJudge;
import org.axlecause.casefile.EntryReader;
import org.axlecause.casefile.PersonalValue;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.History;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.measurement.MeasureTest;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** Judges the events of one case without storing anything; one bad event refuses them all. */
@ApplicationScoped
class AssessEvents {

    private static final int MALFORMED = 400;

    private final TenantTransaction transaction;
    private final CaseJudge judge;
    private final SiteCheck siteCheck;

    AssessEvents(TenantTransaction transaction, CaseJudge judge, SiteCheck siteCheck) {
        this.transaction = transaction;
        this.judge = judge;
        this.siteCheck = siteCheck;
    }

    /** The case document. */
    String assess(List<Attempt> attempts, @Nullable LocalDate asOf, Actor actor) {
        List<IncomingEvent> events = sound(attempts);
        String reference = events.get(0).subject();
        return transaction.call(actor.tenant(), () -> {
            refuse(siteProblems(events, actor));
            Map<EntryId, JsonNode> data = new TreeMap<>();
            List<Recorded> recorded = recorded(events, data);
            return judge.judge(new History(reference, recorded), data, asOf);
        });
    }

    private static List<IncomingEvent> sound(List<Attempt> attempts) {
        if (attempts.isEmpty()) {
            throw RefusedException.invalidPayload(List.of(new Problem.Cause(
                    "", "The batch is empty; expected are the events of one case. Send at least one.")));
        }
        List<Problem> problems = new ArrayList<>();
        List<IncomingEvent> events = new ArrayList<>();
        for (int i = 0; i < attempts.size(); i++) {
            Problem problem = attempts.get(i).problem();
            IncomingEvent event = attempts.get(i).event();
            if (problem != null) {
                problems.add(at(i, problem));
            } else if (event != null) {
                events.add(event);
                String first = events.get(0).subject();
                if (!event.subject().equals(first)) {
                    problems.add(at(i, otherCase(event.subject(), first)));
                }
            }
        }
        refuse(problems);
        return events;
    }

    private static Problem otherCase(String subject, String first) {
        return RefusedException.invalidPayload(List.of(new Problem.Cause(
                        "/subject",
                        "`subject` is \"" + subject + "\" and that of the first event \"" + first
                                + "\"; expected are events of one case. Send one case at a time.")))
                .problem();
    }

    private List<Problem> siteProblems(List<IncomingEvent> events, Actor actor) {
        List<Problem> problems = new ArrayList<>();
        for (int i = 0; i < events.size(); i++) {
            int index = i;
            siteCheck.whatIsWrong(events.get(i), null, actor).ifPresent(problem -> problems.add(at(index, problem)));
        }
        return problems;
    }

    private static Problem at(int index, Problem problem) {
        List<Problem.Cause> causes = problem.causes().isEmpty()
                ? List.of(new Problem.Cause("/" + index, problem.detail() == null ? problem.title() : problem.detail()))
                : problem.causes().stream()
                        .map(cause -> new Problem.Cause("/" + index + cause.pointer(), cause.text()))
                        .toList();
        return new Problem(
                problem.type(),
                problem.title(),
                problem.status(),
                problem.detail(),
                problem.instance(),
                problem.code(),
                causes);
    }

    private static void refuse(List<Problem> problems) {
        if (problems.isEmpty()) {
            return;
        }
        List<Problem.Cause> causes =
                problems.stream().flatMap(problem -> problem.causes().stream()).toList();
        throw problems.stream().anyMatch(problem -> problem.status() == MALFORMED)
                ? RefusedException.invalidEnvelope(causes)
                : RefusedException.invalidPayload(causes);
    }

    private static List<Recorded> recorded(List<IncomingEvent> events, Map<EntryId, JsonNode> kept) {
        Map<PersonalValue, String> tokens = new TreeMap<>();
        Map<EntryId, String> digests = new TreeMap<>();
        List<Recorded> recorded = new ArrayList<>();
        List<Problem> conflicts = new ArrayList<>();
        for (int i = 0; i < events.size(); i++) {
            IncomingEvent event = events.get(i);
            JsonNode data = PersonalData.replaced(
                    event.type(),
                    event.data(),
                    value -> tokens.computeIfAbsent(value, unseen -> unseen.kind() + "-" + (tokens.size() + 1)));
            String digest = Canonical.digest(event, data);
            String before = digests.putIfAbsent(event.id(), digest);
            if (before == null) {
                recorded.add(recorded(event, EntryReader.read(event.type(), data)));
                kept.put(event.id(), data);
            } else if (!before.equals(digest)) {
                conflicts.add(at(i, twice(event.id())));
            }
        }
        refuse(conflicts);
        return recorded;
    }

    private static Problem twice(EntryId id) {
        return RefusedException.invalidPayload(List.of(new Problem.Cause(
                        "/id",
                        "`id` is \"" + id.id()
                                + "\" a second time with other content; expected is one content per source and id."
                                + " Give the event another id.")))
                .problem();
    }

    private static Recorded recorded(IncomingEvent event, Entry entry) {
        return new Recorded(
                event.id(),
                event.time(),
                entry,
                entry instanceof RollerTestRecorded test ? MeasureTest.of(event.id(), test) : null);
    }
}
