package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.cloudevents.core.v1.CloudEventV1;
import jakarta.inject.Singleton;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.common.header.Header;
import org.axlecause.shared.Json;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;
import org.jspecify.annotations.Nullable;

/** Takes a record by the Kafka binding of CloudEvents apart into an attempt: structured or binary, never batched. */
@Singleton
final class KafkaReception {

    private static final String CONTENT_TYPE = "content-type";
    private static final String PREFIX = "ce_";

    private final EnvelopeCheck check;

    KafkaReception(EnvelopeCheck check) {
        this.check = check;
    }

    /** The attempt in a record, refused where it can't be read at all. */
    Attempt attempt(ConsumerRecord<byte[], byte[]> sent) {
        try {
            String type = text(sent.headers().lastHeader(CONTENT_TYPE));
            if (type != null && (!MediaTypes.isJson(type) || MediaTypes.isBatch(type))) {
                throw RefusedException.because(
                        Reason.UNSUPPORTED_FORMAT,
                        "The header content-type is " + type
                                + "; expected is application/cloudevents+json, or application/json with ce_ headers.");
            }
            if (sent.value() == null) {
                throw RefusedException.malformed("The record holds no value; send the event as JSON.", List.of());
            }
            JsonNode document = Strict.json(sent.value());
            return type != null && MediaTypes.isStructured(type)
                    ? check.check(document)
                    : check.check(binary(sent, type, document));
        } catch (RefusedException refused) {
            return Attempt.refused(null, null, refused.problem());
        }
    }

    private static ObjectNode binary(ConsumerRecord<byte[], byte[]> sent, @Nullable String type, JsonNode data) {
        ObjectNode event = Json.mapper().createObjectNode();
        List<Problem.Cause> causes = new ArrayList<>();
        for (Header header : sent.headers()) {
            if (!header.key().startsWith(PREFIX)) {
                continue;
            }
            String name = header.key().substring(PREFIX.length());
            String value = text(header);
            if (value == null || name.equals(CloudEventV1.DATACONTENTTYPE) || name.equals("data") || event.has(name)) {
                causes.add(new Problem.Cause(
                        "/" + name,
                        "The header " + header.key() + " is no UTF-8, or is there twice, or isn't allowed. Send each"
                                + " attribute once, the content type as the header content-type, the data as the"
                                + " value."));
            } else {
                event.put(name, value);
            }
        }
        if (!causes.isEmpty()) {
            throw RefusedException.invalidEnvelope(causes);
        }
        if (type != null) {
            event.put(CloudEventV1.DATACONTENTTYPE, type);
        }
        event.set("data", data);
        return event;
    }

    private static @Nullable String text(@Nullable Header header) {
        if (header == null || header.value() == null) {
            return null;
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(header.value()))
                    .toString();
        } catch (CharacterCodingException e) {
            return null;
        }
    }
}
