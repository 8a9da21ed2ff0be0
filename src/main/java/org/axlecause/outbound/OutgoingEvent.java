package org.axlecause.outbound;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.cloudevents.core.v1.CloudEventV1;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import org.axlecause.casefile.CaseChange;
import org.axlecause.policy.PolicyVersion;
import org.axlecause.shared.Json;
import org.jspecify.annotations.Nullable;

/**
 * An event for others: a CloudEvent in its JSON format, thin and without personal data. Webhooks and Kafka carry the same
 * bytes.
 *
 * @param id its id, the same over all attempts to deliver it
 * @param type what it tells
 * @param reference reference of the case it is about, or name of the policy
 * @param site code of the site of the case; null while none is known
 * @param createdAt when it happened
 * @param body the event as JSON
 */
record OutgoingEvent(
        UUID id,
        OutgoingType type,
        String reference,
        @Nullable String site,
        OffsetDateTime createdAt,
        String body) {

    /** The events that a change of a case makes, in the order in which they are sent. */
    static List<OutgoingEvent> of(CaseChange change, String tenant, OffsetDateTime now) {
        ObjectNode judged = data(change);
        judged.set("changed", Json.mapper().valueToTree(change.changed()));
        OutgoingEvent first = event(OutgoingType.CASE_JUDGED, change.reference(), change.site(), tenant, judged, now);
        return change.verified()
                ? List.of(
                        first,
                        event(OutgoingType.CASE_VERIFIED, change.reference(), change.site(), tenant, data(change), now))
                : List.of(first);
    }

    /** The event that a publication makes. */
    static OutgoingEvent of(PolicyVersion version, String tenant, OffsetDateTime now) {
        ObjectNode data = Json.mapper()
                .createObjectNode()
                .put("policy", version.name())
                .put("version", version.version())
                .put("effectiveFrom", version.effectiveFrom().toString())
                .put("link", "/v1/policies/" + version.name() + "/versions/" + version.version());
        return event(OutgoingType.POLICY_PUBLISHED, version.name(), null, tenant, data, now);
    }

    private static ObjectNode data(CaseChange change) {
        return Json.mapper()
                .createObjectNode()
                .put("reference", change.reference())
                .put("version", change.version())
                .put("status", change.status())
                .put("link", "/v1/cases/" + change.reference());
    }

    private static OutgoingEvent event(
            OutgoingType type,
            String subject,
            @Nullable String site,
            String tenant,
            ObjectNode data,
            OffsetDateTime now) {
        UUID id = UUID.randomUUID();
        OffsetDateTime moment = now.withOffsetSameInstant(ZoneOffset.UTC).truncatedTo(ChronoUnit.MICROS);
        ObjectNode event = Json.mapper()
                .createObjectNode()
                .put(CloudEventV1.SPECVERSION, "1.0")
                .put(CloudEventV1.ID, id.toString())
                .put(CloudEventV1.SOURCE, "/tenants/" + tenant)
                .put(CloudEventV1.TYPE, type.toString())
                .put(CloudEventV1.SUBJECT, subject)
                .put(CloudEventV1.TIME, moment.toInstant().toString())
                .put(CloudEventV1.DATACONTENTTYPE, "application/json")
                .put("partitionkey", subject);
        event.set("data", data);
        return new OutgoingEvent(id, type, subject, site, moment, Json.text(event));
    }
}
