package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The packaged service at half of its own peak for a long time: what it holds must not grow. */
class SoakIT extends WithInstallation {

    private static final int SENDERS = 8;
    private static final double TENTH = 10;

    private final AtomicInteger number = new AtomicInteger();

    @Test
    void half_a_minute_at_half_of_the_peak_loses_nothing() throws Exception {
        soak(Duration.ofSeconds(5), Duration.ofSeconds(5), 5);
    }

    /** Heap, threads and connections are compared between the second and the last third, when all has warmed up. */
    @Test
    @Tag("durability")
    void a_quarter_of_an_hour_at_half_of_the_peak_leaves_memory_threads_connections_and_latency_flat()
            throws Exception {
        List<Window> windows = soak(Duration.ofSeconds(60), Duration.ofMinutes(1), 15);

        Window middle = Window.medianOf(windows.subList(5, 10));
        Window last = Window.medianOf(windows.subList(10, 15));
        assertThat(last.heapKilobytes()).isCloseTo(middle.heapKilobytes(), Percentage.withPercentage(TENTH));
        assertThat(last.threads()).isCloseTo(middle.threads(), Percentage.withPercentage(TENTH));
        assertThat(last.connections()).isCloseTo(middle.connections(), within(1L));
        assertThat(last.p99Micros()).isLessThanOrEqualTo(middle.p99Micros() * 11 / 10);
    }

    private List<Window> soak(Duration warmUp, Duration window, int count) throws Exception {
        try (PackagedService replica = installation.replica().atFullSpeed().start()) {
            replica.putSite();
            int peak = sendFor(replica, warmUp, 0).size();
            double perSecond = peak / (double) warmUp.toSeconds() / 2;
            List<Window> windows = new ArrayList<>();
            for (int turn = 0; turn < count; turn++) {
                List<Long> micros = sendFor(replica, window, perSecond);
                windows.add(new Window(
                        micros.size(),
                        percentile(micros),
                        replica.heapAfterCollection() / 1024,
                        threads(replica),
                        connections()));
            }
            System.out.printf("half of the peak is %.0f events a second%n", perSecond);
            windows.forEach(System.out::println);
            installation.nothingIsLostOrDoubled(Set.of());
            assertThat(installation.numbers("SELECT count(*) FROM event WHERE tenant_id = 'demo'"))
                    .containsExactly(number.get());
            return windows;
        }
    }

    /** Sends at this rate, or as fast as it goes for a rate of 0; how long each answer took, in microseconds. */
    private List<Long> sendFor(PackagedService replica, Duration duration, double perSecond) throws Exception {
        ExecutorService senders = Executors.newFixedThreadPool(SENDERS);
        List<Future<List<Long>>> sent = new ArrayList<>();
        long end = System.nanoTime() + duration.toNanos();
        for (int sender = 0; sender < SENDERS; sender++) {
            sent.add(senders.submit(() -> {
                List<Long> micros = new ArrayList<>();
                long next = System.nanoTime();
                while (System.nanoTime() < end) {
                    micros.add(send(replica));
                    next += perSecond == 0 ? 0 : (long) (SENDERS * 1e9 / perSecond);
                    long wait = next - System.nanoTime();
                    if (wait > 0) {
                        TimeUnit.NANOSECONDS.sleep(wait);
                    }
                }
                return micros;
            }));
        }
        List<Long> all = new ArrayList<>();
        for (Future<List<Long>> micros : sent) {
            all.addAll(micros.get());
        }
        senders.shutdown();
        return all;
    }

    private long send(PackagedService replica) throws IOException, InterruptedException {
        int next = number.incrementAndGet();
        String reference = "SOAK-" + next / 6;
        String event = next % 6 == 0
                ? Load.presented(reference, "soak-" + next)
                : Load.found(reference, "soak-" + next, next % 6, next % 2 == 0 ? "worn" : "glazed");
        long begin = System.nanoTime();
        assertThat(replica.take(event).statusCode()).isEqualTo(200);
        return (System.nanoTime() - begin) / 1000;
    }

    private static long percentile(List<Long> micros) {
        long[] sorted = micros.stream().mapToLong(Long::longValue).sorted().toArray();
        return sorted[(int) Math.ceil(sorted.length * 0.99) - 1];
    }

    private static long threads(PackagedService replica) throws IOException {
        try (Stream<Path> tasks =
                Files.list(Path.of("/proc", String.valueOf(replica.process().pid()), "task"))) {
            return tasks.count();
        }
    }

    private long connections() throws SQLException {
        return installation
                .numbers("SELECT count(*) FROM pg_stat_activity WHERE usename = current_user")
                .get(0);
    }

    private record Window(int events, long p99Micros, long heapKilobytes, long threads, long connections) {

        static Window medianOf(List<Window> windows) {
            return new Window(
                    (int) median(windows.stream().mapToLong(Window::events)),
                    median(windows.stream().mapToLong(Window::p99Micros)),
                    median(windows.stream().mapToLong(Window::heapKilobytes)),
                    median(windows.stream().mapToLong(Window::threads)),
                    median(windows.stream().mapToLong(Window::connections)));
        }

        private static long median(LongStream values) {
            long[] sorted = values.sorted().toArray();
            return sorted[sorted.length / 2];
        }
    }
}
