package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.facts.ScopeItem;
import org.axlecause.statistics.MoreViews.AtView;
import org.axlecause.statistics.MoreViews.CurveView;
import org.axlecause.statistics.MoreViews.LogRankView;
import org.axlecause.statistics.MoreViews.ReturnAnswer;
import org.axlecause.statistics.StatisticsViews.DefinitionView;
import org.axlecause.statistics.StatisticsViews.IntervalView;
import org.jspecify.annotations.Nullable;

/** Answers which repairs come back, and after how many days. */
@ApplicationScoped
class AskReturns {

    private static final String ITEM = "item";
    private static final String CURVE = "curve";
    private static final String END = "end";

    /** How much of its curves an answer tells. */
    private static final List<String> CURVES = List.of("whole", END);

    /** What curves are told apart by. */
    static final List<String> BY =
            Stream.concat(AskCauses.COMPARED.stream(), Stream.of(ITEM)).toList();

    private final Snapshots snapshots;
    private final RepairStore repairs;
    private final Clock clock;

    AskReturns(Snapshots snapshots, RepairStore repairs, Clock clock) {
        this.snapshots = snapshots;
        this.repairs = repairs;
        this.clock = clock;
    }

    Told answer(Asked asked, Actor actor) {
        return snapshots.of(asked, actor, this::answer);
    }

    private Told answer(ReadQuestion question) {
        question.takes(ITEM, "by", CURVE);
        Cohort cohort = question.cohort();
        List<String> items = question.words(
                ITEM, Stream.of(ScopeItem.values()).map(ScopeItem::toString).toList());
        String word = question.word("by", BY);
        boolean whole = !END.equals(question.word(CURVE, CURVES));
        question.check();

        boolean byItem = ITEM.equals(word);
        Grouping grouping = question.grouping(
                word == null || byItem ? List.of() : GroupBy.of(word).stream().toList());
        OffsetDateTime now = OffsetDateTime.now(clock);
        LocalDate asOf = now.atZoneSameInstant(ZoneOffset.UTC).toLocalDate();
        int most = snapshots.terms().returnDays();
        Map<String, List<SurvivalTime>> times = new TreeMap<>(
                grouping.by().isEmpty()
                        ? Comparator.<String>naturalOrder()
                        : (one, other) -> grouping.order(List.of(one), List.of(other)));
        for (RepairStore.Followed followed :
                repairs.followed(new RepairStore.Wanted(cohort, grouping.dimensions(), items, byItem, asOf, most))) {
            String group = byItem
                    ? followed.group().get(0)
                    : String.join(
                            "",
                            grouping.group(
                                    new CountStore.Count(followed.group(), null, List.of(), 0, BigDecimal.ZERO),
                                    List.of()));
            times.computeIfAbsent(group, each -> new ArrayList<>())
                    .add(new SurvivalTime(
                            followed.days(),
                            followed.returned() ? followed.n() : 0,
                            followed.returned() ? 0 : followed.n()));
        }
        int least = snapshots.leastCell();
        Map<String, KaplanMeier> curves = new LinkedHashMap<>();
        times.forEach((group, counts) -> curves.put(group, KaplanMeier.of(counts)));
        List<KaplanMeier> told = curves.values().stream()
                .filter(curve -> curve.number() >= least)
                .toList();
        return Told.of(
                now,
                new ReturnAnswer(
                        now,
                        cohort.from(),
                        cohort.to(),
                        snapshots.open(cohort),
                        curves.entrySet().stream()
                                .map(entry -> view(
                                        word == null ? Map.of() : Map.of(word, entry.getKey()),
                                        entry.getValue(),
                                        least,
                                        whole))
                                .toList(),
                        word == null || byItem || told.size() < 2 ? null : view(LogRank.of(told)),
                        definitions(most, least)),
                List.of(new Chart.Returns(
                        curves.entrySet().stream()
                                .filter(entry -> entry.getValue().number() >= least)
                                .map(entry -> new Chart.Group(entry.getKey(), entry.getValue()))
                                .toList(),
                        most)),
                null);
    }

    private static CurveView view(Map<String, String> group, KaplanMeier curve, int least, boolean whole) {
        if (curve.number() < least) {
            return new CurveView(group, curve.number(), null, true, null);
        }
        List<SurvivalStep> steps = curve.steps();
        List<AtView> at = new ArrayList<>();
        for (int index = whole ? 0 : steps.size() - 1; index < steps.size(); index++) {
            SurvivalStep step = steps.get(index);
            if (step.events() > 0 || index == steps.size() - 1) {
                at.add(new AtView(
                        step.time(),
                        step.atRisk(),
                        StatisticsViews.told(step.survival()),
                        StatisticsViews.told(step.standardError()),
                        step.logLog(ConfidenceLevel.OF_95_PERCENT)
                                .map(IntervalView::of)
                                .orElse(null)));
            }
        }
        return new CurveView(group, curve.number(), curve.events(), false, at);
    }

    private static @Nullable LogRankView view(LogRank test) {
        return new LogRankView(
                StatisticsViews.told(test.chiSquared()), test.degreesOfFreedom(), StatisticsViews.told(test.pValue()));
    }

    private List<DefinitionView> definitions(int most, int least) {
        List<Definitions.Definition> definitions = new ArrayList<>(List.of(
                Definitions.of(
                        "repair", "An axle whose repair a final test has proved, with the items worked on there."),
                Definitions.of(
                        "return",
                        "A later case of the same vehicle, known by its registration or VIN, or one that names this case as"
                                + " its previous one, about the same axle, within " + most + " days of the proof. Only"
                                + " cases that have ended count. Vehicles that went elsewhere are not seen."),
                Definitions.of(
                        "curve",
                        "Kaplan and Meier's share without a return, with Greenwood's standard error; repairs are followed to"
                                + " the moment of the answer, " + most + " days at most."),
                Definitions.of(
                        "item", "A repair with several items is in the group of each; such groups are not compared.")));
        definitions.addAll(Definitions.common(
                snapshots.terms(),
                least,
                "Of the curve, 95 %, by the log-log transform; it says nothing where no repair came back."));
        return DefinitionView.of(definitions);
    }
}
