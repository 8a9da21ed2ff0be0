package org.axlecause.policy;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Objects;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** What policies look like on the wire. */
public final class PolicyViews {

    private PolicyViews() {}

    @Schema(name = "PolicyView", description = "A policy by name.")
    public record PolicyView(
            String name,

            @Schema(description = "Number of its newest version; left out where none is published.") @Nullable
            Integer latest,

            @Schema(description = "First day on which the newest version judges.") @Nullable
            LocalDate effectiveFrom,

            @Schema(description = "Whether somebody is writing a draft of it.")
            boolean draft) {}

    @Schema(name = "PolicyDraftView", description = "A policy that is being written and judges nothing.")
    public record DraftView(
            String name,
            PolicyDocument document,

            @Schema(description = "Everybody who has written on it.")
            List<String> authors,

            OffsetDateTime writtenAt,
            String writtenBy) {

        /** The draft as it is shown. */
        public static DraftView of(PolicyDraft draft, PolicyDocument shown) {
            return new DraftView(draft.name(), shown, draft.authors(), draft.writtenAt(), draft.writtenBy());
        }
    }

    @Schema(name = "PolicyPublication", description = "From when a version judges, and why.")
    public record PublicationView(
            @Schema(description = "First day on which it judges; past at none of its sites.") @Nullable
            LocalDate effectiveFrom,

            @Schema(description = "Why it is published; history keeps it.") @Nullable
            String reason) {}

    @Schema(name = "PolicyVersionView", description = "A published version; it never changes.")
    public record VersionView(
            String name,
            int version,

            @Schema(description = "published, or superseded where a later version judges by now.")
            String state,

            LocalDate effectiveFrom,
            String reason,
            OffsetDateTime publishedAt,
            String publishedBy,
            List<String> authors,

            @Schema(description = "Codes of the only sites that it judges; left out for all.") @Nullable
            List<String> covers,

            @Schema(description = "Left out in lists.") @Nullable
            PolicyDocument document) {

        static VersionView of(PolicyVersion version, boolean superseded, @Nullable PolicyDocument document) {
            return new VersionView(
                    version.name(),
                    version.version(),
                    superseded ? "superseded" : "published",
                    version.effectiveFrom(),
                    version.reason(),
                    version.publishedAt(),
                    version.publishedBy(),
                    version.authors(),
                    version.covers(),
                    document);
        }
    }

    @Schema(name = "EffectiveClauseView", description = "A clause as it holds at a site.")
    public record EffectiveClauseView(
            ClauseWanted sets,

            @Schema(description = "What the clause means.") String means,

            @Schema(description = "Layer that the value comes from: baseline, chain, region or site.")
            String from,

            @Schema(description = "Layer that has locked it; left out where none has.") @Nullable
            String lockedBy,

            @Schema(description = "Source of a value of the baseline.") @Nullable
            String source) {

        static EffectiveClauseView of(EffectiveClause clause) {
            ClauseWord word = Objects.requireNonNull(
                    Vocabulary.released().find(clause.set().clause()));
            Layer lock = clause.lockedBy();
            return new EffectiveClauseView(
                    clause.set(),
                    word.means(),
                    clause.from().toString(),
                    lock == null ? null : lock.toString(),
                    clause.from() == Layer.BASELINE ? word.source() : null);
        }
    }

    @Schema(name = "EffectivePolicyView", description = "One version as it holds at one site.")
    public record EffectiveView(
            String name, int version, String site, @Nullable String region, List<EffectiveClauseView> clauses) {}

    @Schema(name = "PolicyDifference", description = "A clause that two versions set otherwise.")
    public record DifferenceView(
            @Schema(description = "chain, or region or site with its code.")
            String layer,

            @Schema(description = "The clause, with what it is set for.")
            String clause,

            String means,

            @Schema(description = "added, removed or changed.")
            String change,

            @Schema(description = "What the first version sets; left out where it sets nothing here.") @Nullable
            String before,

            @Schema(description = "What the second version sets; left out where it sets nothing here.") @Nullable
            String after) {}

    @Schema(name = "PolicyComparison", description = "What the second version sets otherwise than the first.")
    public record ComparisonView(String name, String from, String to, List<String> words, List<DifferenceView> table) {}
}
