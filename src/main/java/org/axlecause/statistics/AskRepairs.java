package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.casefile.Countable;
import org.axlecause.facts.ScopeItem;
import org.axlecause.statistics.MoreViews.LinesView;
import org.axlecause.statistics.MoreViews.MoneyView;
import org.axlecause.statistics.MoreViews.RepairAnswer;
import org.axlecause.statistics.MoreViews.ResultsView;
import org.axlecause.statistics.StatisticsViews.DefinitionView;
import org.axlecause.statistics.StatisticsViews.ShareView;
import org.jspecify.annotations.Nullable;

/** Answers what was renewed, what customers agreed to, what it cost and whether it cured. */
@ApplicationScoped
class AskRepairs {

    private static final List<String> MEMBERS =
            List.of("code", "action", "necessity", "standing", "currency", "marks", "bin");
    private static final int MONEY_SCALE = 2;

    private final Snapshots snapshots;
    private final CountStore counts;
    private final Clock clock;

    AskRepairs(Snapshots snapshots, CountStore counts, Clock clock) {
        this.snapshots = snapshots;
        this.counts = counts;
        this.clock = clock;
    }

    Told answer(Asked asked, Actor actor) {
        return snapshots.of(asked, actor, this::answer);
    }

    private Told answer(ReadQuestion question) {
        question.takes("item", "by", "limit", "cursor");
        Cohort cohort = question.cohort();
        List<String> items = question.words(
                "item", Stream.of(ScopeItem.values()).map(ScopeItem::toString).toList());
        Grouping grouping = question.grouping(question.by(1, GroupBy.ofCases()));
        int limit = question.whole("limit", 1, ReadQuestion.MOST, ReadQuestion.USUAL_LIMIT);
        int first = question.position();
        question.check();

        int least = snapshots.leastCell();
        Map<List<String>, Map<String, Long>> outcomes = new HashMap<>();
        for (CountStore.Count count :
                counted(cohort, grouping, List.of(Countable.CASE, Countable.OUTCOME), List.of("code"))) {
            outcomes.computeIfAbsent(grouping.group(count, List.of()), group -> new HashMap<>())
                    .merge(count.members().get(0), count.n(), Long::sum);
        }
        Map<List<String>, List<CountStore.Count>> lines = new HashMap<>();
        for (CountStore.Count count : counted(cohort, grouping, List.of(Countable.LINE), MEMBERS)) {
            if (items.isEmpty() || items.contains(count.members().get(0))) {
                List<String> key = new ArrayList<>(grouping.group(count, List.of()));
                key.add(count.members().get(0));
                key.add(count.members().get(1));
                lines.computeIfAbsent(key, each -> new ArrayList<>()).add(count);
            }
        }
        Map<List<String>, Long> cases = casesWithItem(lines, grouping.by().size());
        List<LinesView> all = lines.entrySet().stream()
                .map(entry -> view(entry.getKey(), entry.getValue(), grouping, outcomes, cases, least))
                .sorted(grouping.byGroup(LinesView::group)
                        .thenComparing(view -> view.lines() == null ? 0 : -view.lines())
                        .thenComparing(LinesView::item)
                        .thenComparing(LinesView::action))
                .toList();
        int end = Math.min(all.size(), first + limit);
        OffsetDateTime now = OffsetDateTime.now(clock);
        return Told.of(
                now,
                new RepairAnswer(
                        now,
                        cohort.from(),
                        cohort.to(),
                        snapshots.open(cohort),
                        outcomes.values().stream()
                                .mapToLong(of -> of.getOrDefault("", 0L))
                                .sum(),
                        outcomes.entrySet().stream()
                                .map(entry -> results(grouping.named(entry.getKey()), entry.getValue(), least))
                                .sorted(grouping.byGroup(ResultsView::group))
                                .toList(),
                        all.subList(Math.min(first, all.size()), end),
                        definitions(least)),
                List.of(),
                end < all.size() ? Cursors.cursor(end) : null);
    }

    private List<CountStore.Count> counted(Cohort cohort, Grouping grouping, List<String> about, List<String> members) {
        return counts.count(
                new CountStore.Wanted(cohort, about, "", grouping.dimensions(), grouping.isByMonth(), members));
    }

    /** Cases with a line of the item: each case marks the first of its lines with the item. */
    private static Map<List<String>, Long> casesWithItem(Map<List<String>, List<CountStore.Count>> lines, int grouped) {
        Map<List<String>, Long> cases = new HashMap<>();
        lines.forEach((key, counted) -> cases.merge(
                key.subList(0, grouped + 1),
                counted.stream()
                        .filter(count -> count.members().get(5).equals("1"))
                        .mapToLong(CountStore.Count::n)
                        .sum(),
                Long::sum));
        return cases;
    }

    private static LinesView view(
            List<String> key,
            List<CountStore.Count> lines,
            Grouping grouping,
            Map<List<String>, Map<String, Long>> outcomes,
            Map<List<String>, Long> cases,
            int least) {
        int grouped = grouping.by().size();
        List<String> group = key.subList(0, grouped);
        long of = outcomes.getOrDefault(group, Map.of()).getOrDefault("", 0L);
        boolean withheld = of < least;
        long n = sum(lines, 3, null);
        long agreed = sum(lines, 3, "agreed");
        long refused = sum(lines, 3, "refused");
        long decided = agreed + refused + sum(lines, 3, "later");
        Map<String, Long> necessities = new TreeMap<>();
        lines.forEach(count -> necessities.merge(count.members().get(2), count.n(), Long::sum));
        return new LinesView(
                grouping.named(group),
                key.get(grouped),
                key.get(grouped + 1),
                ShareView.of(cases.getOrDefault(key.subList(0, grouped + 1), 0L), of, least),
                withheld ? null : n,
                withheld ? null : necessities,
                ShareView.of(agreed, decided, least),
                ShareView.of(refused, decided, least),
                ShareView.of(sum(lines, 6, "1"), n, least),
                withheld ? null : money(lines));
    }

    private static long sum(List<CountStore.Count> lines, int member, @Nullable String value) {
        return lines.stream()
                .filter(count -> value == null || count.members().get(member).equals(value))
                .mapToLong(CountStore.Count::n)
                .sum();
    }

    private static List<MoneyView> money(List<CountStore.Count> lines) {
        Map<String, Long> priced = new TreeMap<>();
        Map<String, BigDecimal> totals = new TreeMap<>();
        lines.stream().filter(count -> !count.members().get(4).isEmpty()).forEach(count -> {
            priced.merge(count.members().get(4), count.n(), Long::sum);
            totals.merge(count.members().get(4), count.amount(), BigDecimal::add);
        });
        return priced.entrySet().stream()
                .filter(entry -> entry.getValue() > 0)
                .map(entry -> {
                    BigDecimal total = totals.getOrDefault(entry.getKey(), BigDecimal.ZERO);
                    return new MoneyView(
                            entry.getKey(),
                            entry.getValue(),
                            total,
                            total.divide(BigDecimal.valueOf(entry.getValue()), MONEY_SCALE, RoundingMode.HALF_EVEN));
                })
                .toList();
    }

    private static ResultsView results(Map<String, String> group, Map<String, Long> counts, int least) {
        long tested = counts.getOrDefault("tested", 0L);
        long passed = counts.getOrDefault("official-passed", 0L);
        return new ResultsView(
                group,
                ShareView.of(tested, counts.getOrDefault("", 0L), least),
                ShareView.of(counts.getOrDefault("verified", 0L), tested, least),
                ShareView.of(counts.getOrDefault("first-time-cure", 0L), tested, least),
                ShareView.of(passed, passed + counts.getOrDefault("official-failed", 0L), least));
    }

    private List<DefinitionView> definitions(int least) {
        List<Definitions.Definition> definitions = new ArrayList<>(List.of(
                Definitions.of(
                        "line",
                        "A line of the work as it stood when the case ended; one that was merged into another is not counted."),
                Definitions.of(
                        "agreed, refused",
                        "By the decision that stands; decided lines are agreed, refused or put off."),
                Definitions.of(
                        "money", "Net, by the price list that held for the case; a line without a price is left out."),
                Definitions.of("firstTimeCure", "The first final test after the work proved the repair.")));
        definitions.addAll(Definitions.common(snapshots.terms(), least));
        return DefinitionView.of(definitions);
    }
}
