package org.axlecause.bench;

import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/**
 * Asks a running service, whose tenant {@code fleet} has filled, each question of the statistics many times, and sends it
 * cases that end; run with {@code java FILE ADDRESS [KEY] [ROUNDS]}. It prints the middle and the 95th percentile of the
 * answers, warm, beside what was promised, and how many events a second were taken: on an empty tenant and on a filled one,
 * the two rates make the ratio.
 */
public final class StatisticsQuestions {

    private static final PrintStream OUT = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    private static final long USUAL_MILLIS = 300;
    private static final long WIDEST_MILLIS = 2000;
    private static final int WARM_UP = 3;
    private static final double WORST = 0.95;
    private static final int BATCHES = 200;
    private static final int CASES_OF_A_BATCH = 20;

    private final HttpClient client = HttpClient.newHttpClient();
    private final String address;
    private final String key;

    private StatisticsQuestions(String address, String key) {
        this.address = address;
        this.key = key;
    }

    /** Arguments: address of the service, a key of an admin or nothing where access is open, how often each is asked. */
    public static void main(String[] args) throws IOException, InterruptedException {
        StatisticsQuestions bench = new StatisticsQuestions(args[0], args.length > 1 ? args[1] : "");
        int rounds = args.length > 2 ? Integer.parseInt(args[2]) : 40;
        OUT.printf(Locale.ROOT, "%-80s %9s %9s %9s%n", "question", "p50 ms", "p95 ms", "goal ms");
        for (Map.Entry<String, Long> question : questions().entrySet()) {
            bench.measure(question.getKey(), question.getValue(), rounds);
        }
        bench.ingest();
    }

    private static Map<String, Long> questions() {
        Map<String, Long> questions = new LinkedHashMap<>();
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

    private void measure(String question, long goal, int rounds) throws IOException, InterruptedException {
        double[] millis = new double[rounds];
        for (int round = -WARM_UP; round < rounds; round++) {
            long began = System.nanoTime();
            HttpResponse<String> answer = client.send(
                    request("/v1/statistics/" + question).GET().build(), HttpResponse.BodyHandlers.ofString());
            if (answer.statusCode() != 200) {
                OUT.printf(Locale.ROOT, "%-80s %s%n", question, answer.statusCode() + " " + answer.body());
                return;
            }
            if (round >= 0) {
                millis[round] = (System.nanoTime() - began) / 1e6;
            }
        }
        Arrays.sort(millis);
        double worst = millis[(int) Math.ceil(WORST * rounds) - 1];
        OUT.printf(
                Locale.ROOT,
                "%-80s %9.1f %9.1f %9d %s%n",
                question,
                millis[rounds / 2],
                worst,
                goal,
                worst <= goal ? "" : "MISSED");
    }

    /** Cases that end with a proved cause, so that each writes statistics rows. */
    private void ingest() throws IOException, InterruptedException {
        Random chance = new Random(1);
        String run = Long.toHexString(System.currentTimeMillis());
        long events = 0;
        long began = 0;
        for (int batch = 0; batch < BATCHES; batch++) {
            if (batch == BATCHES / 4) {
                began = System.nanoTime();
                events = 0;
            }
            List<String> sent = new ArrayList<>();
            for (int number = 0; number < CASES_OF_A_BATCH; number++) {
                String reference = "B-" + run + "-" + batch + "-" + number;
                String time = Instant.parse("2026-01-05T08:00:00Z")
                        .plusSeconds(86_400L * chance.nextInt(200))
                        .toString();
                sent.add(event(reference, 1, "vehicle.presented", time, """
                        {"site": "site-001", "reason": "failed-inspection", "vehicle": {"category": "M1", "make": "Velmar",
                         "model": "Plover", "firstUsed": "2015-09-14", "odometer": {"value": 120000, "unit": "km"}, "axles":
                         [{"number": 1, "brake": "disc-floating"}, {"number": 2, "brake": "drum-simplex",
                           "parkingBrake": "cable-on-service-shoes"}]}}"""));
                sent.add(event(reference, 2, "finding.recorded", time, """
                        {"stage": "as-found", "component": "wheel-cylinder", "condition": "leaking", "axle": 2,
                         "side": "left", "check": "boot-edge-look"}"""));
                sent.add(event(
                        reference, 3, "case.closed", time, "{\"outcome\": \"refused\", \"confirmedCauses\": []}"));
            }
            HttpResponse<String> answer = client.send(
                    request("/v1/events")
                            .header("Content-Type", "application/cloudevents-batch+json; charset=UTF-8")
                            .POST(HttpRequest.BodyPublishers.ofString("[" + String.join(",", sent) + "]"))
                            .build(),
                    HttpResponse.BodyHandlers.ofString());
            if (answer.statusCode() != 200) {
                OUT.println("events: " + answer.statusCode() + " " + answer.body());
                return;
            }
            events += sent.size();
        }
        OUT.printf(
                Locale.ROOT,
                "events of cases that end: %.0f a second in batches of %d, one sender%n",
                events / ((System.nanoTime() - began) / 1e9),
                3 * CASES_OF_A_BATCH);
    }

    private static String event(String reference, int number, String type, String time, String data) {
        return "{\"specversion\": \"1.0\", \"type\": \"org.axlecause." + type
                + ".v1\", \"source\": \"/bench\", \"id\": \""
                + reference + "-" + number + "\", \"subject\": \"" + reference + "\", \"time\": \"" + time
                + "\", \"data\": " + data + "}";
    }

    private HttpRequest.Builder request(String path) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(address + path));
        return key.isEmpty() ? request : request.header("Authorization", "Bearer " + key);
    }
}
