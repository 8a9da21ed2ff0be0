package org.axlecause;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.axlecause.LoadLoop.Outcome;
import org.axlecause.bench.Measured;
import org.axlecause.bench.ServiceRun;

/**
 * A chain with many stored cases, {@code -Dbench.stored=10000000} of them, beside an empty one: at what rate events are
 * taken, and how long each question of the statistics takes while events come at half of that rate.
 */
public final class StoredRun implements ServiceRun {

    private static final int STORED = Integer.getInteger("bench.stored", 100_000);
    private static final int ASKED = 40;
    private static final int WARM_UP = 3;
    private static final double USUAL_MILLIS = 300;
    private static final double WIDEST_MILLIS = 2000;
    private static final double HALF = 0.5;
    private static final double WORST = 0.95;

    @Override
    public List<Measured> run() throws Exception {
        try (Installation empty = new Installation(Files.createTempDirectory("axlecause-bench"));
                Installation full = new Installation(Files.createTempDirectory("axlecause-bench"))) {
            try (PackagedService command = full.replica()) {
                if (command.run("fleet", "--tenant", "demo", "--cases", String.valueOf(STORED)) != 0) {
                    throw new IllegalStateException("The fleet wasn't drawn: " + command.log());
                }
            }
            try (PackagedService one = IngestRun.service(empty).start();
                    PackagedService other = IngestRun.service(full).start()) {
                one.putSite();
                other.putSite();
                List<Measured> lines = new ArrayList<>();
                double peak = compared(one, other, lines);
                lines.addAll(asked(other, peak * HALF));
                return lines;
            }
        }
    }

    private static double compared(PackagedService empty, PackagedService full, List<Measured> lines) throws Exception {
        IngestLoad onEmpty = new IngestLoad(empty.port(), IngestRun.TIME);
        IngestLoad onFull = new IngestLoad(full.port(), IngestRun.TIME);
        Map<String, List<Double>> ratios = new TreeMap<>();
        List<Double> singles = new ArrayList<>();
        for (int round = 0; round <= IngestRun.ROUNDS; round++) {
            double single = onFull.singles();
            Map<String, Double> shares = Map.of(
                    "single events", single / onEmpty.singles(),
                    "20 of one case", onFull.wholeCases() / onEmpty.wholeCases(),
                    "20 of many cases", onFull.manyCases() / onEmpty.manyCases());
            if (round > 0) {
                singles.add(single);
                shares.forEach((name, share) ->
                        ratios.computeIfAbsent(name, any -> new ArrayList<>()).add(share));
            }
        }
        ratios.forEach(
                (name, shares) -> lines.add(Measured.atLeast(0.9, STORED + " stored / empty", name, shares, "")));
        return Measured.of("", "", singles, "").score();
    }

    /** Each question many times, while events come at this rate. */
    private static List<Measured> asked(PackagedService service, double perSecond) throws Exception {
        IngestLoad load = new IngestLoad(service.port(), IngestRun.TIME);
        AtomicBoolean going = new AtomicBoolean(true);
        ExecutorService beside = Executors.newSingleThreadExecutor();
        try {
            Future<Integer> sending = beside.submit(() -> {
                int sent = 0;
                while (going.get()) {
                    Outcome outcome = load.paced(perSecond);
                    sent += outcome.nanos().size();
                }
                return sent;
            });
            List<Measured> lines = new ArrayList<>();
            LoadLoop reader = new LoadLoop(service.port(), 1);
            for (Map.Entry<String, Double> question : questions().entrySet()) {
                byte[] request = LoadLoop.get("/v1/statistics/" + question.getKey(), "");
                answers(reader, request, WARM_UP);
                Outcome outcome = answers(reader, request, ASKED);
                lines.add(Measured.of("question, p50", question.getKey(), List.of(outcome.millis(HALF)), "ms"));
                lines.add(Measured.atMost(
                        question.getValue(), "question, p95", question.getKey(), List.of(outcome.millis(WORST)), "ms"));
            }
            going.set(false);
            sending.get();
            return lines;
        } finally {
            going.set(false);
            beside.shutdown();
        }
    }

    private static Outcome answers(LoadLoop reader, byte[] request, int count) throws Exception {
        AtomicInteger left = new AtomicInteger(count);
        return reader.fullSpeed(IngestRun.TIME.multipliedBy(count), () -> left.getAndDecrement() > 0 ? request : null);
    }

    private static Map<String, Double> questions() {
        Map<String, Double> questions = new LinkedHashMap<>();
        for (String usual : List.of(
                "causes",
                "causes?by=month",
                "causes?by=site",
                "causes?by=make",
                "causes?by=ageBand",
                "causes?make=Velmar&model=Plover&by=odometerBand",
                "causes?layout=drum-simplex&axle=2&by=side",
                "causes?region=coast&season=december-to-february",
                "causes?site=site-003&by=month",
                "causes?site=site-003&make=Velmar",
                "causes?from=2025-01-10&to=2026-02-15",
                "causes?part=trend&model=Plover&cause=wheel-cylinder-leaking",
                "causes?part=comparison&compare=model&model=Plover&model=Portal",
                "causes?part=pareto",
                "causes?part=co-occurrence",
                "repairs",
                "repairs?by=site",
                "returns?site=site-003",
                "returns?make=Velmar&model=Plover",
                "sites",
                "checks",
                "checks?by=make")) {
            questions.put(usual, USUAL_MILLIS);
        }
        for (String widest : List.of(
                "causes?by=make&by=ageBand",
                "causes?region=coast&make=Velmar&by=month",
                "causes?by=site&make=Velmar",
                "causes?part=trend",
                "repairs?region=coast&make=Velmar",
                "returns",
                "returns?by=item",
                "returns?by=site",
                "sites?measure=returned",
                "sites?make=Velmar",
                "checks?site=site-003&make=Velmar")) {
            questions.put(widest, WIDEST_MILLIS);
        }
        return questions;
    }
}
