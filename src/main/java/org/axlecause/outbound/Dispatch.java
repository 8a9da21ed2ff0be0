package org.axlecause.outbound;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.axlecause.outbound.DeliveryStore.Due;
import org.jboss.logging.Logger;

/**
 * Finds the subscriptions whose turn it is and sends to each on its own. Failing ones have threads of their own, so that
 * they only wait for each other.
 */
@ApplicationScoped
class Dispatch {

    private static final Logger LOG = Logger.getLogger(Dispatch.class);
    private static final int THREADS = 16;
    private static final int THREADS_FOR_FAILING = 4;
    private static final int STOP_SECONDS = 5;

    private final DeliveryStore deliveries;
    private final SendDeliveries sendDeliveries;
    private final Clock clock;
    private final Set<Due> running = ConcurrentHashMap.newKeySet();
    private final ExecutorService well = Executors.newFixedThreadPool(THREADS);
    private final ExecutorService failing = Executors.newFixedThreadPool(THREADS_FOR_FAILING);

    Dispatch(DeliveryStore deliveries, SendDeliveries sendDeliveries, Clock clock) {
        this.deliveries = deliveries;
        this.sendDeliveries = sendDeliveries;
        this.clock = clock;
    }

    @Scheduled(
            every = "{axlecause.outbound.interval}",
            concurrentExecution = ConcurrentExecution.SKIP,
            identity = "webhooks")
    void sendToTheWell() {
        round(false);
    }

    @Scheduled(
            every = "{axlecause.outbound.interval-of-failing}",
            concurrentExecution = ConcurrentExecution.SKIP,
            identity = "webhooks to failing endpoints")
    void sendToTheFailing() {
        round(true);
    }

    /** Begins to send to every subscription with something due, but for those that are being sent to already. */
    List<CompletableFuture<Void>> round(boolean toTheFailing) {
        List<Due> due = deliveries.due(OffsetDateTime.now(clock), toTheFailing);
        return due.stream()
                .filter(running::add)
                .map(turn -> CompletableFuture.runAsync(() -> send(turn), toTheFailing ? failing : well))
                .toList();
    }

    void atStop(@Observes ShutdownEvent event) throws InterruptedException {
        well.shutdown();
        failing.shutdown();
        if (!well.awaitTermination(STOP_SECONDS, TimeUnit.SECONDS)) {
            LOG.info("Deliveries under way are left to their claims");
        }
    }

    private void send(Due turn) {
        try {
            sendDeliveries.send(turn.tenant(), turn.subscription());
        } catch (RuntimeException fault) {
            LOG.errorf(fault, "Sending to subscription %s of %s faulted", turn.subscription(), turn.tenant());
        } finally {
            running.remove(turn);
        }
    }
}
