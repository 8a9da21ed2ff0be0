package org.axlecause.casefile;

import com.fasterxml.jackson.annotation.JsonRawValue;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** What lists about cases look like on the wire. */
final class CaseViews {

    private CaseViews() {}

    @Schema(name = "CaseList", description = "A page of cases, newest first.")
    record CaseList(List<CaseLine> cases) {}

    @Schema(name = "CaseLine", description = "A case in a list.")
    record CaseLine(
            String reference,
            @Nullable String site,
            String status,
            OffsetDateTime opened,

            @Schema(description = "The day of opening at the site.")
            LocalDate openedDay,

            int version,
            @Nullable String make,
            @Nullable String model,

            @Schema(description = "How the last judging went: done, failed or none.")
            String judging,

            @Schema(description = "Address of the case document.")
            String link) {

        static CaseLine of(StoredCase found) {
            CaseColumns columns = found.columns();
            return new CaseLine(
                    found.reference(),
                    columns.site(),
                    columns.status(),
                    columns.opened(),
                    columns.openedDay(),
                    columns.version(),
                    columns.make(),
                    columns.model(),
                    found.judging().toString(),
                    "/v1/cases/" + found.reference());
        }
    }

    @Schema(name = "EventList", description = "A page of a case's history, latest arrival first.")
    record EventList(List<EventLine> events) {}

    @Schema(name = "EventLine", description = "An event as it was received.")
    record EventLine(
            @Schema(description = "Place in the order of arrival, from 1.")
            int position,

            OffsetDateTime receivedAt,
            @Schema(description = "Who sent it.") String actor,

            @JsonRawValue
            @Schema(
                    description = "The event in the JSON format of CloudEvents, tokens in place of personal data.",
                    implementation = Object.class)
            String event) {

        static EventLine of(StoredEvent event) {
            return new EventLine(event.position(), event.receivedAt(), event.actor(), event.body());
        }
    }

    @Schema(name = "JudgementList", description = "A page of the judgements that people acted on, latest first.")
    record JudgementList(List<JudgementLine> judgements) {}

    @Schema(name = "JudgementLine", description = "A judgement that people acted on.")
    record JudgementLine(
            @Schema(description = "Version of the case that was judged.")
            int version,

            @Schema(description = "Version of the rule base.")
            String rulebook,

            @Schema(description = "Why it is kept: decision or closing.")
            String occasion,

            OffsetDateTime judgedAt,

            @JsonRawValue @Schema(description = "The case document as it was served.", implementation = Object.class)
            String document) {

        static JudgementLine of(PastJudgement judgement) {
            return new JudgementLine(
                    judgement.version(),
                    judgement.rulebook(),
                    judgement.occasion().toString(),
                    judgement.judgedAt(),
                    judgement.document());
        }
    }
}
