package org.axlecause.statistics;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** What answers of statistics look like on the wire. */
final class StatisticsViews {

    private static final MathContext DIGITS = new MathContext(12);

    private StatisticsViews() {}

    /** A number as it is told: twelve digits, which is more than any count of cases bears. */
    static BigDecimal told(double value) {
        BigDecimal rounded = new BigDecimal(value).round(DIGITS).stripTrailingZeros();
        return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
    }

    @Schema(name = "StatisticsDefinition", description = "A word of the answer with its meaning.")
    record DefinitionView(String word, String means) {

        static List<DefinitionView> of(List<Definitions.Definition> definitions) {
            return definitions.stream()
                    .map(definition -> new DefinitionView(definition.word(), definition.means()))
                    .toList();
        }
    }

    @Schema(name = "StatisticsInterval", description = "From the lower to the upper bound.")
    record IntervalView(BigDecimal low, BigDecimal high) {

        static IntervalView of(Interval interval) {
            return new IntervalView(told(interval.low()), told(interval.high()));
        }
    }

    @Schema(
            name = "StatisticsShare",
            description = "A share with the numbers behind it; withheld where too few stand behind it.")
    record ShareView(
            @Schema(description = "How many; absent where withheld.") @Nullable
            Long count,

            @Schema(description = "Of how many.") long of,
            @Nullable BigDecimal share,

            @Schema(description = "95 % interval of the share.") @Nullable
            IntervalView interval,

            boolean withheld) {

        static ShareView of(long count, long of, int leastCell) {
            if (of < leastCell) {
                return new ShareView(null, of, null, null, true);
            }
            Proportion proportion = new Proportion(count, of);
            return new ShareView(
                    count,
                    of,
                    told(proportion.share()),
                    IntervalView.of(proportion.wilson(ConfidenceLevel.OF_95_PERCENT)),
                    false);
        }
    }

    @Schema(name = "CauseShare", description = "How many cases of a group had a cause.")
    record CauseShareView(
            @Schema(description = "What the group is told apart by.")
            Map<String, String> group,

            @Schema(description = "Code of the cause, or undetermined.")
            String cause,

            ShareView cases) {}

    @Schema(name = "ParetoLine", description = "A cause with its share of all confirmed causes.")
    record ParetoView(String cause, long count, BigDecimal share, BigDecimal cumulative) {}

    @Schema(name = "CausePair", description = "Two causes of the same case against what chance would bring together.")
    record PairView(
            String cause,
            String other,
            ShareView cases,

            @Schema(description = "Cases that chance alone would bring together.") @Nullable
            BigDecimal expected,

            @Schema(description = "Observed over expected.") @Nullable
            BigDecimal ratio,

            @Nullable String method,
            @Nullable BigDecimal pValue,

            @Schema(description = "Lowest rate of false discoveries at which it counts, over all pairs told.") @Nullable
            BigDecimal adjusted) {}

    @Schema(name = "CauseComparison", description = "A cause in two groups.")
    record ComparisonView(
            String cause,
            ShareView first,
            ShareView second,

            @Schema(description = "First share less second.") @Nullable
            BigDecimal difference,

            @Schema(description = "95 % interval of the difference (Newcombe).") @Nullable
            IntervalView interval,

            @Schema(description = "fisher-exact or chi-squared.") @Nullable
            String method,

            @Nullable BigDecimal pValue,

            @Schema(description = "Lowest rate of false discoveries at which it counts, over all causes told.")
            @Nullable
            BigDecimal adjusted) {}

    @Schema(name = "CauseTrend", description = "A cause by month of presentation.")
    record TrendView(
            String cause,
            List<TrendPointView> months,
            @Nullable StepView change) {}

    @Schema(name = "CauseTrendMonth", description = "A month with the limits of a control chart for shares.")
    record TrendPointView(
            String month,
            ShareView cases,
            @Nullable IntervalView limits,

            @Schema(description = "Whether the share lies outside its limits.")
            boolean out) {}

    @Schema(name = "StepChange", description = "The split of the months before and after which the shares differ most.")
    record StepView(
            @Schema(description = "First month after the change.")
            String month,

            ShareView before,
            ShareView after,
            BigDecimal pValue,

            @Schema(description = "Lowest rate of false discoveries at which it counts, over all causes told.")
            BigDecimal adjusted) {}

    @Schema(
            name = "CauseStatistics",
            description = "Causes of cases that have ended; the member that was asked for by part is there.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record CauseAnswer(
            OffsetDateTime asOf,
            @Nullable LocalDate from,
            @Nullable LocalDate to,

            @Schema(description = "With compare=period: first day of the earlier period.") @Nullable
            LocalDate earlierFrom,

            @Schema(description = "With compare=period: day after the last day of the earlier period.") @Nullable
            LocalDate earlierTo,

            @Schema(
                    description =
                            "Cases of these sites, days, makes and models that have not ended and count for nothing.")
            long open,

            @Schema(description = "Cases that are asked about.")
            long cases,

            ShareView undetermined,
            @Nullable List<CauseShareView> shares,
            @Nullable List<TrendView> trends,
            @Nullable List<ComparisonView> comparisons,
            @Nullable List<ParetoView> pareto,
            @Nullable List<PairView> pairs,
            List<DefinitionView> definitions) {}
}
