package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.cloudevents.core.v1.CloudEventV1;
import jakarta.inject.Singleton;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.axlecause.shared.Json;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;
import org.jspecify.annotations.Nullable;

/** Takes a message by the HTTP binding of CloudEvents apart into attempts: batched, structured or binary. */
@Singleton
final class Reception {

    static final int MOST_EVENTS = 500;

    private static final int LARGEST = 1024 * 1024;
    private static final int LARGEST_WITH_TRACES = 8 * LARGEST;
    private static final String WITHOUT_TRACES = " where no traces are sent";
    private static final String HEADER_PREFIX = "ce-";

    private final EnvelopeCheck check;

    Reception(EnvelopeCheck check) {
        this.check = check;
    }

    /**
     * The attempts in a message.
     *
     * @param batch whether a list of events was sent, so that a list of receipts is the answer
     * @param attempts one per event, in the order sent
     */
    record Message(boolean batch, List<Attempt> attempts) {}

    /** Takes a message apart; refuses it whole where it can't be read at all. */
    Message message(@Nullable String contentType, Map<String, List<String>> headers, byte[] body) {
        String type = contentType == null ? "application/json" : contentType;
        if (!MediaTypes.isJson(type)) {
            throw RefusedException.because(
                    Reason.UNSUPPORTED_FORMAT,
                    "Content-Type is " + type
                            + "; expected is application/cloudevents+json, application/cloudevents-batch+json, or"
                            + " application/json with ce- headers, in UTF-8.");
        }
        if (body.length > LARGEST_WITH_TRACES) {
            throw tooLarge(body.length, LARGEST_WITH_TRACES, "");
        }
        if (body.length > LARGEST && !mayHoldTrace(body)) {
            throw tooLarge(body.length, LARGEST, WITHOUT_TRACES);
        }
        JsonNode document = Strict.json(body);
        List<JsonNode> events = MediaTypes.isBatch(type) ? batch(document) : List.of(document);
        if (body.length > LARGEST && !hasTrace(document)) {
            throw tooLarge(body.length, LARGEST, WITHOUT_TRACES);
        }
        if (MediaTypes.isBatch(type)) {
            return new Message(true, events.stream().map(check::check).toList());
        }
        if (MediaTypes.isStructured(type)) {
            return new Message(false, List.of(check.check(document)));
        }
        return new Message(false, List.of(binary(type, headers, document)));
    }

    private static List<JsonNode> batch(JsonNode document) {
        if (!document.isArray()) {
            throw RefusedException.malformed(
                    "A batch is a JSON array of events.",
                    List.of(new Problem.Cause(
                            "",
                            "The body is " + SchemaWords.shown(document)
                                    + "; expected is a JSON array of events. Wrap the event in [ ], or send it as"
                                    + " application/cloudevents+json.")));
        }
        if (document.size() > MOST_EVENTS) {
            throw RefusedException.because(
                    Reason.TOO_LARGE,
                    "The batch holds " + document.size() + " events; expected are at most " + MOST_EVENTS
                            + ". Send it in parts.");
        }
        List<JsonNode> events = new ArrayList<>();
        document.forEach(events::add);
        return events;
    }

    /** Whether the name of a trace, or an escaped character that may be part of it, is among the bytes. */
    private static boolean mayHoldTrace(byte[] body) {
        String bytes = new String(body, StandardCharsets.ISO_8859_1);
        return bytes.contains("\"trace\"") || bytes.contains("\\u");
    }

    private static boolean hasTrace(JsonNode document) {
        return !document.findValues("trace").isEmpty();
    }

    private static RefusedException tooLarge(int length, int most, String where) {
        return RefusedException.because(
                Reason.TOO_LARGE,
                "The body is " + length + " bytes; expected are at most " + most + where + ". Send it in parts.");
    }

    private Attempt binary(String contentType, Map<String, List<String>> headers, JsonNode data) {
        ObjectNode event = Json.mapper().createObjectNode();
        List<Problem.Cause> causes = new ArrayList<>();
        headers.forEach((header, values) -> {
            String lower = header.toLowerCase(Locale.ROOT);
            if (!lower.startsWith(HEADER_PREFIX)) {
                return;
            }
            String name = lower.substring(HEADER_PREFIX.length());
            if (name.equals(CloudEventV1.DATACONTENTTYPE) || name.equals("data")) {
                causes.add(new Problem.Cause(
                        "/" + name,
                        "The header ce-" + name
                                + " is not allowed; the content type is the header Content-Type and the data is the"
                                + " body. Leave it out."));
            } else if (values.size() != 1) {
                causes.add(new Problem.Cause(
                        "/" + name, "The header ce-" + name + " is there " + values.size() + " times. Send it once."));
            } else {
                HeaderValue.decoded(values.get(0))
                        .ifPresentOrElse(
                                value -> event.put(name, value),
                                () -> causes.add(new Problem.Cause(
                                        "/" + name,
                                        "The header ce-" + name
                                                + " is no UTF-8 in percent-encoding. Encode it as the HTTP binding of"
                                                + " CloudEvents says.")));
            }
        });
        event.put(CloudEventV1.DATACONTENTTYPE, contentType);
        event.set("data", data);
        Attempt attempt = check.check(event);
        return causes.isEmpty() ? attempt : withCauses(attempt, causes);
    }

    private static Attempt withCauses(Attempt attempt, List<Problem.Cause> headerCauses) {
        List<Problem.Cause> causes = new ArrayList<>(headerCauses);
        Problem other = attempt.problem();
        if (other != null) {
            other.causes().stream()
                    .filter(cause -> headerCauses.stream()
                            .noneMatch(said -> said.pointer().equals(cause.pointer())))
                    .forEach(causes::add);
        }
        return Attempt.refused(
                attempt.source(),
                attempt.id(),
                RefusedException.invalidEnvelope(causes).problem());
    }
}
