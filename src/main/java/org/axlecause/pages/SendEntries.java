package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.access.Actor;
import org.axlecause.casefile.ReadCases;
import org.axlecause.facts.EntryType;
import org.axlecause.intake.AcceptBatch;
import org.axlecause.intake.Receipt;
import org.axlecause.intake.Standing;
import org.axlecause.shared.Json;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;

/**
 * Sends what was typed or tapped on a page, by the way that every sender's events go. An entry has the id of the form that
 * it was made on, and keeps the time at which it came first, so that the same form sent again is a duplicate.
 */
@ApplicationScoped
class SendEntries {

    private static final String ID = "[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}";

    private final AcceptBatch acceptBatch;
    private final ReadCases readCases;
    private final Clock clock;

    SendEntries(AcceptBatch acceptBatch, ReadCases readCases, Clock clock) {
        this.acceptBatch = acceptBatch;
        this.readCases = readCases;
        this.clock = clock;
    }

    /**
     * What a form says.
     *
     * @param part what tells it from the others of its form; empty where there is one
     * @param type type of the event
     * @param data its data
     */
    record Entry(String part, EntryType type, JsonNode data) {}

    /**
     * Where it comes from.
     *
     * @param source source of the events
     * @param reference reference of the case
     * @param form id of the form
     * @param secondsAgo how long ago it was written down, where the page had to wait for its connection
     */
    record Sent(String source, String reference, String form, long secondsAgo) {}

    /** Whether something was new; refuses what the API would refuse, in the same words. */
    boolean send(Sent sent, List<Entry> entries, Actor actor) {
        if (!sent.form().matches(ID)) {
            throw RefusedException.because(
                    Reason.MALFORMED, "The form has no id of ours. Open the page again and send it from there.");
        }
        List<Receipt> receipts = attempt(sent, entries, actor);
        if (receipts.stream().anyMatch(SendEntries::conflicts)) {
            // Why once more: the other of two taps at the same moment may have been stored in between.
            receipts = attempt(sent, entries, actor);
        }
        receipts.stream()
                .map(Receipt::problem)
                .filter(problem -> problem != null)
                .findFirst()
                .ifPresent(problem -> {
                    throw RefusedException.of(problem);
                });
        return receipts.stream().anyMatch(receipt -> receipt.standing() == Standing.ACCEPTED);
    }

    private List<Receipt> attempt(Sent sent, List<Entry> entries, Actor actor) {
        Map<String, String> times = timesOf(sent, actor);
        String now = OffsetDateTime.now(clock)
                .minusSeconds(sent.secondsAgo())
                .withOffsetSameInstant(ZoneOffset.UTC)
                .truncatedTo(ChronoUnit.MILLIS)
                .toString();
        ArrayNode batch = Json.mapper().createArrayNode();
        for (Entry entry : entries) {
            String id = sent.form() + (entry.part().isEmpty() ? "" : "-" + entry.part());
            ObjectNode event = batch.addObject();
            event.put("specversion", "1.0");
            event.put("type", entry.type().toString());
            event.put("source", sent.source());
            event.put("id", id);
            event.put("subject", sent.reference());
            event.put("time", times.getOrDefault(id, now));
            event.put("datacontenttype", "application/json");
            event.set("data", entry.data());
        }
        return acceptBatch.accept(Json.text(batch).getBytes(StandardCharsets.UTF_8), actor);
    }

    private Map<String, String> timesOf(Sent sent, Actor actor) {
        Map<String, String> times = new TreeMap<>();
        try {
            readCases.onRecord(sent.reference(), actor).events().stream()
                    .filter(event -> event.id().source().equals(sent.source()))
                    .forEach(event -> times.put(event.id().id(), event.time().toString()));
        } catch (RefusedException refused) {
            if (refused.problem().status() != Reason.NOT_FOUND.status()) {
                throw refused;
            }
        }
        return times;
    }

    private static boolean conflicts(Receipt receipt) {
        Problem problem = receipt.problem();
        return problem != null && problem.status() == Reason.IDENTITY_CONFLICT.status();
    }
}
