package org.axlecause.casefile;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** The members of the case document, for the contract alone; what stands in each is told by the README and the catalogue. */
@Schema(
        name = "CaseDocument",
        description = "Everything that follows from the events of a case. Every conclusion carries its because.")
public record CaseFormat(
        @Schema(description = "Chosen by the sender.") String reference,

        @Schema(description = "Code of the site; left out until a presentation names it.") @Nullable
        String site,

        @Schema(description = "When the vehicle was presented, or the earliest event until then.")
        OffsetDateTime opened,

        @Schema(description = "How many distinct events were judged.")
        int version,

        @Schema(description = "open, scoped, in-work, to-verify, verified or closed.")
        String status,

        @Schema(description = "As it was sent, without registration and vin.") @Nullable
        Map<String, Object> vehicle,

        @Nullable Map<String, Object> regime,
        Map<String, Object> policy,

        @Schema(description = "Version of the rule base.") String rulebook,

        @Schema(description = "failed where the latest events are kept and not judged yet.") @Nullable
        String judging,

        List<Map<String, Object>> figures,
        List<Map<String, Object>> deficiencies,
        List<Map<String, Object>> symptoms,
        List<Map<String, Object>> causes,
        List<Map<String, Object>> nextChecks,
        List<Map<String, Object>> scope,
        @Nullable Map<String, Object> estimate,
        List<Map<String, Object>> workPlan,
        List<Map<String, Object>> cautions,

        @Schema(description = "Advice, never a certificate.")
        Map<String, Object> fitness,

        Map<String, Object> verification,
        List<Map<String, Object>> questions,
        List<Map<String, Object>> timeline) {}
