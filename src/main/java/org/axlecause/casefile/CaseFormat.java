package org.axlecause.casefile;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** The members of the case document, for the contract alone; what stands in each is told by the README and the catalogue. */
@Schema(
        name = "CaseDocument",
        description =
                "Everything that follows from the events of a case. Every conclusion carries its because. Of a case that"
                        + " could not be judged yet only reference, status and judging are there.")
public record CaseFormat(
        @Schema(description = "Chosen by the sender.") String reference,

        @Schema(description = "Code of the site; left out until a presentation names it.") @Nullable
        String site,

        @Schema(description = "When the vehicle was presented, or the earliest event until then.") @Nullable
        OffsetDateTime opened,

        @Schema(description = "How many distinct events were judged.") @Nullable
        Integer version,

        @Schema(description = "open, scoped, in-work, to-verify, verified or closed.")
        String status,

        @Schema(description = "As it was sent, without registration and vin.") @Nullable
        Map<String, Object> vehicle,

        @Nullable Map<String, Object> regime,
        @Nullable Map<String, Object> policy,

        @Schema(description = "Departures from clauses of the policy; left out where there are none.") @Nullable
        List<Map<String, Object>> departures,

        @Schema(description = "Version of the rule base.") @Nullable
        String rulebook,

        @Schema(
                description = "Published weights that the causes were weighed by; left out where it was those of the"
                        + " cause model alone.")
        @Nullable
        Map<String, Object> causeWeights,

        @Schema(description = "failed where the latest events are kept and not judged yet.") @Nullable
        String judging,

        @Nullable List<Map<String, Object>> figures,
        @Nullable List<Map<String, Object>> deficiencies,
        @Nullable List<Map<String, Object>> symptoms,
        @Nullable List<Map<String, Object>> causes,
        @Nullable List<Map<String, Object>> nextChecks,
        @Nullable List<Map<String, Object>> scope,
        @Nullable Map<String, Object> estimate,
        @Nullable List<Map<String, Object>> workPlan,
        @Nullable List<Map<String, Object>> cautions,

        @Schema(description = "Advice, never a certificate.") @Nullable
        Map<String, Object> fitness,

        @Nullable Map<String, Object> verification,
        @Nullable List<Map<String, Object>> questions,
        @Nullable List<Map<String, Object>> timeline) {}
