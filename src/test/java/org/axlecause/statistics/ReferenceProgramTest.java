package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.axlecause.statistics.ConfidenceLevel.OF_95_PERCENT;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The same questions over drawn counts, answered by R and its package survival; skipped where R isn't installed. The
 * questions are in {@code statistics/reference.R}.
 */
class ReferenceProgramTest {

    private static final long SEED = Long.getLong("statistics.seed", 20_260_801L);
    private static final double AGREES = 1e-9;
    private static final int TABLES = 40;
    private static final int DAYS = 365;
    private static final int GROUPS = 3;

    private static final Map<String, double[]> DRAWN = new LinkedHashMap<>();
    private static Map<String, double[]> answers = Map.of();

    @BeforeAll
    static void ask(@TempDir Path folder) throws IOException, InterruptedException {
        assumeTrue(isInstalled(), "R isn't installed");
        System.out.println("Numbers drawn with -Dstatistics.seed=" + SEED);
        draw(new SplittableRandom(SEED));
        Path data = Files.write(
                folder.resolve("data.R"),
                DRAWN.entrySet().stream()
                        .map(each -> each.getKey() + " <- c("
                                + DoubleStream.of(each.getValue())
                                        .mapToObj(Double::toString)
                                        .collect(Collectors.joining(", "))
                                + ")")
                        .toList());
        Path output = folder.resolve("answers.txt");
        Path errors = folder.resolve("errors.txt");
        Process process = new ProcessBuilder(
                        "Rscript", "--vanilla", "src/test/resources/statistics/reference.R", data.toString())
                .redirectOutput(output.toFile())
                .redirectError(errors.toFile())
                .start();
        assertThat(process.waitFor()).as(Files.readString(errors)).isZero();
        answers = Files.readAllLines(output).stream()
                .map(line -> line.trim().split("\\s+"))
                .collect(Collectors.toMap(
                        words -> words[0],
                        words -> Stream.of(words)
                                .skip(1)
                                .mapToDouble(ReferenceProgramTest::number)
                                .toArray()));
    }

    private static boolean isInstalled() throws InterruptedException {
        try {
            return new ProcessBuilder("Rscript", "--vanilla", "-e", "library(survival)")
                            .redirectErrorStream(true)
                            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException absent) {
            return false;
        }
    }

    private static double number(String word) {
        return word.equals("NA") ? Double.NaN : Double.parseDouble(word);
    }

    private static void draw(SplittableRandom chance) {
        drawn("of", TABLES, index -> 1 + Math.floor(Math.exp(chance.nextDouble() * Math.log(1_000_000))));
        drawn("count", TABLES, index -> Math.floor(chance.nextDouble() * chance.nextDouble() * (1 + at("of", index))));
        drawn("rate", TABLES, index -> Math.exp(chance.nextDouble() * 12 - 2));
        drawn(
                "events",
                TABLES,
                index -> Math.floor(
                        at("rate", index) + 3 * (chance.nextDouble() - 0.3) * Math.sqrt(at("rate", index)) + 1));
        for (String side : List.of("first", "second")) {
            drawn(side + "Of", TABLES, index -> 1 + Math.floor(Math.exp(chance.nextDouble() * Math.log(3000))));
            drawn(
                    side,
                    TABLES,
                    index -> Math.floor(chance.nextDouble() * (1 + at(side + "Of", index)) / (index % 5 + 1)));
        }
        drawn("pvalues", 60, index -> index % 10 == 0 ? 0.03125 : Math.pow(chance.nextDouble(), 4));
        int rows = DAYS * GROUPS;
        drawn("group", rows, index -> Math.floorDiv(index, DAYS));
        drawn("time", rows, index -> 1 + index % DAYS);
        drawn("died", rows, index -> Math.max(0, chance.nextInt(5 + 3 * (index / DAYS)) - 3.0));
        drawn("censored", rows, index -> chance.nextInt(6));
        drawn("target", 1, index -> 0.02 + 0.2 * chance.nextDouble());
        drawn("funnelOf", TABLES, index -> 5 + Math.floor(Math.exp(chance.nextDouble() * 11)));
        drawn("funnelCount", TABLES, index -> {
            double expected = at("funnelOf", index) * at("target", 0);
            return Math.max(0, Math.floor(expected + 4 * (chance.nextDouble() - 0.5) * Math.sqrt(expected)));
        });
        drawn("deviations", 37, index -> 6 * (chance.nextDouble() - 0.5) * (1 + index % 3));
        drawn("monthOf", 36, index -> 40 + chance.nextInt(400));
        drawn(
                "month",
                36,
                index -> Math.floor(at("monthOf", index) * (index < 22 ? 0.01 : 0.03) * (0.5 + chance.nextDouble())));
        drawn("forecast", 90, index -> (1 + index) / 97.0);
        drawn("forecastOf", 90, index -> 1 + chance.nextInt(50));
        drawn("cameTrue", 90, index -> Math.floor(chance.nextDouble() * (1 + at("forecastOf", index))));
        drawn("values", 500, index -> 1e6 + chance.nextDouble());
    }

    private static void drawn(String name, int size, IntToDoubleFunction draw) {
        double[] values = new double[size];
        DRAWN.put(name, values);
        for (int index = 0; index < size; index++) {
            values[index] = draw.applyAsDouble(index);
        }
    }

    private static double at(String name, int index) {
        return DRAWN.get(name)[index];
    }

    private static Proportion proportion(String count, String of, int index) {
        return new Proportion((long) at(count, index), (long) at(of, index));
    }

    private static void agrees(String question, double... ours) {
        double[] theirs = answers.get(question);
        assertThat(theirs).as(question).hasSameSizeAs(ours);
        for (int index = 0; index < ours.length; index++) {
            assertThat(ours[index])
                    .as("%s, number %d", question, index + 1)
                    .isCloseTo(theirs[index], within(AGREES * Math.max(1, Math.abs(theirs[index]))));
        }
    }

    private static double[] ends(Interval interval) {
        return new double[] {interval.low(), interval.high()};
    }

    @Test
    void shares_and_ratios_have_the_same_limits() {
        for (int index = 0; index < TABLES; index++) {
            agrees("wilson" + index, ends(proportion("count", "of", index).wilson(OF_95_PERCENT)));
            agrees("exact" + index, ends(proportion("count", "of", index).clopperPearson(OF_95_PERCENT)));
            agrees("garwood" + index, ends(ratio(index).garwood(OF_95_PERCENT)));
        }
    }

    private static ObservedExpected ratio(int index) {
        return new ObservedExpected((long) at("events", index), at("rate", index));
    }

    @Test
    void two_groups_differ_by_as_much_and_as_surely() {
        for (int index = 0; index < TABLES; index++) {
            TwoProportions groups =
                    new TwoProportions(proportion("first", "firstOf", index), proportion("second", "secondOf", index));
            Significance chiSquared = groups.chiSquared();
            boolean few = answers.get("expected" + index)[0] < 5;

            agrees("newcombe" + index, ends(groups.newcombe(OF_95_PERCENT)));
            agrees("fisher" + index, groups.fisherExact().pValue());
            assertThat(groups.significance().method())
                    .isEqualTo(few ? Significance.Method.FISHER_EXACT : Significance.Method.CHI_SQUARED);
            if (!Double.isNaN(answers.get("chisq" + index)[0])) {
                agrees("chisq" + index, chiSquared.statistic(), chiSquared.pValue());
            }
        }
    }

    @Test
    void many_comparisons_are_adjusted_alike() {
        agrees(
                "adjusted",
                FalseDiscovery.of(DRAWN.get("pvalues")).adjusted().stream()
                        .mapToDouble(Double::doubleValue)
                        .toArray());
    }

    @Test
    void survival_is_the_same_step_by_step() {
        for (int group = 0; group < GROUPS; group++) {
            KaplanMeier curve = curve(group);
            List<SurvivalStep> steps = curve.steps().stream()
                    .filter(step -> step.events() > 0 && step.survival() > 0)
                    .toList();
            List<Interval> limits = steps.stream()
                    .map(step -> step.logLog(OF_95_PERCENT).orElseThrow())
                    .toList();

            assertThat(steps).hasSizeGreaterThan(20);
            agrees(
                    "times" + group,
                    steps.stream().mapToDouble(SurvivalStep::time).toArray());
            agrees(
                    "risk" + group,
                    steps.stream().mapToDouble(SurvivalStep::atRisk).toArray());
            agrees(
                    "survival" + group,
                    steps.stream().mapToDouble(SurvivalStep::survival).toArray());
            agrees(
                    "error" + group,
                    steps.stream().mapToDouble(SurvivalStep::standardError).toArray());
            agrees("low" + group, limits.stream().mapToDouble(Interval::low).toArray());
            agrees("high" + group, limits.stream().mapToDouble(Interval::high).toArray());
            double median = answers.get("median" + group)[0];
            if (Double.isNaN(median)) {
                assertThat(curve.median()).isEmpty();
            } else {
                assertThat(curve.median()).hasValue((long) median);
            }
        }
    }

    private static KaplanMeier curve(int group) {
        List<SurvivalTime> counts = new ArrayList<>();
        for (int row = group * DAYS; row < (group + 1) * DAYS; row++) {
            counts.add(new SurvivalTime((long) at("time", row), (long) at("died", row), (long) at("censored", row)));
        }
        return KaplanMeier.of(counts);
    }

    @Test
    void groups_are_told_apart_alike() {
        LogRank logRank = LogRank.of(
                IntStream.range(0, GROUPS).mapToObj(ReferenceProgramTest::curve).toList());

        agrees("logrank", logRank.chiSquared(), logRank.pValue());
        agrees("logrank-observed", ofGroups(logRank, group -> group.observed()));
        agrees("logrank-expected", ofGroups(logRank, LogRank.Group::expected));
        agrees("logrank-variance", ofGroups(logRank, LogRank.Group::variance));
    }

    private static double[] ofGroups(LogRank logRank, ToDoubleFunction<LogRank.Group> number) {
        return logRank.groups().stream().mapToDouble(number).toArray();
    }

    @Test
    void funnels_have_the_same_limits_and_tails() {
        for (int index = 0; index < TABLES; index++) {
            Funnel.Point share = Funnel.ofShares(
                            at("target", 0),
                            List.of(new Funnel.Count("site", (long) at("funnelCount", index), at("funnelOf", index))))
                    .points()
                    .get(0);
            Funnel.Point ratio = Funnel.ofRatios(
                            List.of(new Funnel.Count("site", (long) at("events", index), at("rate", index))))
                    .points()
                    .get(0);

            agrees("funnel-share" + index, limits(share.limits()));
            agrees("funnel-share-p" + index, share.pValue());
            agrees("funnel-ratio" + index, limits(ratio.limits()));
            agrees("funnel-ratio-p" + index, ratio.pValue());
        }
        agrees("overdispersion", Funnel.overdispersion(DRAWN.get("deviations")));
    }

    private static double[] limits(FunnelLimits limits) {
        return new double[] {
            limits.outer().low(),
            limits.inner().low(),
            limits.inner().high(),
            limits.outer().high()
        };
    }

    @Test
    void the_step_is_found_at_the_same_month() {
        StepChange change = StepChange.strongest(IntStream.range(0, DRAWN.get("month").length)
                        .mapToObj(index -> proportion("month", "monthOf", index))
                        .toList())
                .orElseThrow();

        agrees("step", change.first(), change.pValue());
    }

    @Test
    void forecasts_are_scored_alike() {
        Calibration calibration = Calibration.of(
                IntStream.range(0, DRAWN.get("forecast").length)
                        .mapToObj(index -> new Calibration.Forecasts(
                                at("forecast", index), proportion("cameTrue", "forecastOf", index)))
                        .toList(),
                10);

        agrees(
                "calibration",
                calibration.brier(),
                calibration.reliability(),
                calibration.resolution(),
                calibration.uncertainty(),
                calibration.logLoss(),
                calibration.expectedCalibrationError());
    }

    @Test
    void values_far_from_zero_have_the_same_moments() {
        double[] values = DRAWN.get("values");
        Moments moments = Moments.of(values);

        agrees("moments", moments.mean(), moments.standardDeviation(), Moments.lagOneAutocorrelation(values));
    }
}
