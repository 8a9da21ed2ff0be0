package org.axlecause.statistics;

import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.List;
import org.axlecause.statistics.MoreViews.BinView;
import org.axlecause.statistics.StatisticsViews.DefinitionView;
import org.axlecause.statistics.StatisticsViews.IntervalView;
import org.axlecause.statistics.StatisticsViews.ShareView;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** What learned weights of causes look like on the wire. */
final class CauseWeightsViews {

    private CauseWeightsViews() {}

    @Schema(name = "CauseWeightsWanted", description = "What is proposed.")
    record ProposalWanted(
            @Schema(
                    description =
                            "learned from the confirmed causes, which is the default, or those of the book again.")
            @Nullable
            String weights) {}

    @Schema(name = "CauseWeightsTerms", description = "How much confirmed causes count against the book.")
    record TermsView(
            @Schema(description = "Cases that the book is worth.")
            BigDecimal priorStrength,

            @Schema(description = "Axles of a group, in cases with a confirmed cause, below which the book stays.")
            int leastCases,

            @Schema(description = "Share of the vehicles that is held out.")
            BigDecimal heldOutShare) {

        static TermsView of(LearningTerms terms) {
            return new TermsView(
                    StatisticsViews.told(terms.priorStrength()),
                    terms.leastCases(),
                    StatisticsViews.told(terms.heldOutShare()));
        }
    }

    @Schema(name = "LearnedCauseWeight", description = "A weight of the book beside what was learned.")
    record LearnedView(
            @Schema(description = "Code of the cause.") String cause,

            @Schema(description = "drum-old, drum-young, disc-old or disc-young.")
            String group,

            BigDecimal bookWeight,

            @Schema(description = "The book's where too few axles were seen.")
            BigDecimal learnedWeight,

            @Schema(description = "Mean probability that the book gave before anything was seen.")
            BigDecimal bookShare,

            @Schema(description = "Axles on which it was confirmed, of those of cases with a confirmed cause.")
            ShareView confirmed,

            @Schema(description = "What is believed of the share now: the mean of the beta distribution.")
            BigDecimal learnedShare,

            @Schema(description = "Where the share lies with 95 %, equal tails left out.")
            IntervalView interval) {

        static LearnedView of(LearnedWeight weight, int leastCell) {
            return new LearnedView(
                    weight.cause().toString(),
                    weight.group().toString(),
                    StatisticsViews.told(weight.bookWeight()),
                    StatisticsViews.told(weight.learnedWeight()),
                    StatisticsViews.told(weight.bookShare()),
                    ShareView.of(weight.confirmed().count(), weight.confirmed().of(), leastCell),
                    StatisticsViews.told(weight.belief().mean()),
                    IntervalView.of(weight.belief().credible(ConfidenceLevel.OF_95_PERCENT)));
        }
    }

    @Schema(
            name = "CauseWeightsCalibration",
            description = "Probabilities after the arrival test against what came true.")
    record ScoresView(
            long probabilities,
            BigDecimal brier,
            BigDecimal reliability,
            BigDecimal resolution,
            BigDecimal uncertainty,
            BigDecimal expectedCalibrationError,
            List<BinView> bins) {

        static ScoresView of(Calibration calibration, int leastCell) {
            return new ScoresView(
                    calibration.number(),
                    StatisticsViews.told(calibration.brier()),
                    StatisticsViews.told(calibration.reliability()),
                    StatisticsViews.told(calibration.resolution()),
                    StatisticsViews.told(calibration.uncertainty()),
                    StatisticsViews.told(calibration.expectedCalibrationError()),
                    BinView.of(calibration, leastCell));
        }
    }

    @Schema(name = "CauseWeightsProposal", description = "Weights of causes that may be published, as far as they are.")
    record ProposalView(
            String id,

            @Schema(description = "learned or book.") String weights,

            @Schema(
                    description =
                            "counting, scoring, proposed, nothing-learned where too few cases are there, withdrawn or"
                                    + " published.")
            String state,

            @Schema(description = "Cases that were presented after it don't count.")
            OffsetDateTime asOf,

            OffsetDateTime createdAt,
            String createdBy,
            @Nullable OffsetDateTime finishedAt,

            @Schema(description = "Cases with a confirmed cause that were learned from.")
            long learnedFrom,

            @Schema(description = "Cases with a confirmed cause that were held out.")
            long heldOut,

            @Schema(description = "Cases held out that had an arrival test and were judged anew by both weights.")
            long scored,

            @Schema(description = "Cases that could not be judged anew.")
            long failed,

            @Nullable TermsView terms,

            @Schema(description = "How the book's probabilities fit the cases held out.") @Nullable
            ScoresView before,

            @Schema(description = "How those of the learned weights fit the same cases.") @Nullable
            ScoresView after,

            @Schema(description = "Whether the Brier score of the cases held out is lower by the learned weights.")
            @Nullable
            Boolean forecastsBetter,

            @Schema(description = "By cause and group; left out in lists.") @Nullable
            List<LearnedView> learned,

            @Schema(description = "Left out in lists.") @Nullable
            List<DefinitionView> definitions) {

        static ProposalView line(Proposal proposal, int leastCell) {
            return of(proposal, leastCell, null, null);
        }

        static ProposalView whole(Proposal proposal, int leastCell) {
            ProposedModel model = proposal.model();
            return of(
                    proposal,
                    leastCell,
                    model == null
                            ? null
                            : model.weights().stream()
                                    .map(weight -> LearnedView.of(weight, leastCell))
                                    .toList(),
                    DefinitionView.of(Definitions.learning(leastCell)));
        }

        private static ProposalView of(
                Proposal proposal,
                int leastCell,
                @Nullable List<LearnedView> learned,
                @Nullable List<DefinitionView> definitions) {
            ProposedModel model = proposal.model();
            LearningTerms terms = proposal.terms();
            Learning learning = proposal.learning();
            return new ProposalView(
                    proposal.id().toString(),
                    proposal.source(),
                    proposal.state().toString(),
                    proposal.asOf(),
                    proposal.createdAt(),
                    proposal.createdBy(),
                    proposal.finishedAt(),
                    learning.learnedFrom(),
                    learning.heldOut(),
                    learning.scored(),
                    learning.failed(),
                    terms == null ? null : TermsView.of(terms),
                    model == null ? null : ScoresView.of(model.before(), leastCell),
                    model == null ? null : ScoresView.of(model.after(), leastCell),
                    model == null ? null : model.forecastsBetter(),
                    learned,
                    definitions);
        }
    }

    @Schema(name = "CauseWeightsPublication", description = "What is published, from when it holds, and why.")
    record PublicationWanted(
            @Schema(description = "Id of a proposal that is worked out.") @Nullable
            String proposal,

            @Schema(
                    description =
                            "First moment of it, a minute ahead at least: vehicles presented from then on are judged by it.")
            @Nullable
            OffsetDateTime effectiveFrom,

            @Schema(description = "Why it is published; history keeps it.") @Nullable
            String reason) {}

    @Schema(name = "PublishedCauseWeight", description = "A weight that stands in place of the book's.")
    record PublishedView(
            @Schema(description = "Code of the cause.") String cause,

            @Schema(description = "drum-old, drum-young, disc-old or disc-young.")
            String group,

            @Schema(description = "Weight of the book when it was learned.")
            BigDecimal bookWeight,

            BigDecimal weight) {

        static PublishedView of(WeightsVersion.Published published) {
            return new PublishedView(
                    published.cause().toString(),
                    published.group().toString(),
                    StatisticsViews.told(published.bookWeight()),
                    StatisticsViews.told(published.weight()));
        }
    }

    @Schema(name = "CauseWeightsVersion", description = "Published weights of causes; a version never changes.")
    record VersionView(
            int version,

            @Schema(description = "to-come, in-force, or superseded where a later version is in force.")
            String state,

            OffsetDateTime effectiveFrom,

            @Schema(description = "Id of the proposal that it was.")
            String proposal,

            @Schema(description = "learned or book.") String weights,

            @Schema(description = "Who proposed it.") List<String> authors,
            String reason,
            OffsetDateTime publishedAt,
            String publishedBy,

            @Schema(description = "Weights that stand in place of the book's, by cause and group; left out in lists.")
            @Nullable
            List<PublishedView> published) {

        static VersionView line(WeightsVersion version, WeightsVersion.State state) {
            return of(version, state, null);
        }

        static VersionView whole(WeightsVersion version, WeightsVersion.State state) {
            return of(
                    version,
                    state,
                    version.weights().stream().map(PublishedView::of).toList());
        }

        private static VersionView of(
                WeightsVersion version, WeightsVersion.State state, @Nullable List<PublishedView> published) {
            return new VersionView(
                    version.version(),
                    state.toString(),
                    version.effectiveFrom(),
                    version.proposal().toString(),
                    version.weights().isEmpty() ? Proposal.BOOK : Proposal.LEARNED,
                    version.authors(),
                    version.reason(),
                    version.publishedAt(),
                    version.publishedBy(),
                    published);
        }
    }
}
