package org.axlecause;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.axlecause.LoadLoop.Outcome;
import org.jspecify.annotations.Nullable;

/** The ways in which events come: one by one, in batches of one case, in batches of many cases. */
final class IngestLoad {

    static final int BATCH = 20;

    static final String BATCHED = "application/cloudevents-batch+json";
    static final String EVENTS = "/v1/events";

    private static final String SINGLE = "application/cloudevents+json";

    /** No two loads send the same case, in this run or in another one on the same chain: a repetition is taken far faster. */
    private static final AtomicInteger NUMBER = new AtomicInteger();

    private static final String RUN = Long.toString(System.currentTimeMillis(), Character.MAX_RADIX);

    private final BenchedEvents events = new BenchedEvents();
    private final LoadLoop load;
    private final Duration time;

    /** Sends for so long to the service at this port. */
    IngestLoad(int port, Duration time) {
        this(List.of(port), time);
    }

    /** Sends for so long to replicas at these ports, over as many connections to each. */
    IngestLoad(List<Integer> ports, Duration time) {
        this.load = new LoadLoop(ports, LoadLoop.CONNECTIONS * ports.size());
        this.time = time;
    }

    /** Roller tests, one in a request, each of a case that was presented beforehand; how many a second. */
    double singles() throws Exception {
        return tests(load::fullSpeed, 1).perSecond();
    }

    /** Roller tests as {@link #singles()} at a given rate. */
    Outcome paced(double perSecond) throws Exception {
        return tests((span, requests) -> load.paced(span, perSecond, requests), 1);
    }

    /** Presents so many cases, as fast as it goes, whose tests {@link #pacedTests} sends. */
    void present(int cases) throws Exception {
        int last = NUMBER.get() + cases;
        load.fullSpeed(Duration.ofHours(1), () -> NUMBER.get() >= last ? null : presentations());
    }

    /** Roller tests of the cases from a number on, at a given rate, until the time is over or no case is left. */
    Outcome pacedTests(int first, double perSecond) throws Exception {
        int last = NUMBER.get();
        AtomicInteger next = new AtomicInteger(first);
        return load.paced(time, perSecond, () -> {
            int test = next.getAndIncrement();
            return test >= last ? null : LoadLoop.post(EVENTS, SINGLE, events.tested(reference(test)));
        });
    }

    /** The number of the next case. */
    int next() {
        return NUMBER.get();
    }

    /** The first events of a repair, all of a new case in a request; how many events a second. */
    double wholeCases() throws Exception {
        return load.fullSpeed(time, this::wholeCase).perSecond() * BATCH;
    }

    /** Roller tests of so many cases in a request; how many a second. */
    double manyCases() throws Exception {
        return tests(load::fullSpeed, BATCH).perSecond() * BATCH;
    }

    private Outcome tests(Sending sending, int together) throws Exception {
        int first = NUMBER.get();
        load.fullSpeed(time, this::presentations);
        int last = NUMBER.get();
        AtomicInteger next = new AtomicInteger(first);
        return sending.send(time, () -> {
            int begin = next.getAndAdd(together);
            if (begin + together > last) {
                return null;
            }
            List<String> tests = IntStream.range(begin, begin + together)
                    .mapToObj(test -> events.tested(reference(test)))
                    .toList();
            return together == 1
                    ? LoadLoop.post(EVENTS, SINGLE, tests.get(0))
                    : LoadLoop.post(EVENTS, BATCHED, BenchedEvents.batch(tests));
        });
    }

    private byte[] presentations() {
        int begin = NUMBER.getAndAdd(BATCH);
        return LoadLoop.post(
                EVENTS,
                BATCHED,
                BenchedEvents.batch(IntStream.range(begin, begin + BATCH)
                        .mapToObj(one -> events.presented(reference(one)))
                        .toList()));
    }

    private static String reference(int number) {
        return "IN-" + number + "-" + RUN;
    }

    private byte[] wholeCase() {
        String reference = "WHOLE-" + NUMBER.getAndIncrement() + "-" + RUN;
        return LoadLoop.post(EVENTS, BATCHED, BenchedEvents.batch(events.repair(reference, 0, BATCH)));
    }

    /** How requests are sent for a while. */
    private interface Sending {
        Outcome send(Duration time, Supplier<byte @Nullable []> requests) throws Exception;
    }
}
