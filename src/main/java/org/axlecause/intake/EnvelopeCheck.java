package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.cloudevents.core.v1.CloudEventV1;
import jakarta.inject.Singleton;
import java.net.URI;
import java.net.URISyntaxException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.EntryType;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;
import org.jspecify.annotations.Nullable;

/** Checks an event in the CloudEvents JSON format, envelope and data, and says everything that is wrong at once. */
@Singleton
final class EnvelopeCheck {

    private static final String DATA = "data";
    private static final String DATA_BASE64 = "data_base64";
    private static final Pattern NAME = Pattern.compile("[a-z0-9]+");
    private static final Pattern SUBJECT = Pattern.compile("[A-Za-z0-9._~-]{1,64}");
    private static final int LONGEST_SOURCE = 500;
    private static final int LONGEST_ID = 200;
    private static final int LONGEST_VALUE = 2000;

    private final PayloadCheck payload;

    EnvelopeCheck(PayloadCheck payload) {
        this.payload = payload;
    }

    Attempt check(JsonNode sent) {
        if (!(sent instanceof ObjectNode event)) {
            return Attempt.refused(
                    null,
                    null,
                    RefusedException.invalidEnvelope(List.of(new Problem.Cause(
                                    "",
                                    "The event is " + SchemaWords.shown(sent)
                                            + "; expected is a JSON object with the attributes of CloudEvents 1.0.2."
                                            + " Send one object per event.")))
                            .problem());
        }
        Envelope envelope = new Envelope(event);
        envelope.check();
        JsonNode data = envelope.data();
        List<Problem.Cause> aboutData = new ArrayList<>();
        EntryType type = envelope.type;
        if (data != null && type != null) {
            aboutData.addAll(Wording.aboutNumbers("/" + DATA, data));
            // Why not both: working with a number of a billion digits would take the memory of the whole service.
            if (aboutData.isEmpty()) {
                aboutData.addAll(below("/" + DATA, payload.causes(type, data)));
            }
            aboutData.addAll(Wording.aboutTexts("/" + DATA, data));
        }
        return envelope.attempt(data, aboutData);
    }

    private static List<Problem.Cause> below(String pointer, List<Problem.Cause> causes) {
        return causes.stream()
                .map(cause -> new Problem.Cause(pointer + cause.pointer(), cause.text()))
                .toList();
    }

    private static boolean isAttribute(String name) {
        return !name.equals(DATA) && !name.equals(DATA_BASE64);
    }

    private static final class Envelope {

        private final ObjectNode event;
        private final List<Problem.Cause> causes = new ArrayList<>();
        private final List<Problem.Cause> aboutFormat = new ArrayList<>();
        private final List<Problem.Cause> aboutType = new ArrayList<>();
        private @Nullable EntryType type;
        private @Nullable OffsetDateTime time;

        Envelope(ObjectNode event) {
            this.event = event;
        }

        void check() {
            specversion();
            source();
            text(CloudEventV1.ID, LONGEST_ID, "an id of 1 to 200 characters, unique at its source");
            type();
            subject();
            time();
            datacontenttype();
            extensions();
        }

        private @Nullable String text(String name, int longest, String expected) {
            JsonNode value = event.path(name);
            if (value.isMissingNode() || value.isNull()) {
                wrong(name, "`" + name + "` is missing; expected is " + expected + ". Add it.");
                return null;
            }
            String text = value.textValue();
            if (text == null || text.isEmpty() || text.length() > longest || hasControls(text)) {
                wrong(
                        name,
                        "`" + name + "` is " + SchemaWords.shown(value) + "; expected is " + expected
                                + ". Correct it.");
                return null;
            }
            return text;
        }

        private void wrong(String name, String words) {
            causes.add(new Problem.Cause("/" + SchemaWords.escaped(name), words));
        }

        private void specversion() {
            String version = text(CloudEventV1.SPECVERSION, LONGEST_ID, "\"1.0\"");
            if (version != null && !version.equals("1.0")) {
                wrong(
                        CloudEventV1.SPECVERSION,
                        "`specversion` is \"" + version + "\"; expected is \"1.0\". Send CloudEvents 1.0.");
            }
        }

        private void source() {
            String expected = "a URI reference of 1 to 500 characters";
            String source = text(CloudEventV1.SOURCE, LONGEST_SOURCE, expected);
            if (source != null && !isUriReference(source)) {
                wrong(
                        CloudEventV1.SOURCE,
                        "`source` is \"" + source + "\"; expected is " + expected
                                + " such as /sites/quay-street. Percent-encode what a URI can't hold.");
            }
        }

        private void type() {
            String sent = text(CloudEventV1.TYPE, LONGEST_ID, "one of the event types of the contract");
            if (sent == null) {
                return;
            }
            type = EntryType.of(sent);
            if (type == null) {
                aboutType.add(new Problem.Cause(
                        "/type",
                        "`type` is \"" + sent + "\", which is unknown here; expected is one of "
                                + Arrays.stream(EntryType.values())
                                        .map(EntryType::toString)
                                        .collect(Collectors.joining(", "))
                                + ". Correct it or send this event elsewhere."));
            }
        }

        private void subject() {
            String expected = "the case reference, 1 to 64 letters, digits and . _ ~ -";
            String subject = text(CloudEventV1.SUBJECT, LONGEST_VALUE, expected);
            if (subject != null && !SUBJECT.matcher(subject).matches()) {
                wrong(
                        CloudEventV1.SUBJECT,
                        "`subject` is " + SchemaWords.shown(event.path(CloudEventV1.SUBJECT)) + "; expected is "
                                + expected + ". Correct it.");
            }
        }

        private void time() {
            String expected = "a time by RFC 3339 with its offset, such as 2026-03-02T08:15:00Z";
            String sent = text(CloudEventV1.TIME, LONGEST_ID, expected);
            if (sent == null) {
                return;
            }
            Optional<OffsetDateTime> read = EventTime.of(sent);
            time = read.orElse(null);
            if (read.isEmpty()) {
                wrong(
                        CloudEventV1.TIME,
                        "`time` is \"" + sent + "\"; expected is " + expected
                                + ". Send when it happened in the workshop.");
            }
        }

        private void datacontenttype() {
            JsonNode sent = event.path(CloudEventV1.DATACONTENTTYPE);
            if (sent.isMissingNode() || sent.isNull()) {
                return;
            }
            if (!sent.isTextual() || !MediaTypes.isJson(sent.textValue())) {
                aboutFormat.add(new Problem.Cause(
                        "/datacontenttype",
                        "`datacontenttype` is " + SchemaWords.shown(sent)
                                + "; expected is application/json. Send the data as JSON."));
            }
        }

        private void extensions() {
            event.properties().forEach(member -> {
                String name = member.getKey();
                if (!isAttribute(name)) {
                    return;
                }
                JsonNode value = member.getValue();
                if (!NAME.matcher(name).matches()) {
                    wrong(
                            name,
                            "`" + name + "` is no attribute name; expected are small letters a to z and digits. Rename"
                                    + " it, or put it into the data.");
                } else if (!isPlain(value) && !isCore(name)) {
                    wrong(
                            name,
                            "`" + name + "` is " + SchemaWords.shown(value)
                                    + "; an extension is a text of at most 2000 characters, a whole number or true or"
                                    + " false. Put structured content into the data.");
                }
            });
        }

        private static boolean isCore(String name) {
            return List.of(
                            CloudEventV1.SPECVERSION,
                            CloudEventV1.SOURCE,
                            CloudEventV1.ID,
                            CloudEventV1.TYPE,
                            CloudEventV1.SUBJECT,
                            CloudEventV1.TIME,
                            CloudEventV1.DATACONTENTTYPE)
                    .contains(name);
        }

        private static boolean isPlain(JsonNode value) {
            return value.isNull()
                    || value.isBoolean()
                    || value.isInt()
                    || (value.isTextual()
                            && value.textValue().length() <= LONGEST_VALUE
                            && !hasControls(value.textValue()));
        }

        private @Nullable JsonNode data() {
            JsonNode data = event.path(DATA);
            JsonNode encoded = event.path(DATA_BASE64);
            boolean hasData = !data.isMissingNode() && !data.isNull();
            boolean hasEncoded = !encoded.isMissingNode() && !encoded.isNull();
            if (hasData && hasEncoded) {
                wrong(
                        DATA_BASE64,
                        "`data` and `data_base64` are both there; expected is one. Leave `data_base64` out.");
                return null;
            }
            if (hasEncoded) {
                return decoded(encoded);
            }
            if (!hasData) {
                wrong(DATA, "`data` is missing; expected is the content of the event as a JSON object. Add it.");
                return null;
            }
            return data;
        }

        private @Nullable JsonNode decoded(JsonNode encoded) {
            try {
                return Strict.json(encoded.isTextual() ? Base64.getDecoder().decode(encoded.textValue()) : new byte[0]);
            } catch (IllegalArgumentException | RefusedException notJson) {
                wrong(
                        DATA_BASE64,
                        "`data_base64` is no JSON in base64 (RFC 4648); expected is the content of the event. Send it"
                                + " as `data`.");
                return null;
            }
        }

        Attempt attempt(@Nullable JsonNode data, List<Problem.Cause> aboutData) {
            String source = event.path(CloudEventV1.SOURCE).textValue();
            String id = event.path(CloudEventV1.ID).textValue();
            EntryType known = type;
            OffsetDateTime when = time;
            List<Problem.Cause> all = new ArrayList<>(causes);
            all.addAll(aboutFormat);
            all.addAll(aboutType);
            all.addAll(aboutData);
            if (all.isEmpty() && known != null && when != null && data != null && source != null && id != null) {
                ObjectNode attributes = event.deepCopy();
                attributes.remove(List.of(DATA, DATA_BASE64));
                attributes.removeIf(JsonNode::isNull);
                return Attempt.passed(new IncomingEvent(
                        new EntryId(source, id),
                        known,
                        event.path(CloudEventV1.SUBJECT).asText(),
                        when,
                        attributes,
                        data));
            }
            return Attempt.refused(
                    presentable(source), presentable(id), problem(all).problem());
        }

        private RefusedException problem(List<Problem.Cause> all) {
            if (!causes.isEmpty()) {
                return RefusedException.invalidEnvelope(all);
            }
            if (!aboutFormat.isEmpty()) {
                return RefusedException.because(
                        Reason.UNSUPPORTED_FORMAT, "The data of the event is not JSON; see the causes.", all);
            }
            if (!aboutType.isEmpty()) {
                return RefusedException.because(
                        Reason.INVALID_PAYLOAD,
                        "unknown-event-type",
                        "Events of this type aren't taken here; see the causes.",
                        all);
            }
            return RefusedException.invalidPayload(all);
        }

        private static @Nullable String presentable(@Nullable String text) {
            return text == null || hasControls(text) || text.length() > LONGEST_SOURCE ? null : text;
        }

        private static boolean hasControls(String text) {
            return text.codePoints()
                    .anyMatch(c -> Character.isISOControl(c)
                            || (c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE)
                            || (c & 0xFFFE) == 0xFFFE
                            || (c >= 0xFDD0 && c <= 0xFDEF));
        }

        private static boolean isUriReference(String text) {
            try {
                return new URI(text).toASCIIString().equals(text);
            } catch (URISyntaxException notAUri) {
                return false;
            }
        }
    }
}
