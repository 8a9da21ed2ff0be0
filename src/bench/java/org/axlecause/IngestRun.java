package org.axlecause;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.axlecause.LoadLoop.Outcome;
import org.axlecause.bench.Measured;
import org.axlecause.bench.ServiceRun;

/**
 * Events taken by the packaged service, beside the least that the platform needs for a request that stores its body. Both
 * run on one database and are measured in turn, so that what the machine does meanwhile meets both.
 */
public final class IngestRun implements ServiceRun {

    static final int ROUNDS = Integer.getInteger("bench.rounds", 3);
    static final Duration TIME = Duration.ofSeconds(Integer.getInteger("bench.seconds", 20));

    private static final String PER_SECOND = "1/s";
    private static final double HALF = 0.5;
    private static final double WORST = 0.99;
    private static final double STILL_FASTER = 1.05;
    private static final int MOST_WARM_UPS = 8;

    @Override
    public List<Measured> run() throws Exception {
        Path folder = Files.createTempDirectory("axlecause-bench");
        try (Installation installation = new Installation(folder);
                PackagedService service = service(installation).start();
                PackagedService baseline = BaselineService.on(installation).start()) {
            service.putSite();
            return measured(service, baseline.port());
        }
    }

    /** A replica that refuses nobody for sending much, not yet started. */
    static PackagedService service(Installation installation) throws Exception {
        return installation
                .replica()
                .with("AXLECAUSE_REQUESTS_PER_MINUTE", "100000000")
                .atFullSpeed();
    }

    private List<Measured> measured(PackagedService service, int baselinePort) throws Exception {
        IngestLoad load = new IngestLoad(service.port(), TIME);
        LoadLoop least = new LoadLoop(baselinePort, LoadLoop.CONNECTIONS);
        byte[] row = LoadLoop.post(BaselineService.PATH, BaselineService.TYPE, new BenchedEvents().tested("ROW"));
        warmUp(load, least, row);
        Map<String, List<Double>> rates = new TreeMap<>();
        for (int round = 0; round < ROUNDS; round++) {
            round(load, least, row)
                    .forEach((name, rate) -> rates.computeIfAbsent(name, any -> new ArrayList<>())
                            .add(rate));
        }
        List<Double> baseline = rates.getOrDefault("baseline", List.of());
        List<Double> singles = rates.getOrDefault("singles", List.of());
        List<Double> wholeCases = rates.getOrDefault("whole cases", List.of());
        List<Double> manyCases = rates.getOrDefault("many cases", List.of());
        List<Measured> lines = new ArrayList<>();
        lines.add(Measured.of("ingest", "baseline endpoint", baseline, PER_SECOND));
        lines.add(Measured.of("ingest", "single events", singles, PER_SECOND));
        lines.add(Measured.of("ingest", "events, 20 of one case", wholeCases, PER_SECOND));
        lines.add(Measured.of("ingest", "events, 20 of many cases", manyCases, PER_SECOND));
        lines.add(Measured.atLeast(0.35, "ingest", "single / baseline", ratios(singles, baseline), ""));
        lines.add(Measured.atLeast(1.5, "ingest", "20 of one case / baseline", ratios(wholeCases, baseline), ""));
        lines.add(Measured.atLeast(0.6, "ingest", "20 of many / baseline", ratios(manyCases, baseline), ""));
        lines.addAll(tail(load, Measured.of("", "", singles, "").score()));
        lines.add(Measured.of(
                "memory", "resident, after full load", List.of(StartUpRun.residentMegabytes(service)), "MB"));
        return lines;
    }

    /** Until single events come no faster than before: what runs once in an event is compiled after thousands of them. */
    private static void warmUp(IngestLoad load, LoadLoop least, byte[] row) throws Exception {
        double fastest = 0;
        for (int round = 0; round < MOST_WARM_UPS; round++) {
            double rate = round(load, least, row).getOrDefault("singles", 0.0);
            if (rate < fastest * STILL_FASTER) {
                return;
            }
            fastest = Math.max(fastest, rate);
        }
    }

    private static Map<String, Double> round(IngestLoad load, LoadLoop least, byte[] row) throws Exception {
        Map<String, Double> rates = new TreeMap<>();
        rates.put("baseline", least.fullSpeed(TIME, () -> row).perSecond());
        rates.put("singles", load.singles());
        rates.put("whole cases", load.wholeCases());
        rates.put("many cases", load.manyCases());
        return rates;
    }

    private static List<Measured> tail(IngestLoad load, double peak) throws Exception {
        List<Double> tails = new ArrayList<>();
        List<Double> middles = new ArrayList<>();
        for (int round = 0; round < ROUNDS; round++) {
            Outcome outcome = load.paced(peak * HALF);
            middles.add(outcome.millis(HALF));
            tails.add(outcome.millis(WORST) / outcome.millis(HALF));
        }
        return List.of(
                Measured.of("ingest", "single, p50 at half peak", middles, "ms"),
                Measured.atMost(8, "ingest", "single, p99 / p50", tails, ""));
    }

    /** Round by round, how large the one is beside the other. */
    static List<Double> ratios(List<Double> subjects, List<Double> baselines) {
        return IntStream.range(0, subjects.size())
                .mapToObj(round -> subjects.get(round) / baselines.get(round))
                .toList();
    }
}
