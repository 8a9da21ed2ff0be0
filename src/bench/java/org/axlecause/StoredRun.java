package org.axlecause;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.axlecause.LoadLoop.Outcome;
import org.axlecause.bench.Measured;
import org.axlecause.bench.ServiceRun;

/**
 * A chain with many stored cases, {@code -Dbench.stored=10000000} of them: how fast it is filled, how long each question of
 * the statistics takes, at what rate events are taken beside an empty chain, and how long the usual questions take while
 * events come at half of that rate. {@code -Dbench.folder=DIR} keeps the chain there, and fills none where one is kept
 * already.
 */
public final class StoredRun implements ServiceRun {

    private static final int STORED = Integer.getInteger("bench.stored", 100_000);

    private static final Duration LONGEST_FILL = Duration.ofHours(2);
    private static final String RECOUNTED =
            "SELECT recounted_at IS NOT NULL FROM statistics_fold WHERE tenant_id = 'demo'";

    private static final double NANOS_PER_SECOND = 1e9;
    private static final int ASKED = 40;
    private static final int WARM_UP = 6;
    private static final double USUAL_MILLIS = 300;
    private static final double WIDEST_MILLIS = 2000;
    private static final double DURING_INGEST_MILLIS = 200;
    private static final double HALF = 0.5;
    private static final double WORST = 0.95;

    private static final List<String> USUAL = List.of(
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
            "checks?by=make",
            "checks?site=site-003");

    private static final List<String> WIDEST = List.of(
            "causes?by=make&by=ageBand",
            "causes?by=site&by=month",
            "causes?region=coast&make=Velmar&by=month",
            "causes?by=site&make=Velmar",
            "causes?by=site&from=2025-01-10&to=2026-02-15",
            "causes?site=site-003&by=ageBand",
            "causes?part=trend",
            "repairs?region=coast&make=Velmar",
            "returns",
            "returns?by=item",
            "returns?by=site",
            "sites?measure=returned",
            "sites?make=Velmar",
            "sites?measure=confirmed-cause&cause=wheel-cylinder-leaking",
            "checks?site=site-003&make=Velmar",
            "checks?ageBand=8-to-11");

    @Override
    public List<Measured> run() throws Exception {
        String kept = System.getProperty("bench.folder", "");
        Path folder = kept.isEmpty() ? Files.createTempDirectory("axlecause-bench") : Path.of(kept);
        boolean filled = Files.exists(folder.resolve("data"));
        try (Installation empty = new Installation(Files.createTempDirectory("axlecause-bench"));
                Installation full = new Installation(folder)) {
            List<Measured> lines = new ArrayList<>();
            if (!filled) {
                lines.add(filled(full, "--histories", "0"));
            }
            try (PackagedService one = IngestRun.service(empty).start();
                    PackagedService other = IngestRun.service(full).start()) {
                one.putSite();
                other.putSite();
                lines.add(recounted(full));
                lines.addAll(asked(other, full));
                double peak = compared(one, other, lines);
                lines.addAll(read(other));
                lines.addAll(askedDuringIngest(other, peak * HALF));
                return lines;
            }
        }
    }

    /** Fills a chain; with these arguments besides. */
    static Measured filled(Installation full, String... more) throws Exception {
        List<String> command = new ArrayList<>(List.of("fleet", "--tenant", "demo", "--cases", String.valueOf(STORED)));
        command.addAll(List.of(more));
        long begin = System.nanoTime();
        try (PackagedService filling = full.replica().atFullSpeed()) {
            if (filling.run(LONGEST_FILL, command.toArray(String[]::new)) != 0) {
                throw new IllegalStateException("The fleet wasn't drawn: " + filling.log());
            }
            System.out.println(filling.log());
        }
        double seconds = (System.nanoTime() - begin) / NANOS_PER_SECOND;
        return Measured.of("filling", STORED + " cases", List.of(STORED / seconds), "1/s");
    }

    /** The service counts a chain anew each night, and one that was never counted anew at its start; nobody asks by then. */
    private static Measured recounted(Installation full) throws Exception {
        long begin = System.nanoTime();
        try (Connection connection = full.connection();
                PreparedStatement query = connection.prepareStatement(RECOUNTED)) {
            while (!isTrue(query)) {
                TimeUnit.SECONDS.sleep(1);
                if (System.nanoTime() - begin > LONGEST_FILL.toNanos()) {
                    throw new IllegalStateException("The statistics weren't counted anew within " + LONGEST_FILL);
                }
            }
        }
        return Measured.of(
                "counting anew", STORED + " cases", List.of((System.nanoTime() - begin) / NANOS_PER_SECOND), "s");
    }

    private static boolean isTrue(PreparedStatement query) throws SQLException {
        try (ResultSet row = query.executeQuery()) {
            return row.next() && row.getBoolean(1);
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
        lines.add(Measured.of(STORED + " stored", "single events", singles, "1/s"));
        return Measured.of("", "", singles, "").score();
    }

    /** Each question by itself, warm, but with nothing kept of what was read from the cells: as right after a fold. */
    private static List<Measured> asked(PackagedService service, Installation installation) {
        List<Measured> lines = new ArrayList<>();
        Runnable fold = () -> changeCells(installation);
        USUAL.forEach(question -> lines.addAll(asked(service, "usual", question, USUAL_MILLIS, fold)));
        WIDEST.forEach(question -> lines.addAll(asked(service, "widest", question, WIDEST_MILLIS, fold)));
        USUAL.forEach(question -> lines.addAll(asked(service, "usual, kept", question, USUAL_MILLIS, () -> {})));
        return lines;
    }

    /** Makes the service take the cells for other ones than before. */
    static void changeCells(Installation installation) {
        try (Connection connection = installation.connection();
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("UPDATE statistics_fold SET folded = folded WHERE tenant_id = 'demo'");
        } catch (SQLException e) {
            throw new IllegalStateException("The cells can't be touched", e);
        }
    }

    private static List<Measured> asked(
            PackagedService service, String kind, String question, double most, Runnable before) {
        byte[] request = LoadLoop.get("/v1/statistics/" + question, "");
        try {
            Outcome outcome = answers(service, request, before);
            return List.of(
                    Measured.of(kind + ", p50", question, List.of(outcome.millis(HALF)), "ms"),
                    Measured.atMost(most, kind + ", p95", question, List.of(outcome.millis(WORST)), "ms"));
        } catch (Exception unanswered) {
            return List.of(new Measured(
                    kind + ", p95", question, Double.NaN, Double.NaN, "ms", "MISSED: " + unanswered.getMessage()));
        }
    }

    /** The usual questions, while events come at this rate. */
    private static List<Measured> askedDuringIngest(PackagedService service, double perSecond) throws Exception {
        IngestLoad load = new IngestLoad(service.port(), IngestRun.TIME);
        ExecutorService beside = Executors.newSingleThreadExecutor();
        List<Measured> lines = new ArrayList<>();
        List<Double> taken = new ArrayList<>();
        try {
            for (String question : USUAL) {
                int first = load.next();
                load.present((int) (perSecond * IngestRun.TIME.toSeconds()) + LoadLoop.CONNECTIONS);
                Future<Outcome> sending = beside.submit(() -> load.pacedTests(first, perSecond));
                lines.addAll(asked(service, "during ingest", question, DURING_INGEST_MILLIS, () -> {}));
                taken.add(sending.get().perSecond());
            }
        } finally {
            beside.shutdown();
        }
        lines.add(Measured.of("during questions", "single events at half peak", taken, "1/s"));
        return lines;
    }

    /** Lists and documents among as many cases. */
    private static List<Measured> read(PackagedService service) throws Exception {
        String reference =
                service.json("/v1/cases?limit=1").at("/cases/0/reference").asText();
        Map<String, byte[]> requests = new LinkedHashMap<>();
        requests.put("list of cases", LoadLoop.get("/v1/cases?limit=50", ""));
        requests.put("list, closed", LoadLoop.get("/v1/cases?status=closed&limit=50", ""));
        requests.put("list, a common word", LoadLoop.get("/v1/cases?q=port&limit=50", ""));
        requests.put("list, a rare word", LoadLoop.get("/v1/cases?q=whole-17&limit=50", ""));
        requests.put("list, no such word", LoadLoop.get("/v1/cases?q=zzzz&limit=50", ""));
        requests.put("case document", LoadLoop.get("/v1/cases/" + reference, ""));
        List<Measured> lines = new ArrayList<>();
        for (Map.Entry<String, byte[]> request : requests.entrySet()) {
            Outcome outcome = answers(service, request.getValue());
            lines.add(Measured.of("reading, p50", request.getKey(), List.of(outcome.millis(HALF)), "ms"));
            lines.add(Measured.of("reading, p95", request.getKey(), List.of(outcome.millis(WORST)), "ms"));
        }
        return lines;
    }

    /** So many answers, or as many as there is time for, to a reader who has asked before. */
    static Outcome answers(PackagedService service, byte[] request) throws Exception {
        return answers(service, request, () -> {});
    }

    /** The same, each after something that takes no time of the answer. */
    static Outcome answers(PackagedService service, byte[] request, Runnable before) throws Exception {
        LoadLoop reader = new LoadLoop(service.port(), 1);
        answers(reader, request, WARM_UP, before);
        return answers(reader, request, ASKED, before);
    }

    private static Outcome answers(LoadLoop reader, byte[] request, int count, Runnable before) throws Exception {
        AtomicInteger left = new AtomicInteger(count);
        return reader.fullSpeed(IngestRun.TIME, () -> {
            if (left.getAndDecrement() <= 0) {
                return null;
            }
            before.run();
            return request;
        });
    }
}
