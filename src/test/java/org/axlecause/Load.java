package org.axlecause;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.axlecause.shared.Await;
import org.jspecify.annotations.Nullable;

/** Workshops that post without a pause as long as somebody answers, and a ledger of what was acknowledged to them. */
final class Load implements AutoCloseable {

    private static final int SENDERS = 8;
    private static final int MILLISECONDS_TO_TRY_AGAIN = 20;
    private static final String EVENT = """
            {"specversion": "1.0", "type": "org.axlecause.%s.v1", "source": "/sites/quay-street", "id": "%s",
             "subject": "%s", "time": "2026-03-02T08:15:%02dZ", "data": %s}
            """;
    private static final String PRESENTED = """
            {"site": "quay-street", "reason": "complaint", "regime": "gb-annual",
             "vehicle": {"category": "N1", "make": "Corvane", "model": "Portal",
                         "axles": [{"number": 1, "steered": true, "brake": "disc-floating"},
                                   {"number": 2, "brake": "drum-simplex"}]}}""";
    private static final String FOUND = """
            {"stage": "as-found", "component": "shoe-lining", "condition": "%s", "axle": 2, "side": "left"}""";

    private final Route route;
    private final ExecutorService senders = Executors.newFixedThreadPool(SENDERS);
    private final Set<String> acknowledged = new ConcurrentSkipListSet<>();
    private final Map<Integer, AtomicInteger> statuses = new ConcurrentHashMap<>();
    private final Set<String> cutOff = new ConcurrentSkipListSet<>();
    private final Set<String> wrong = new ConcurrentSkipListSet<>();
    private final AtomicInteger number = new AtomicInteger();
    private volatile boolean going = true;

    Load(List<PackagedService> replicas) {
        this(random -> replicas.get(random.nextInt(replicas.size())));
    }

    /** Posts each event to the replica that is named for it. */
    Load(Route route) {
        this.route = route;
        for (int sender = 0; sender < SENDERS; sender++) {
            int seed = sender;
            senders.execute(() -> sendOn(new Random(seed)));
        }
    }

    static String presented(String reference, String id) {
        return EVENT.formatted("vehicle.presented", id, reference, 0, PRESENTED);
    }

    static String found(String reference, String id, int second, String condition) {
        return EVENT.formatted("finding.recorded", id, reference, second, FOUND.formatted(condition));
    }

    private void sendOn(Random random) {
        while (going) {
            int next = number.incrementAndGet();
            String reference = "LOAD-" + next / 4;
            String id = "load-" + next;
            String event = next % 4 == 0
                    ? presented(reference, id)
                    : found(reference, id, next % 4, next % 2 == 0 ? "worn" : "glazed");
            send(random, event, id);
        }
    }

    private void send(Random random, String event, String id) {
        try {
            HttpResponse<String> answer = answered(route.pick(random), event, id);
            if (answer == null) {
                TimeUnit.MILLISECONDS.sleep(MILLISECONDS_TO_TRY_AGAIN);
                return;
            }
            statuses.computeIfAbsent(answer.statusCode(), status -> new AtomicInteger())
                    .incrementAndGet();
            if (answer.statusCode() == 200) {
                acknowledged.add(id);
            } else if (answer.statusCode() != 503
                    || answer.headers().firstValue("Retry-After").isEmpty()) {
                wrong.add(answer.statusCode() + " " + answer.body());
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            going = false;
        }
    }

    /** The answer; null where there is none, which while a replica starts would only take its processor time. */
    private @Nullable HttpResponse<String> answered(PackagedService replica, String event, String id)
            throws InterruptedException {
        try {
            return replica.take(event);
        } catch (IOException noAnswer) {
            cutOff.add(id + ": " + noAnswer);
            return null;
        }
    }

    /** Waits until so many events were acknowledged. */
    void awaitAcknowledged(int count) {
        Await.until(count + " events are acknowledged", () -> acknowledged.size() >= count);
    }

    /** Ids of the events that were acknowledged so far. */
    Set<String> acknowledged() {
        return Set.copyOf(acknowledged);
    }

    /** How often each status was answered. */
    Map<Integer, AtomicInteger> statuses() {
        return Map.copyOf(statuses);
    }

    /** Answers that are neither an acknowledgement nor 503 with Retry-After. */
    Set<String> wrong() {
        return Set.copyOf(wrong);
    }

    /** Events that got no answer at all, which promises nothing. */
    Set<String> cutOff() {
        return Set.copyOf(cutOff);
    }

    /** Sends nothing more and waits for the last answers. */
    void stop() throws InterruptedException {
        going = false;
        senders.shutdown();
        if (!senders.awaitTermination(60, TimeUnit.SECONDS)) {
            senders.shutdownNow();
        }
    }

    @Override
    public void close() {
        going = false;
        senders.shutdownNow();
    }

    /** Which replica gets the next event. */
    interface Route {
        PackagedService pick(Random random) throws InterruptedException;
    }
}
