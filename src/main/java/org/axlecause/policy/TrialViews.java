package org.axlecause.policy;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import org.axlecause.shared.Json;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** What trials look like on the wire. */
public final class TrialViews {

    private TrialViews() {}

    @Schema(name = "PolicyTrialWanted", description = "Over which past cases the draft is tried.")
    public record TrialWanted(
            @Schema(description = "Codes of sites; left out for all that the draft covers.") @Nullable
            List<String> sites,

            @Schema(description = "First day of presentation.") @Nullable
            LocalDate from,

            @Schema(description = "First day of presentation that no longer counts.") @Nullable
            LocalDate to,

            @Schema(description = "Code of a cause that is not ruled out.") @Nullable
            String cause) {}

    @Schema(name = "PolicyTrialView", description = "A trial as far as it has come.")
    public record TrialView(
            String id,
            String policy,

            @Schema(description = "running, done or cancelled.")
            String state,

            @Schema(description = "How many cases are to be tried.")
            int cases,

            @Schema(description = "How many have been tried.")
            int tried,

            @Schema(description = "Departures of the past are ignored on both sides.")
            boolean departuresIgnored,

            @Schema(description = "Version of the rule base when it began.")
            String rulebook,

            TrialWanted wanted,
            TrialResult result,
            OffsetDateTime createdAt,
            String createdBy,
            @Nullable OffsetDateTime finishedAt) {

        /** The trial as it is shown. */
        public static TrialView of(Trial trial) {
            TrialResult result = trial.result();
            return new TrialView(
                    trial.id().toString(),
                    trial.name(),
                    trial.state().toString(),
                    trial.cases(),
                    trial.tried(),
                    true,
                    trial.rulebook(),
                    new TrialWanted(
                            trial.wanted().sites(),
                            trial.wanted().from(),
                            trial.wanted().to(),
                            trial.wanted().cause()),
                    new TrialResult(
                            result.all(),
                            result.byCause(),
                            result.bySite(),
                            result.examples().stream()
                                    .map(example -> example.linked(
                                            "/v1/trials/" + trial.id() + "/cases/" + example.reference()))
                                    .toList()),
                    trial.createdAt(),
                    trial.createdBy(),
                    trial.finishedAt());
        }
    }

    @Schema(name = "PolicyTrialCase", description = "A case by both policies, as two case documents.")
    public record SideBySide(
            @Schema(description = "By the policy that judges it.")
            JsonNode before,

            @Schema(description = "By the draft.") JsonNode after) {

        static SideBySide of(String before, String after) {
            return new SideBySide(Json.read(before), Json.read(after));
        }
    }
}
