package org.axlecause.policy;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.shared.PlainMeasure;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** A clause as a layer of a policy sets it; which members it takes depends on the clause. */
@Schema(
        name = "PolicyClauseSet",
        description = "A clause as a layer sets it. Which members it takes is told by the schema policy.json.")
public record ClauseWanted(
        @Schema(description = "Code of a clause or a threshold of the baseline.") @Nullable
        String clause,

        @Nullable BigDecimal value,

        @Schema(description = "UCUM unit of the value.") @Nullable
        String unit,

        @Schema(description = "required, recommended, optional or none.") @Nullable
        String necessity,

        @Schema(description = "wheel, axle or vehicle.") @Nullable
        String extent,

        @Schema(description = "Figure that a workshop limit is about.") @Nullable
        String figure,

        @Schema(description = "service or parking.") @Nullable
        String brake,

        @Schema(description = "Number of the axle; left out for all.") @Nullable
        Integer axle,

        @Schema(description = "drum or disc; left out for both.") @Nullable
        String build,

        @Nullable String action,
        @Nullable String item,

        @Schema(description = "Quantity that must be measured.") @Nullable
        String quantity,

        @Schema(description = "customer or workshop.") @Nullable
        String by,

        @Schema(description = "Whether layers below may not set it and nobody may depart from it.") @Nullable
        Boolean locked) {

    /** What makes it the same clause in every layer. */
    public String key() {
        return Stream.of(clause, figure, brake, axle == null ? null : "axle-" + axle, build, action, item, quantity)
                .filter(Objects::nonNull)
                .collect(Collectors.joining(" "));
    }

    boolean isLocked() {
        return Boolean.TRUE.equals(locked);
    }

    /** What it sets, in words, with units as people write them. */
    public String says() {
        String words = Stream.of(
                        value == null ? null : PlainMeasure.of(value, unit),
                        MergedPolicy.NO_NECESSITY.equals(necessity) ? "not called for" : necessity,
                        extent == null ? null : ScopeExtent.words(extent),
                        by == null ? null : "consent of the " + by)
                .filter(Objects::nonNull)
                .collect(Collectors.joining(", "));
        return !words.isEmpty() ? words : action == null && item == null ? "no value" : "wanted";
    }

    /** What it is set for, in words; empty for a clause that is set once for all. */
    public String about() {
        return Stream.of(
                        figure,
                        brake == null ? null : brake + " brake",
                        axle == null ? null : "axle " + axle,
                        build,
                        action,
                        item,
                        quantity)
                .filter(Objects::nonNull)
                .map(code -> code.replace('-', ' '))
                .collect(Collectors.joining(", "));
    }
}
