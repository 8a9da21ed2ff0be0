package org.axlecause;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.axlecause.LoadLoop.Outcome;
import org.axlecause.bench.Measured;
import org.axlecause.bench.ServiceRun;

/** What programs wait for when they read: documents, lists and sheets, one reader at a time. */
public final class ReadingRun implements ServiceRun {

    private static final int ROUNDS = IngestRun.ROUNDS;
    private static final Duration TIME = IngestRun.TIME.dividedBy(4);
    private static final int CASES = Integer.getInteger("bench.cases", 5_000);
    private static final int BATCH = 20;
    private static final String REPAIRED = "READ-REPAIRED";

    private final BenchedEvents events = new BenchedEvents();

    @Override
    public List<Measured> run() throws Exception {
        Path folder = Files.createTempDirectory("axlecause-bench");
        try (Installation installation = new Installation(folder);
                PackagedService service = IngestRun.service(installation).start()) {
            service.putSite();
            fill(service);
            Map<String, byte[]> requests = requests(service);
            Map<String, List<Double>> middles = new TreeMap<>();
            Map<String, List<Double>> tails = new TreeMap<>();
            LoadLoop reader = new LoadLoop(service.port(), 1);
            for (int round = 0; round <= ROUNDS; round++) {
                for (Map.Entry<String, byte[]> request : requests.entrySet()) {
                    Outcome outcome = reader.fullSpeed(TIME, request::getValue);
                    if (round > 0) {
                        middles.computeIfAbsent(request.getKey(), any -> new ArrayList<>())
                                .add(outcome.millis(0.5));
                        tails.computeIfAbsent(request.getKey(), any -> new ArrayList<>())
                                .add(outcome.millis(0.95));
                    }
                }
            }
            List<Measured> lines = new ArrayList<>();
            requests.keySet().forEach(name -> {
                lines.add(Measured.of("reading, p50", name, middles.getOrDefault(name, List.of()), "ms"));
                lines.add(Measured.of("reading, p95", name, tails.getOrDefault(name, List.of()), "ms"));
            });
            return lines;
        }
    }

    private void fill(PackagedService service) throws Exception {
        AtomicInteger next = new AtomicInteger();
        LoadLoop load = new LoadLoop(service.port(), LoadLoop.CONNECTIONS);
        load.fullSpeed(Duration.ofHours(1), () -> {
            int begin = next.getAndAdd(BATCH / 2);
            if (begin >= CASES) {
                return null;
            }
            return LoadLoop.post(
                    IngestLoad.EVENTS,
                    IngestLoad.BATCHED,
                    BenchedEvents.batch(IntStream.range(begin, begin + BATCH / 2)
                            .boxed()
                            .flatMap(one ->
                                    List.of(events.presented("READ-" + one), events.tested("READ-" + one)).stream())
                            .toList()));
        });
        HttpResponse<String> answer =
                service.batch(BenchedEvents.batch(events.repair(REPAIRED, 0, events.repairLength())));
        if (answer.statusCode() != 200) {
            throw new IllegalStateException(answer.body());
        }
    }

    private static Map<String, byte[]> requests(PackagedService service) throws Exception {
        String document = "/v1/cases/" + REPAIRED;
        String tag = service.get(document).headers().firstValue("ETag").orElseThrow();
        Map<String, byte[]> requests = new LinkedHashMap<>();
        requests.put("case document", LoadLoop.get(document, ""));
        requests.put("case document, unchanged", LoadLoop.get(document, "If-None-Match: " + tag + "\r\n"));
        requests.put("list of cases", LoadLoop.get("/v1/cases?limit=50", ""));
        requests.put("list of a status", LoadLoop.get("/v1/cases?status=open&limit=50", ""));
        requests.put("sheet of the customer", sheet("customer", "text/html"));
        requests.put("sheet of the workshop", sheet("workshop", "text/html"));
        requests.put("sheet as PDF", sheet("workshop", "application/pdf"));
        return requests;
    }

    private static byte[] sheet(String audience, String type) {
        return LoadLoop.get("/v1/cases/" + REPAIRED + "/report?for=" + audience, "Accept: " + type + "\r\n");
    }
}
