package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.casefile.CauseMarks;
import org.axlecause.casefile.Countable;
import org.axlecause.facts.CauseCode;
import org.axlecause.statistics.MoreViews.SiteAnswer;
import org.axlecause.statistics.MoreViews.SitePointView;
import org.axlecause.statistics.StatisticsViews.DefinitionView;
import org.axlecause.statistics.StatisticsViews.IntervalView;
import org.axlecause.statistics.StatisticsViews.ShareView;
import org.jspecify.annotations.Nullable;

/** Answers whether a site stands out from what its vehicles lead one to expect. */
@ApplicationScoped
class AskSites {

    private static final String TESTED = "tested";
    private static final String FIRST_TIME_CURE = "first-time-cure";
    private static final String DETERMINED = "determined";
    private static final String OFFICIAL_FAILED = "official-failed";
    private static final String OFFICIAL_PASSED = "official-passed";

    private static final List<Dimension> STRATA =
            List.of(Dimension.SITE, Dimension.LAYOUT, Dimension.AGE_BAND, Dimension.ODOMETER_BAND);

    private final Snapshots snapshots;
    private final CountStore counts;
    private final RepairStore repairs;
    private final Clock clock;

    AskSites(Snapshots snapshots, CountStore counts, RepairStore repairs, Clock clock) {
        this.snapshots = snapshots;
        this.counts = counts;
        this.repairs = repairs;
        this.clock = clock;
    }

    /** What sites are compared by: events of how many. */
    enum Measure {
        NOT_CURED_FIRST_TIME(
                "cases whose first final test did not prove the repair, of those with a final test",
                TESTED,
                FIRST_TIME_CURE),
        UNDETERMINED("cases without a confirmed cause, of all", Countable.UNDETERMINED, DETERMINED),
        FAILED_OFFICIAL_TEST(
                "cases that failed the official test afterwards, of those whose result is on record",
                OFFICIAL_FAILED,
                OFFICIAL_PASSED),
        RETURNED("repaired axles that came back, of those that were followed to the end"),
        CONFIRMED_CAUSE("cases in which the cause asked for was confirmed, of all", Countable.UNDETERMINED, DETERMINED);

        private final String means;
        private final List<String> outcomes;

        Measure(String means, String... outcomes) {
            this.means = means;
            this.outcomes = List.of(outcomes);
        }

        /** The condition on countables that are outcomes it is made of. */
        String condition() {
            return outcomes.stream().collect(Collectors.joining("', '", "k.code IN ('", "')"));
        }

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * Sites beside each other.
     *
     * @param all events of all sites
     * @param sites each against what is expected of its vehicles
     */
    private record Compared(Proportion all, Map<String, ReferenceRates.Standardised> sites) {

        static Compared of(Map<String, List<ReferenceRates.Stratum>> sites) {
            List<ReferenceRates.Stratum> all =
                    sites.values().stream().flatMap(List::stream).toList();
            ReferenceRates rates = ReferenceRates.of(all);
            Map<String, ReferenceRates.Standardised> standardised = new TreeMap<>();
            sites.forEach((site, strata) -> standardised.put(site, rates.standardise(strata)));
            return new Compared(
                    all.stream().map(ReferenceRates.Stratum::counts).reduce(new Proportion(0, 0), Proportion::plus),
                    standardised);
        }
    }

    Told answer(Asked asked, Actor actor) {
        return snapshots.of(asked, actor, this::answer);
    }

    private Told answer(ReadQuestion question) {
        question.takes("measure", "cause");
        Cohort cohort = question.cohort();
        String word = Objects.requireNonNullElse(
                question.word(
                        "measure",
                        Stream.of(Measure.values()).map(Measure::toString).toList()),
                Measure.NOT_CURED_FIRST_TIME.toString());
        String cause = question.word(
                "cause", Stream.of(CauseCode.values()).map(CauseCode::toString).toList());
        if (word.equals(Measure.CONFIRMED_CAUSE.toString()) == (cause == null)) {
            question.wrong(
                    "cause",
                    Objects.toString(cause, ""),
                    "the code of a cause with `measure=" + Measure.CONFIRMED_CAUSE + "`, and nothing without it");
        }
        question.check();
        Measure measure = Stream.of(Measure.values())
                .filter(each -> each.toString().equals(word))
                .findFirst()
                .orElseThrow();

        OffsetDateTime now = OffsetDateTime.now(clock);
        int least = snapshots.leastCell();
        Compared compared = cause == null
                ? Compared.of(measure == Measure.RETURNED ? returned(cohort, now) : counted(cohort, measure))
                : confirmed(cohort, cause);
        Map<String, ReferenceRates.Standardised> standardised = compared.sites();
        Funnel funnel = Funnel.ofRatios(standardised.entrySet().stream()
                .filter(entry ->
                        entry.getValue().cases() >= least && entry.getValue().expected() > 0)
                .map(entry -> new Funnel.Count(
                        entry.getKey(),
                        entry.getValue().observed(),
                        entry.getValue().expected()))
                .toList());
        Map<String, Funnel.Point> points = new HashMap<>();
        funnel.points().forEach(point -> points.put(point.name(), point));
        return Told.of(
                now,
                new SiteAnswer(
                        now,
                        cohort.from(),
                        cohort.to(),
                        snapshots.open(cohort),
                        measure.toString(),
                        ShareView.of(compared.all().count(), compared.all().of(), least),
                        points.isEmpty() ? null : StatisticsViews.told(funnel.overdispersion()),
                        standardised.entrySet().stream()
                                .map(entry -> view(entry.getKey(), entry.getValue(), points.get(entry.getKey()), least))
                                .toList(),
                        definitions(measure, least)),
                List.of(new Chart.Sites(cause == null ? measure.toString() : cause, funnel)),
                null);
    }

    private static SitePointView view(
            String site, ReferenceRates.Standardised counts, Funnel.@Nullable Point point, int least) {
        if (counts.cases() < least) {
            return new SitePointView(site, counts.cases(), null, null, null, null, null, null, null, true);
        }
        return new SitePointView(
                site,
                counts.cases(),
                counts.observed(),
                StatisticsViews.told(counts.expected()),
                point == null ? null : StatisticsViews.told(point.value()),
                point == null ? null : IntervalView.of(point.limits().inner()),
                point == null ? null : IntervalView.of(point.limits().outer()),
                point == null ? null : StatisticsViews.told(point.pValue()),
                point == null
                        ? null
                        : point.verdict().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                false);
    }

    private Map<String, List<ReferenceRates.Stratum>> counted(Cohort cohort, Measure measure) {
        Map<List<String>, Map<String, Long>> byStratum = new HashMap<>();
        for (CountStore.Count count : counts.count(new CountStore.Wanted(
                cohort, List.of(Countable.OUTCOME), measure.condition(), STRATA, false, List.of("code")))) {
            byStratum
                    .computeIfAbsent(count.group(), group -> new HashMap<>())
                    .merge(count.members().get(0), count.n(), Long::sum);
        }
        Map<String, List<ReferenceRates.Stratum>> sites = new TreeMap<>();
        byStratum.forEach((group, found) -> add(sites, group, share(measure, found)));
        return sites;
    }

    /**
     * The cause by site against what its vehicles lead to expect: cases by site and stratum, the share of the cause by
     * stratum over all sites, and the cases with it by site are three counts, none of which needs the rows of the cases.
     */
    private Compared confirmed(Cohort cohort, String cause) {
        String condition = "k.code = '" + cause + "' AND (k.marks & " + CauseMarks.of(CauseMarks.CODE) + ") <> 0";
        List<String> causes = List.of(Countable.CAUSE);
        Map<String, Long> events = new HashMap<>();
        counts.count(new CountStore.Wanted(
                        cohort, causes, condition, STRATA.subList(1, STRATA.size()), false, List.of()))
                .forEach(count -> events.merge(String.join(" ", count.group()), count.n(), Long::sum));
        Map<String, Long> observed = new HashMap<>();
        counts.count(new CountStore.Wanted(cohort, causes, condition, List.of(Dimension.SITE), false, List.of()))
                .forEach(count -> observed.merge(count.group().get(0), count.n(), Long::sum));
        Map<String, List<ReferenceRates.Stratum>> cases = counted(cohort, Measure.CONFIRMED_CAUSE);
        Map<String, Long> ofStratum = new HashMap<>();
        cases.values()
                .forEach(strata -> strata.forEach(stratum ->
                        ofStratum.merge(stratum.name(), stratum.counts().of(), Long::sum)));
        Map<String, Proportion> shares = new HashMap<>();
        ofStratum.forEach((stratum, of) -> shares.put(stratum, new Proportion(events.getOrDefault(stratum, 0L), of)));
        ReferenceRates rates = new ReferenceRates(shares);
        Map<String, ReferenceRates.Standardised> sites = new TreeMap<>();
        cases.forEach((site, strata) -> {
            ReferenceRates.Standardised expected = rates.standardise(strata);
            sites.put(
                    site,
                    new ReferenceRates.Standardised(
                            observed.getOrDefault(site, 0L), expected.expected(), expected.cases(), 0));
        });
        return new Compared(shares.values().stream().reduce(new Proportion(0, 0), Proportion::plus), sites);
    }

    private static Proportion share(Measure measure, Map<String, Long> counts) {
        long tested = counts.getOrDefault(TESTED, 0L);
        long failed = counts.getOrDefault(OFFICIAL_FAILED, 0L);
        long undetermined = counts.getOrDefault(Countable.UNDETERMINED, 0L);
        return switch (measure) {
            case NOT_CURED_FIRST_TIME -> new Proportion(tested - counts.getOrDefault(FIRST_TIME_CURE, 0L), tested);
            case UNDETERMINED -> new Proportion(undetermined, undetermined + counts.getOrDefault(DETERMINED, 0L));
            case FAILED_OFFICIAL_TEST -> new Proportion(failed, failed + counts.getOrDefault(OFFICIAL_PASSED, 0L));
            case CONFIRMED_CAUSE -> new Proportion(0, undetermined + counts.getOrDefault(DETERMINED, 0L));
            case RETURNED -> throw new IllegalArgumentException("Returns are counted by repairs");
        };
    }

    /** Repairs that were proved so long ago that each was followed to the end. */
    private Map<String, List<ReferenceRates.Stratum>> returned(Cohort cohort, OffsetDateTime now) {
        LocalDate asOf = now.atZoneSameInstant(ZoneOffset.UTC).toLocalDate();
        int most = snapshots.terms().returnDays();
        Map<List<String>, long[]> byStratum = new HashMap<>();
        for (RepairStore.Followed followed :
                repairs.followedToTheEnd(new RepairStore.Wanted(cohort, STRATA, List.of(), false, asOf, most))) {
            long[] both = byStratum.computeIfAbsent(followed.group(), group -> new long[2]);
            both[0] += followed.returned() ? followed.n() : 0;
            both[1] += followed.n();
        }
        Map<String, List<ReferenceRates.Stratum>> sites = new TreeMap<>();
        byStratum.forEach((group, both) -> add(sites, group, new Proportion(both[0], both[1])));
        return sites;
    }

    private static void add(Map<String, List<ReferenceRates.Stratum>> sites, List<String> group, Proportion counts) {
        if (counts.of() > 0) {
            sites.computeIfAbsent(group.get(0), site -> new ArrayList<>())
                    .add(new ReferenceRates.Stratum(String.join(" ", group.subList(1, group.size())), counts));
        }
    }

    private List<DefinitionView> definitions(Measure measure, int least) {
        List<Definitions.Definition> definitions = new ArrayList<>(List.of(
                Definitions.of("measure", measure.toString().replace('-', ' ') + ": " + measure.means + "."),
                Definitions.of(
                        "expected",
                        "What the site's cases would come to if each stratum of age, distance and layout had the share"
                                + " that it has over all sites asked about (indirect standardisation)."),
                Definitions.of(
                        "limits",
                        "Limits of 95 % and of 99.8 % for the ratio of observed to expected at that size, widened by"
                                + " overdispersion. About one site in twenty lies outside the inner ones by chance alone;"
                                + " standing out is a reason to look, not a verdict on a site.")));
        definitions.addAll(Definitions.common(snapshots.terms(), least));
        return DefinitionView.of(definitions);
    }
}
