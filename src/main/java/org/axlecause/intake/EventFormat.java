package org.axlecause.intake;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** An event in the JSON format of CloudEvents, for the contract alone; extensions are further members. */
@Schema(
        name = "Event",
        description = "An event in the JSON format of CloudEvents 1.0.2; extensions are further members.")
record EventFormat(
        @Schema(description = "Always 1.0.", examples = "1.0")
        String specversion,

        @Schema(
                description = "org.axlecause. and one of the types of the contract.",
                examples = "org.axlecause.finding.recorded.v1")
        String type,

        @Schema(
                description = "URI reference of the sender; with id the identity of the event.",
                examples = "/sites/quay-street",
                maxLength = 500)
        String source,

        @Schema(description = "Unique at the source.", examples = "f-77", maxLength = 200)
        String id,

        @Schema(description = "Reference of the case.", pattern = "^[A-Za-z0-9._~-]{1,64}$", examples = "QS-10482")
        String subject,

        @Schema(
                description = "When it happened in the workshop, RFC 3339 with offset.",
                format = "date-time",
                examples = "2026-03-02T09:40:00Z")
        String time,

        @Schema(
                description = "application/json, which is also what it means to leave it out.",
                examples = "application/json")
        @Nullable
        String datacontenttype,

        @Schema(description = "Content by the schema of the type, GET /v1/schemas/{type}.")
        Object data) {}
