package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** A stop while events come in: readiness turns down first, what is in work is finished, what was acknowledged stays. */
class GracefulStopIT {

    private static final int SENDERS = 8;
    private static final int ACKNOWLEDGED_BEFORE_THE_STOP = 40;
    private static final Duration EXIT = Duration.ofSeconds(10);

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    private Path folder;

    private final ConcurrentSkipListSet<String> acknowledged = new ConcurrentSkipListSet<>();
    private final CountDownLatch enough = new CountDownLatch(ACKNOWLEDGED_BEFORE_THE_STOP);
    private final AtomicBoolean stopped = new AtomicBoolean();

    @Test
    void what_is_acknowledged_while_the_service_stops_is_stored_and_it_ends_in_time() throws Exception {
        try (PackagedService service = new PackagedService(folder).start()) {
            service.putSite();
            ExecutorService pool = Executors.newFixedThreadPool(SENDERS);
            List<CompletableFuture<Void>> senders = IntStream.range(0, SENDERS)
                    .mapToObj(sender -> CompletableFuture.runAsync(() -> sendUntilStopped(service, sender), pool))
                    .toList();
            assertThat(enough.await(60, TimeUnit.SECONDS)).isTrue();

            long begin = System.nanoTime();
            service.process().destroy();
            boolean turnedDownFirst = unreadyWhileServing(service);
            service.process().waitFor(60, TimeUnit.SECONDS);
            Duration took = Duration.ofNanos(System.nanoTime() - begin);
            stopped.set(true);
            senders.forEach(CompletableFuture::join);
            pool.shutdown();

            assertThat(service.process().isAlive()).isFalse();
            assertThat(took).as("from the signal to the end").isLessThan(EXIT);
            assertThat(turnedDownFirst)
                    .as("readiness was down while events were still taken")
                    .isTrue();
        }
        try (PackagedService again = new PackagedService(folder).start()) {
            assertThat(acknowledged).hasSizeGreaterThanOrEqualTo(ACKNOWLEDGED_BEFORE_THE_STOP);
            for (String reference : acknowledged) {
                assertThat(again.json("/v1/cases/" + reference + "/events").findValuesAsText("id"))
                        .as("events of case %s", reference)
                        .containsExactly("presented-" + reference);
            }
        }
    }

    private boolean unreadyWhileServing(PackagedService service) throws InterruptedException {
        int ready = 200;
        while (ready == 200) {
            ready = service.statusOf("/q/health/ready");
        }
        return ready == 503 && service.statusOf("/v1/cases") == 200;
    }

    private void sendUntilStopped(PackagedService service, int sender) {
        for (int number = 0; !stopped.get(); number++) {
            String reference = "STOP-" + sender + "-" + number;
            try {
                HttpResponse<String> answer = service.present(reference);
                if (answer.statusCode() == 200 && answer.body().contains("\"accepted\"")) {
                    acknowledged.add(reference);
                    enough.countDown();
                }
            } catch (IOException refused) {
                return;
            } catch (InterruptedException interrupted) {
                Thread.currentThread().interrupt();
                return;
            }
        }
    }
}
