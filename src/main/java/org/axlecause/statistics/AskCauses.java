package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.casefile.CauseMarks;
import org.axlecause.casefile.Countable;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Side;
import org.axlecause.statistics.StatisticsViews.CauseAnswer;
import org.axlecause.statistics.StatisticsViews.CauseShareView;
import org.axlecause.statistics.StatisticsViews.ComparisonView;
import org.axlecause.statistics.StatisticsViews.DefinitionView;
import org.axlecause.statistics.StatisticsViews.IntervalView;
import org.axlecause.statistics.StatisticsViews.PairView;
import org.axlecause.statistics.StatisticsViews.ParetoView;
import org.axlecause.statistics.StatisticsViews.ShareView;
import org.axlecause.statistics.StatisticsViews.StepView;
import org.axlecause.statistics.StatisticsViews.TrendPointView;
import org.axlecause.statistics.StatisticsViews.TrendView;
import org.jspecify.annotations.Nullable;

/** Answers why brakes fail: how many cases of a cohort had which cause, told apart as asked. */
@ApplicationScoped
class AskCauses {

    static final List<String> AXLES =
            IntStream.rangeClosed(1, 9).mapToObj(Integer::toString).toList();
    private static final List<String> PARTS = List.of("shares", "trend", "comparison", "pareto", "co-occurrence");
    private static final List<String> TESTED_TOGETHER = List.of("trend", "comparison", "co-occurrence");
    static final List<String> ROLES = List.of("root", "contributing");

    /** Members of cases by which two groups can be chosen. */
    static final List<String> COMPARED = GroupBy.ofCases().stream()
            .filter(each -> !each.isByMonth())
            .map(GroupBy::toString)
            .toList();

    /** The cases of a period and those of an earlier one. */
    private static final String PERIOD = "period";

    /** What two groups can be chosen by. */
    static final List<String> COMPARABLE =
            Stream.concat(COMPARED.stream(), Stream.of(PERIOD)).toList();

    private final Snapshots snapshots;
    private final CountStore counts;
    private final Clock clock;

    AskCauses(Snapshots snapshots, CountStore counts, Clock clock) {
        this.snapshots = snapshots;
        this.counts = counts;
        this.clock = clock;
    }

    Told answer(Asked asked, Actor actor) {
        return snapshots.of(asked, actor, question -> new Answering(asked, question).told());
    }

    /** The key of a count: the words of its group, then its cause. */
    private record Key(List<String> group, String cause) {}

    private final class Answering {

        private final Asked asked;
        private final ReadQuestion question;
        private final Cohort cohort;
        private final String part;
        private final List<GroupBy> by;
        private final List<String> causes;
        private final @Nullable String axle;
        private final @Nullable String side;
        private final @Nullable String role;
        private final @Nullable GroupBy compare;
        private final @Nullable Cohort earlier;
        private final int limit;
        private final int first;
        private final List<Chart> charts = new ArrayList<>();

        Answering(Asked asked, ReadQuestion question) {
            this.asked = asked;
            this.question = question;
            question.takes(
                    "cause",
                    "axle",
                    "side",
                    "role",
                    "by",
                    "part",
                    "compare",
                    "earlierFrom",
                    "earlierTo",
                    "limit",
                    "cursor");
            this.cohort = question.cohort();
            this.part = Objects.requireNonNullElse(question.word("part", PARTS), "shares");
            this.by = question.by(2, List.of(GroupBy.values()));
            this.causes = question.words(
                    "cause",
                    Stream.of(CauseCode.values()).map(CauseCode::toString).toList());
            this.axle = question.word("axle", AXLES);
            this.side = question.word(
                    "side", Stream.of(Side.values()).map(Side::toString).toList());
            this.role = question.word("role", ROLES);
            String compared = comparedBy();
            this.compare = GroupBy.of(compared).orElse(null);
            this.earlier = compared.equals(PERIOD) ? earlier() : null;
            this.limit = question.whole("limit", 1, ReadQuestion.MOST, ReadQuestion.USUAL_LIMIT);
            this.first = question.position();
            if (!by.isEmpty() && !part.equals("shares")) {
                question.wrong("by", String.join(", ", asked.all("by")), "left out unless `part` is shares");
            }
            if (part.equals("co-occurrence") && (axle != null || side != null || role != null)) {
                question.wrong("part", part, "another one where `axle`, `side` or `role` is given");
            }
            question.check();
        }

        /** What the two groups are chosen by; blank where none are. */
        private String comparedBy() {
            String word = question.word("compare", COMPARABLE);
            if (part.equals("comparison") == (word == null && asked.one("compare") == null)) {
                question.wrong(
                        "compare",
                        Objects.toString(asked.one("compare"), ""),
                        "one of " + String.join(", ", COMPARABLE) + " with `part=comparison`, and nothing without it");
            }
            boolean byPeriod = PERIOD.equals(word);
            int given = word == null || byPeriod ? 1 : asked.all(word).size();
            if (given < 1 || given > 2) {
                question.wrong(
                        "compare",
                        Objects.toString(word, ""),
                        "a member with two values to compare, or one to compare with all others");
            }
            if (!byPeriod && (asked.one("earlierFrom") != null || asked.one("earlierTo") != null)) {
                question.wrong("compare", Objects.toString(word, ""), PERIOD + " where an earlier period is given");
            }
            return Objects.toString(word, "");
        }

        /** The same cases of the earlier period: as long a time right before, where none is given. */
        private @Nullable Cohort earlier() {
            LocalDate from = cohort.from();
            LocalDate to = cohort.to();
            if (from == null || to == null) {
                question.wrong("compare", PERIOD, "another word, or " + PERIOD + " with `from` and `to`");
                return null;
            }
            if (asked.one("earlierFrom") == null && asked.one("earlierTo") == null) {
                return cohort.during(from.minusDays(ChronoUnit.DAYS.between(from, to)), from);
            }
            LocalDate earlierFrom = question.day("earlierFrom");
            LocalDate earlierTo = question.day("earlierTo");
            if (earlierFrom == null
                    || earlierTo == null
                    || !earlierFrom.isBefore(earlierTo)
                    || earlierTo.isAfter(from)) {
                question.wrong(
                        "earlierTo",
                        Objects.toString(asked.one("earlierTo"), ""),
                        "a day after `earlierFrom` and not after `from`, both given or neither");
                return null;
            }
            return cohort.during(earlierFrom, earlierTo);
        }

        Told told() {
            int least = snapshots.leastCell();
            Map<Key, Long> found = count(cohort, by);
            Map<List<String>, Long> groups = ofCases(found);
            long cases = groups.values().stream().mapToLong(Long::longValue).sum();
            long undetermined = found.entrySet().stream()
                    .filter(entry -> entry.getKey().cause().equals(Countable.UNDETERMINED))
                    .mapToLong(Map.Entry::getValue)
                    .sum();
            List<CauseShareView> shares = part.equals("shares") ? shares(found, groups, least) : null;
            String next = null;
            if (shares != null) {
                int end = Math.min(shares.size(), first + limit);
                next = end < shares.size() ? Cursors.cursor(end) : null;
                shares = shares.subList(Math.min(first, shares.size()), end);
            }
            OffsetDateTime now = OffsetDateTime.now(clock);
            return Told.of(
                    now,
                    new CauseAnswer(
                            now,
                            cohort.from(),
                            cohort.to(),
                            earlier == null ? null : earlier.from(),
                            earlier == null ? null : earlier.to(),
                            snapshots.open(cohort),
                            cases,
                            ShareView.of(undetermined, cases, least),
                            shares,
                            part.equals("trend") ? trends(least) : null,
                            part.equals("comparison") ? comparisons(least) : null,
                            part.equals("pareto") ? pareto(found, cases, least) : null,
                            part.equals("co-occurrence") ? pairs(found, cases, least) : null,
                            definitions(least)),
                    charts,
                    next);
        }

        private List<DefinitionView> definitions(int least) {
            List<Definitions.Definition> definitions = new ArrayList<>(Definitions.causes());
            definitions.add(Definitions.shares(part.equals("pareto")));
            if (part.equals("co-occurrence")) {
                definitions.add(Definitions.of(
                        "expected",
                        "Cases with both causes if neither had to do with the other: the cases with the one times the"
                                + " cases with the other, divided by all cases."));
            }
            if (part.equals("comparison")) {
                definitions.add(Definitions.of(
                        "difference",
                        "The first share less the second, with its 95 % interval (Newcombe's hybrid score)."));
            }
            if (part.equals("trend")) {
                definitions.add(Definitions.of(
                        "limits",
                        "The share over all months told, three standard errors down and up at the cases of the month;"
                                + " a share that never changes seldom leaves them."));
            }
            if (TESTED_TOGETHER.contains(part)) {
                definitions.add(Definitions.of(
                        "pValue",
                        "Probability that chance alone brings about as much or more: by Fisher's exact test where few"
                                + " cases are expected, else by chi-squared."
                                + (part.equals("trend")
                                        ? " Of all months at which a share could have changed the smallest p is taken,"
                                                + " times their number."
                                        : "")));
                definitions.add(Definitions.of(
                        "adjusted",
                        "p adjusted for the number of tests in the answer (Benjamini and Hochberg): the share of false"
                                + " ones to reckon with where all tests with a p up to this one count."));
            }
            definitions.addAll(Definitions.common(snapshots.terms(), least));
            return DefinitionView.of(definitions);
        }

        /** Cases by group and cause, and cases of the group alone under the blank cause. */
        private Map<Key, Long> count(Cohort chosen, List<GroupBy> groups) {
            Grouping grouping = question.grouping(groups);
            List<String> members = new ArrayList<>(List.of("question", "code"));
            members.addAll(grouping.members());
            Map<Key, Long> found = new HashMap<>();
            for (CountStore.Count count : counts.count(new CountStore.Wanted(
                    chosen,
                    List.of(Countable.CAUSE, Countable.CASE),
                    condition(groups),
                    grouping.dimensions(),
                    grouping.isByMonth(),
                    members))) {
                boolean cause = count.members().get(0).equals(Countable.CAUSE);
                found.merge(
                        new Key(
                                grouping.group(count, members),
                                cause ? count.members().get(1) : ""),
                        count.n(),
                        Long::sum);
            }
            found.values().removeIf(n -> n == 0);
            return found;
        }

        private String condition(List<GroupBy> groups) {
            int told = CauseMarks.CODE
                    + (axle != null || groups.contains(GroupBy.AXLE) ? CauseMarks.AXLE : 0)
                    + (side != null || groups.contains(GroupBy.SIDE) ? CauseMarks.SIDE : 0)
                    + (role != null || groups.contains(GroupBy.ROLE) ? CauseMarks.ROLE : 0);
            return "(k.question = 'case' OR k.question = 'cause' AND (k.code = 'undetermined' OR (k.marks & "
                    + CauseMarks.of(told) + ") <> 0"
                    + (axle == null ? "" : " AND k.axle = " + axle)
                    + (side == null ? "" : " AND k.side = '" + side + "'")
                    + (role == null ? "" : " AND k.standing = '" + role + "'")
                    + "))";
        }

        /** The number of cases of each group; members of causes don't part the cases. */
        private Map<List<String>, Long> ofCases(Map<Key, Long> found) {
            Map<List<String>, Long> groups = new HashMap<>();
            found.forEach((key, n) -> {
                if (key.cause().isEmpty()) {
                    groups.merge(casesOf(key.group()), n, Long::sum);
                }
            });
            return groups;
        }

        private List<String> casesOf(List<String> group) {
            return IntStream.range(0, by.size())
                    .mapToObj(index -> by.get(index).isOfCauses() ? "" : group.get(index))
                    .toList();
        }

        private boolean isWanted(String cause) {
            return !cause.isEmpty()
                    && (causes.isEmpty() || causes.contains(cause) || cause.equals(Countable.UNDETERMINED));
        }

        /** By group, then the most frequent cause first. */
        private List<CauseShareView> shares(Map<Key, Long> found, Map<List<String>, Long> groups, int least) {
            Grouping grouping = question.grouping(by);
            Comparator<Map.Entry<Key, Long>> order = (one, other) ->
                    grouping.order(one.getKey().group(), other.getKey().group());
            return found.entrySet().stream()
                    .filter(entry -> isWanted(entry.getKey().cause()))
                    .sorted(order.thenComparing(Map.Entry::getValue, Comparator.reverseOrder())
                            .thenComparing(entry -> entry.getKey().cause()))
                    .map(entry -> new CauseShareView(
                            grouping.named(entry.getKey().group()),
                            entry.getKey().cause(),
                            ShareView.of(
                                    entry.getValue(),
                                    groups.getOrDefault(casesOf(entry.getKey().group()), 0L),
                                    least)))
                    .toList();
        }

        private List<TrendView> trends(int least) {
            Map<Key, Long> found = count(cohort, List.of(GroupBy.MONTH));
            TreeMap<String, Long> months = new TreeMap<>();
            found.forEach((key, n) -> {
                if (key.cause().isEmpty()) {
                    months.put(key.group().get(0), n);
                }
            });
            months.values().removeIf(n -> n < least);
            List<String> told = found.keySet().stream()
                    .map(Key::cause)
                    .filter(this::isWanted)
                    .distinct()
                    .sorted()
                    .toList();
            List<List<Proportion>> shares = told.stream()
                    .map(cause -> months.entrySet().stream()
                            .map(month -> new Proportion(
                                    found.getOrDefault(new Key(List.of(month.getKey()), cause), 0L), month.getValue()))
                            .toList())
                    .toList();
            List<Optional<StepChange>> changes =
                    shares.stream().map(StepChange::strongest).toList();
            FalseDiscovery discovery = new FalseDiscovery(changes.stream()
                    .flatMap(Optional::stream)
                    .map(StepChange::pValue)
                    .toList());
            List<Double> adjusted = new ArrayList<>(discovery.adjusted());
            List<TrendView> trends = new ArrayList<>();
            List<String> names = List.copyOf(months.keySet());
            for (int index = 0; index < told.size(); index++) {
                StepView step = changes.get(index)
                        .map(change -> step(change, names, adjusted.remove(0), least))
                        .orElse(null);
                trends.add(new TrendView(told.get(index), points(shares.get(index), names, least), step));
                if (causes.isEmpty() || causes.contains(told.get(index))) {
                    charts.add(new Chart.Months(told.get(index), months(names, shares.get(index))));
                }
            }
            return trends;
        }

        private static List<Chart.Month> months(List<String> names, List<Proportion> shares) {
            return IntStream.range(0, names.size())
                    .mapToObj(index -> new Chart.Month(YearMonth.parse(names.get(index)), shares.get(index)))
                    .toList();
        }

        private StepView step(StepChange change, List<String> months, double adjusted, int least) {
            return new StepView(
                    months.get(change.first()),
                    ShareView.of(change.before().count(), change.before().of(), least),
                    ShareView.of(change.after().count(), change.after().of(), least),
                    StatisticsViews.told(change.pValue()),
                    StatisticsViews.told(adjusted));
        }

        private List<TrendPointView> points(List<Proportion> shares, List<String> months, int least) {
            if (shares.isEmpty()) {
                return List.of();
            }
            ControlChart chart = ControlChart.ofShares(shares);
            return IntStream.range(0, shares.size())
                    .mapToObj(index -> {
                        ControlChart.Point point = chart.points().get(index);
                        Proportion share = shares.get(index);
                        return new TrendPointView(
                                months.get(index),
                                ShareView.of(share.count(), share.of(), least),
                                IntervalView.of(point.limits()),
                                point.out());
                    })
                    .toList();
        }

        private List<ComparisonView> comparisons(int least) {
            List<String> values = compare == null ? List.of() : asked.all(compare.toString());
            Map<Key, Long> first = count(values.isEmpty() ? cohort : cohortOf(List.of(values.get(0))), List.of());
            Map<Key, Long> second;
            if (earlier != null) {
                second = count(earlier, List.of());
            } else if (values.size() == 2) {
                second = count(cohortOf(List.of(values.get(1))), List.of());
            } else {
                second = new HashMap<>(count(cohortOf(List.of()), List.of()));
                first.forEach((key, n) -> second.merge(key, -n, Long::sum));
            }
            Key all = new Key(List.of(), "");
            long ofFirst = first.getOrDefault(all, 0L);
            long ofSecond = second.getOrDefault(all, 0L);
            boolean told = ofFirst >= least && ofSecond >= least;
            List<String> causesTold = Stream.concat(first.keySet().stream(), second.keySet().stream())
                    .map(Key::cause)
                    .filter(this::isWanted)
                    .distinct()
                    .sorted()
                    .toList();
            List<TwoProportions> pairs = told
                    ? causesTold.stream()
                            .map(cause -> new TwoProportions(
                                    new Proportion(first.getOrDefault(new Key(List.of(), cause), 0L), ofFirst),
                                    new Proportion(second.getOrDefault(new Key(List.of(), cause), 0L), ofSecond)))
                            .toList()
                    : List.of();
            List<Significance> tests =
                    pairs.stream().map(TwoProportions::significance).toList();
            List<Double> adjusted =
                    new FalseDiscovery(tests.stream().map(Significance::pValue).toList()).adjusted();
            return IntStream.range(0, causesTold.size())
                    .mapToObj(index -> {
                        Key key = new Key(List.of(), causesTold.get(index));
                        ShareView one = ShareView.of(first.getOrDefault(key, 0L), ofFirst, least);
                        ShareView other = ShareView.of(second.getOrDefault(key, 0L), ofSecond, least);
                        if (!told) {
                            return new ComparisonView(key.cause(), one, other, null, null, null, null, null);
                        }
                        TwoProportions pair = pairs.get(index);
                        return new ComparisonView(
                                key.cause(),
                                one,
                                other,
                                StatisticsViews.told(pair.difference()),
                                IntervalView.of(pair.newcombe(ConfidenceLevel.OF_95_PERCENT)),
                                method(tests.get(index)),
                                StatisticsViews.told(tests.get(index).pValue()),
                                StatisticsViews.told(adjusted.get(index)));
                    })
                    .toList();
        }

        /** The cohort with the compared member set to these values; to none where all count. */
        private Cohort cohortOf(List<String> values) {
            Map<String, List<String>> changed = new HashMap<>(asked.values());
            if (compare != null) {
                changed.put(compare.toString(), values);
            }
            return question.again(new Asked(changed)).cohort();
        }

        private List<ParetoView> pareto(Map<Key, Long> found, long cases, int least) {
            Map<String, Long> byCause = found.entrySet().stream()
                    .filter(entry -> isWanted(entry.getKey().cause()))
                    .filter(entry -> !entry.getKey().cause().equals(Countable.UNDETERMINED))
                    .collect(Collectors.toMap(entry -> entry.getKey().cause(), Map.Entry::getValue, Long::sum));
            Pareto pareto = Pareto.of(cases < least ? Map.of() : byCause);
            charts.add(new Chart.Most(pareto));
            return pareto.lines().stream()
                    .map(line -> new ParetoView(
                            line.name(),
                            line.count(),
                            StatisticsViews.told(line.share()),
                            StatisticsViews.told(line.cumulative())))
                    .toList();
        }

        private List<PairView> pairs(Map<Key, Long> found, long cases, int least) {
            Collection<CountStore.Count> pairs = counts
                    .count(new CountStore.Wanted(
                            cohort, List.of(Countable.PAIR), "", List.of(), false, List.of("code", "action")))
                    .stream()
                    .filter(pair -> causes.isEmpty() || pair.members().stream().anyMatch(causes::contains))
                    .sorted(Comparator.comparing(CountStore.Count::n)
                            .reversed()
                            .thenComparing(pair -> String.join(" ", pair.members())))
                    .toList();
            if (cases < least) {
                return List.of();
            }
            List<CoOccurrence> together = pairs.stream()
                    .map(pair -> new CoOccurrence(
                            pair.n(),
                            found.getOrDefault(new Key(List.of(), pair.members().get(0)), pair.n()),
                            found.getOrDefault(new Key(List.of(), pair.members().get(1)), pair.n()),
                            cases))
                    .toList();
            List<Optional<Significance>> tests =
                    together.stream().map(CoOccurrence::significance).toList();
            List<Double> adjusted = new ArrayList<>(new FalseDiscovery(tests.stream()
                            .flatMap(Optional::stream)
                            .map(Significance::pValue)
                            .toList())
                    .adjusted());
            List<PairView> views = new ArrayList<>();
            int index = 0;
            for (CountStore.Count pair : pairs) {
                Optional<ObservedExpected> chance = together.get(index).againstChance();
                Optional<Significance> test = tests.get(index);
                views.add(new PairView(
                        pair.members().get(0),
                        pair.members().get(1),
                        ShareView.of(pair.n(), cases, least),
                        chance.map(each -> StatisticsViews.told(each.expected()))
                                .orElse(null),
                        chance.map(each -> StatisticsViews.told(each.ratio())).orElse(null),
                        test.map(Answering::method).orElse(null),
                        test.map(each -> StatisticsViews.told(each.pValue())).orElse(null),
                        test.map(each -> StatisticsViews.told(adjusted.remove(0)))
                                .orElse(null)));
                index++;
            }
            return List.copyOf(views);
        }

        private static String method(Significance significance) {
            return significance.method().name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }
}
