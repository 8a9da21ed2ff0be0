package org.axlecause.bench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.axlecause.HotCaseRun;
import org.axlecause.IngestRun;
import org.axlecause.PagesRun;
import org.axlecause.ReadingRun;
import org.axlecause.ReplicasRun;
import org.axlecause.RuleBaseRun;
import org.axlecause.StartUpRun;
import org.axlecause.StoredRun;
import org.axlecause.shared.Json;
import org.jspecify.annotations.Nullable;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.results.format.ResultFormatType;
import org.openjdk.jmh.runner.NoBenchmarksException;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.util.Version;

/**
 * Runs the benchmarks of parts and of the whole service, writes their results as JSON and prints one table with the machine
 * they ran on.
 */
public final class Benchmarks {

    private static final int MEDIAN = 50;
    private static final String ALLOCATED = "gc.alloc.rate.norm";
    private static final List<Class<? extends ServiceRun>> RUNS = List.of(
            RuleBaseRun.class,
            IngestRun.class,
            ReplicasRun.class,
            HotCaseRun.class,
            ReadingRun.class,
            PagesRun.class,
            StoredRun.class,
            StartUpRun.class);
    private static final PrintStream OUT = new PrintStream(System.out, true, StandardCharsets.UTF_8);

    private Benchmarks() {}

    /** Arguments: which benchmarks (a regular expression), the file for the results, the version of the service. */
    public static void main(String[] args) throws Exception {
        Path file = Path.of(args[1]);
        Files.deleteIfExists(file);
        Collection<RunResult> results = parts(args[0], file);
        List<Measured> measured = new ArrayList<>();
        List<String> faulted = new ArrayList<>();
        for (Class<? extends ServiceRun> run : RUNS) {
            if (Pattern.compile(args[0]).matcher(run.getName()).find()) {
                try {
                    measured.addAll(run.getConstructor().newInstance().run());
                } catch (Exception | AssertionError fault) {
                    fault.printStackTrace(OUT);
                    faulted.add(run.getSimpleName());
                }
            }
        }
        if (results.isEmpty() && measured.isEmpty() && faulted.isEmpty()) {
            throw new IllegalArgumentException(
                    "No benchmark is called '" + args[0] + "'; leave -Donly out to run all.");
        }
        List<String> table = table(results, args[2]);
        measured.forEach(line -> table.add(row(
                line.name(),
                line.parameters(),
                number(line.score()),
                number(line.spread()),
                line.unit(),
                "-",
                "-",
                line.goal())));
        table.forEach(OUT::println);
        append(measured, file);
        OUT.println("results: " + file);
        if (!faulted.isEmpty()) {
            throw new IllegalStateException("Not measured, for the faults told above: " + String.join(", ", faulted));
        }
    }

    private static Collection<RunResult> parts(String only, Path file) throws RunnerException {
        try {
            return new Runner(new OptionsBuilder()
                            .include(only)
                            .resultFormat(ResultFormatType.JSON)
                            .result(file.toString())
                            .addProfiler(GCProfiler.class)
                            .addProfiler(CpuTime.class)
                            .shouldFailOnError(true)
                            .build())
                    .run();
        } catch (NoBenchmarksException onlyTheService) {
            return List.of();
        }
    }

    /** Adds what was measured on the whole service to the harness's list of results. */
    private static void append(List<Measured> measured, Path file) throws IOException {
        ArrayNode all = !Files.exists(file) || Files.size(file) == 0
                ? Json.mapper().createArrayNode()
                : (ArrayNode) Json.mapper().readTree(file.toFile());
        measured.forEach(line -> all.add(Json.mapper().<JsonNode>valueToTree(line)));
        Json.mapper().writerWithDefaultPrettyPrinter().writeValue(file.toFile(), all);
    }

    private static List<String> table(Collection<RunResult> results, String version) throws IOException {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add("Axlecause " + version + " on " + machine());
        lines.add("Java " + System.getProperty("java.runtime.version") + " (" + System.getProperty("java.vm.name")
                + "), " + System.getProperty("os.name") + " " + System.getProperty("os.version") + ", JMH "
                + Version.getPlainVersion());
        lines.add(row("benchmark", "parameters", "score", "+/-", "unit", "CPU ms", "KB/op", "goal"));
        for (RunResult result : results) {
            BenchmarkParams params = result.getParams();
            Result<?> primary = result.getPrimaryResult();
            lines.add(row(
                    params.getBenchmark().substring(params.getBenchmark().lastIndexOf('.') + 1),
                    parameters(params),
                    number(score(result)),
                    number(primary.getScoreError()),
                    primary.getScoreUnit(),
                    beside(result, CpuTime.MILLISECONDS, 1),
                    beside(result, ALLOCATED, 1024),
                    verdict(params, score(result), results)));
        }
        return lines;
    }

    private static String row(
            String benchmark,
            String parameters,
            String score,
            String error,
            String unit,
            String cpu,
            String kilobytes,
            String goal) {
        return String.format(
                Locale.ROOT,
                "%-28s %-28s %10s %9s  %-8s %8s %8s  %s",
                benchmark,
                parameters,
                score,
                error,
                unit,
                cpu,
                kilobytes,
                goal);
    }

    /** The median where single runs were timed, else the mean. */
    private static double score(RunResult result) {
        Result<?> primary = result.getPrimaryResult();
        return result.getParams().getMode() == Mode.SampleTime
                ? primary.getStatistics().getPercentile(MEDIAN)
                : primary.getScore();
    }

    private static String beside(RunResult result, String label, double per) {
        Result<?> measured = result.getSecondaryResults().get(label);
        return measured == null ? "-" : number(measured.getScore() / per);
    }

    private static String parameters(BenchmarkParams params) {
        List<String> words = new ArrayList<>();
        params.getParamsKeys().forEach(key -> words.add(key + "=" + params.getParam(key)));
        return String.join(", ", words);
    }

    private static String verdict(BenchmarkParams params, double score, Collection<RunResult> results) {
        Goal goal = goalOf(params.getBenchmark());
        if (goal == null) {
            return "";
        }
        boolean more = params.getMode() == Mode.Throughput;
        double reached = score / measureOf(goal, params, results);
        boolean met = more ? reached > goal.value() : reached < goal.value();
        return (goal.of().isEmpty() ? "" : number(reached) + " of " + goal.of() + ", ")
                + (more ? "above " : "below ")
                + number(goal.value())
                + (met ? ": met" : ": MISSED");
    }

    /** What a goal is a share of: the score of its fellow, else one. */
    private static double measureOf(Goal goal, BenchmarkParams params, Collection<RunResult> results) {
        if (goal.of().isEmpty()) {
            return 1;
        }
        String benchmark = params.getBenchmark();
        String fellow = benchmark.substring(0, benchmark.lastIndexOf('.') + 1) + goal.of();
        return results.stream()
                .filter(result -> result.getParams().getBenchmark().equals(fellow)
                        && parameters(result.getParams()).equals(parameters(params)))
                .mapToDouble(Benchmarks::score)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("The benchmark " + fellow + " was not run"));
    }

    private static @Nullable Goal goalOf(String benchmark) {
        int dot = benchmark.lastIndexOf('.');
        try {
            for (var method : Class.forName(benchmark.substring(0, dot)).getMethods()) {
                if (method.getName().equals(benchmark.substring(dot + 1))) {
                    return method.getAnnotation(Goal.class);
                }
            }
            return null;
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String number(double value) {
        return Double.isNaN(value) ? "-" : String.format(Locale.ROOT, value < 100 ? "%.2f" : "%.0f", value);
    }

    private static String machine() throws IOException {
        Path cpus = Path.of("/proc/cpuinfo");
        String model = System.getProperty("os.arch");
        if (Files.isReadable(cpus)) {
            for (String line : Files.readAllLines(cpus)) {
                if (line.startsWith("model name")) {
                    model = line.substring(line.indexOf(':') + 1).strip();
                }
            }
        }
        return model + ", " + Runtime.getRuntime().availableProcessors() + " cores, "
                + Runtime.getRuntime().maxMemory() / (1 << 20) + " MiB heap";
    }
}
