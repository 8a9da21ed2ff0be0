package org.axlecause.policy;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * What a draft would have done to the cases that were tried: numbers, and a bounded number of examples. Two results of
 * different cases add up to that of both, in whatever order they are added.
 */
@Schema(name = "PolicyTrialResult", description = "What the draft would have done to the cases tried so far.")
public record TrialResult(
        @Schema(description = "Of all cases tried.") Tally all,

        @Schema(description = "By code of the root cause that ranks first; none where there is none.")
        Map<String, Tally> byCause,

        @Schema(description = "By code of the site.") Map<String, Tally> bySite,

        @Schema(description = "Changed cases, the first ones in the order of reference.")
        List<Example> examples) {

    static final int MOST_EXAMPLES = 20;

    /** Nothing tried yet. */
    static final TrialResult NONE = new TrialResult(Tally.NONE, Map.of(), Map.of(), List.of());

    /** Numbers of some cases. */
    @Schema(name = "PolicyTrialTally")
    public record Tally(
            int cases,

            @Schema(
                    description =
                            "Cases whose scope, price, deficiencies, cautions, advice on use or proof would have been another.")
            int changed,

            @Schema(
                    description = "Cases that nothing would have changed, though they lack a measurement that the draft"
                            + " needs; with it they might.")
            int lacking,

            @Schema(description = "Cases with departures, which are ignored on both sides.")
            int withDepartures,

            @Schema(description = "Cases that could not be judged again.")
            int failed,

            int linesAdded,
            int linesDropped,
            int linesOfOtherNecessity,

            @Schema(
                    description =
                            "What the work in the plan would have cost more, net, by currency, at today's prices.")
            Map<String, BigDecimal> money,

            @Schema(description = "The same with the recommended lines.")
            Map<String, BigDecimal> moneyWithRecommended) {

        static final Tally NONE = new Tally(0, 0, 0, 0, 0, 0, 0, 0, Map.of(), Map.of());

        Tally plus(Tally other) {
            return new Tally(
                    cases + other.cases,
                    changed + other.changed,
                    lacking + other.lacking,
                    withDepartures + other.withDepartures,
                    failed + other.failed,
                    linesAdded + other.linesAdded,
                    linesDropped + other.linesDropped,
                    linesOfOtherNecessity + other.linesOfOtherNecessity,
                    sum(money, other.money),
                    sum(moneyWithRecommended, other.moneyWithRecommended));
        }

        private static Map<String, BigDecimal> sum(Map<String, BigDecimal> one, Map<String, BigDecimal> other) {
            Map<String, BigDecimal> sum = new TreeMap<>(one);
            other.forEach((currency, amount) -> sum.merge(currency, amount, BigDecimal::add));
            return sum;
        }
    }

    /** A changed case. */
    @Schema(name = "PolicyTrialExample", description = "A changed case; its link shows it side by side.")
    public record Example(
            String reference,
            String site,
            String cause,

            @Schema(description = "Ids of lines that the draft adds.")
            List<String> added,

            @Schema(description = "Ids of lines that it drops.")
            List<String> dropped,

            @Schema(description = "Ids of lines that it calls for otherwise, with both necessities.")
            List<String> otherNecessity,

            @Schema(description = "What the work in the plan would have cost more, net.") @Nullable
            String money,

            @Schema(description = "Address of the case by both policies.") @Nullable
            String link) {

        Example linked(String address) {
            return new Example(reference, site, cause, added, dropped, otherNecessity, money, address);
        }
    }

    /** The result of one case. */
    static TrialResult of(String cause, String site, Tally tally, @Nullable Example example) {
        return new TrialResult(
                tally, Map.of(cause, tally), Map.of(site, tally), example == null ? List.of() : List.of(example));
    }

    TrialResult plus(TrialResult other) {
        List<Example> both = new ArrayList<>(examples);
        both.addAll(other.examples);
        both.sort(Comparator.comparing(Example::reference));
        return new TrialResult(
                all.plus(other.all),
                sum(byCause, other.byCause),
                sum(bySite, other.bySite),
                List.copyOf(both.subList(0, Math.min(MOST_EXAMPLES, both.size()))));
    }

    private static Map<String, Tally> sum(Map<String, Tally> one, Map<String, Tally> other) {
        Map<String, Tally> sum = new TreeMap<>(one);
        other.forEach((key, tally) -> sum.merge(key, tally, Tally::plus));
        return sum;
    }
}
