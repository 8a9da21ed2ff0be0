package org.axlecause.statistics;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import org.axlecause.statistics.StatisticsViews.DefinitionView;
import org.axlecause.statistics.StatisticsViews.IntervalView;
import org.axlecause.statistics.StatisticsViews.ShareView;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** What answers about repairs, returns, sites and checks look like on the wire. */
final class MoreViews {

    private MoreViews() {}

    @Schema(name = "RepairMoney", description = "Net money of the lines that have a price, in one currency.")
    record MoneyView(String currency, long lines, BigDecimal total, BigDecimal mean) {}

    @Schema(name = "RepairLines", description = "Scope lines with the same item and action.")
    record LinesView(
            Map<String, String> group,
            String item,
            String action,

            @Schema(description = "Cases with a line of the item, whatever its action.")
            ShareView cases,

            @Schema(description = "Lines; absent where withheld.") @Nullable
            Long lines,

            @Schema(description = "Lines by necessity; absent where withheld.") @Nullable
            Map<String, Long> necessities,

            @Schema(description = "Agreed lines of those that were decided.")
            ShareView agreed,

            @Schema(description = "Refused lines of those that were decided.")
            ShareView refused,

            @Schema(description = "Lines that were done, of all lines.")
            ShareView done,

            @Nullable List<MoneyView> money) {}

    @Schema(name = "RepairResults", description = "What tests after the work showed.")
    record ResultsView(
            Map<String, String> group,

            @Schema(description = "Cases with a final test.")
            ShareView tested,

            @Schema(description = "Proved repairs of the cases tested.")
            ShareView verified,

            @Schema(description = "Proved by the first final test, of the cases tested.")
            ShareView firstTimeCure,

            @Schema(description = "Passed the official test, of those whose result is on record.")
            ShareView official) {}

    @Schema(name = "RepairStatistics", description = "Scope lines and results of cases that have ended.")
    record RepairAnswer(
            OffsetDateTime asOf,
            @Nullable LocalDate from,
            @Nullable LocalDate to,

            @Schema(
                    description =
                            "Cases of these sites, days, makes and models that have not ended and count for nothing.")
            long open,

            long cases,
            List<ResultsView> results,
            List<LinesView> lines,
            List<DefinitionView> definitions) {}

    @Schema(name = "ReturnsAt", description = "Share of repairs without a return, so many days after their proof.")
    record AtView(
            long day,

            @Schema(description = "Repairs still followed just before that day.")
            long followed,

            BigDecimal withoutReturn,
            BigDecimal standardError,

            @Schema(description = "95 % interval, log-log.") @Nullable
            IntervalView interval) {}

    @Schema(
            name = "ReturnsOfGroup",
            description = "The curve of Kaplan and Meier of a group, at each day with a return and at the last.")
    record CurveView(
            Map<String, String> group,
            @Schema(description = "Repaired axles.") long repairs,
            @Nullable Long returns,
            boolean withheld,
            @Nullable List<AtView> curve) {}

    @Schema(name = "LogRankTest", description = "Whether the curves of the groups differ.")
    record LogRankView(BigDecimal chiSquared, int degreesOfFreedom, BigDecimal pValue) {}

    @Schema(name = "ReturnStatistics", description = "Later cases about a repaired axle of the same vehicle.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record ReturnAnswer(
            OffsetDateTime asOf,
            @Nullable LocalDate from,
            @Nullable LocalDate to,

            @Schema(
                    description =
                            "Cases of these sites, days, makes and models that have not ended and count for nothing.")
            long open,

            List<CurveView> groups,
            @Nullable LogRankView logRank,
            List<DefinitionView> definitions) {}

    @Schema(name = "SitePoint", description = "A site against what is expected of its vehicles.")
    record SitePointView(
            String site,
            long cases,
            @Nullable Long observed,

            @Schema(description = "Expected by age, distance and layout of its vehicles.") @Nullable
            BigDecimal expected,

            @Nullable BigDecimal ratio,
            @Nullable IntervalView limits95,
            @Nullable IntervalView limits998,
            @Nullable BigDecimal pValue,

            @Schema(
                    description =
                            "below-99-8-percent, below-95-percent, within, above-95-percent or above-99-8-percent.")
            @Nullable
            String verdict,

            boolean withheld) {}

    @Schema(name = "SiteStatistics", description = "A funnel of the sites.")
    record SiteAnswer(
            OffsetDateTime asOf,
            @Nullable LocalDate from,
            @Nullable LocalDate to,

            @Schema(
                    description =
                            "Cases of these sites, days, makes and models that have not ended and count for nothing.")
            long open,

            String measure,
            @Schema(description = "Share over all sites.") ShareView all,

            @Schema(description = "How much more the sites scatter than chance alone; 1 is chance alone.") @Nullable
            BigDecimal overdispersion,

            List<SitePointView> sites,
            List<DefinitionView> definitions) {}

    @Schema(name = "CheckCounts", description = "A check over the cases.")
    record CheckView(
            Map<String, String> group,
            String check,

            @Schema(description = "Times it was worth making, once a look.")
            long asked,

            long made,

            @Schema(description = "Made though it was not worth most, of those made.")
            ShareView unasked,

            @Schema(description = "Where the place could be got at, of those made.")
            ShareView answered,

            @Schema(description = "Asked and not made, of those asked.")
            ShareView notMade,

            @Schema(description = "Bits told by one that was answered, on average.") @Nullable
            BigDecimal bits,

            @Schema(description = "Minutes expected of one, on average.") @Nullable
            BigDecimal minutes,

            @Nullable BigDecimal bitsPerMinute) {}

    @Schema(name = "CalibrationBin", description = "Probabilities of one bin and how many came true.")
    record BinView(BigDecimal low, BigDecimal high, BigDecimal meanProbability, ShareView confirmed) {

        static List<BinView> of(Calibration calibration, int leastCell) {
            return calibration.bins().stream()
                    .map(bin -> new BinView(
                            StatisticsViews.told(bin.low()),
                            StatisticsViews.told(bin.high()),
                            StatisticsViews.told(bin.meanForecast()),
                            ShareView.of(bin.outcomes().count(), bin.outcomes().of(), leastCell)))
                    .toList();
        }
    }

    @Schema(name = "Calibration", description = "Probabilities of causes against what was confirmed.")
    record CalibrationView(
            @Schema(description = "arrival or before-opening.")
            String moment,

            @Schema(description = "Cases in which no cause was ever confirmed, which count for nothing else here.")
            ShareView neverConfirmed,

            @Schema(description = "Confirmed causes that were not named at that moment.")
            long confirmedButNotNamed,

            long probabilities,
            @Nullable BigDecimal brier,
            @Nullable BigDecimal reliability,
            @Nullable BigDecimal resolution,
            @Nullable BigDecimal uncertainty,
            @Nullable BigDecimal expectedCalibrationError,
            List<BinView> bins) {}

    @Schema(name = "CheckStatistics", description = "Checks and how far the probabilities of causes came true.")
    record CheckAnswer(
            OffsetDateTime asOf,
            @Nullable LocalDate from,
            @Nullable LocalDate to,

            @Schema(
                    description =
                            "Cases of these sites, days, makes and models that have not ended and count for nothing.")
            long open,

            long cases,
            List<CheckView> checks,
            List<CalibrationView> calibration,
            List<DefinitionView> definitions) {}
}
