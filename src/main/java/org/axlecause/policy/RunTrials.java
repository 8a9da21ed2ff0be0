package org.axlecause.policy;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.IntStream;
import org.jboss.logging.Logger;

/**
 * Does the batches of trials on every replica, beside its other work: as many at once as there are processors, each in a
 * transaction of its own. What a stopped or lost replica had begun is begun anew by another.
 */
@ApplicationScoped
class RunTrials {

    private static final Logger LOG = Logger.getLogger(RunTrials.class);
    private static final int STOP_SECONDS = 5;

    private final TrialStore trials;
    private final TryPolicies tryPolicies;
    private final int workers = Runtime.getRuntime().availableProcessors();
    private final ExecutorService threads = Executors.newFixedThreadPool(workers);
    private final AtomicBoolean stopping = new AtomicBoolean();

    RunTrials(TrialStore trials, TryPolicies tryPolicies) {
        this.trials = trials;
        this.tryPolicies = tryPolicies;
    }

    /** Works until nothing is left to take. */
    @Scheduled(
            every = "{axlecause.trials.interval}",
            concurrentExecution = ConcurrentExecution.SKIP,
            identity = "trials of policies")
    void run() {
        List<TrialStore.Due> due = trials.due();
        if (due.isEmpty()) {
            return;
        }
        CompletableFuture.allOf(IntStream.range(0, workers)
                        .mapToObj(worker -> CompletableFuture.runAsync(() -> due.forEach(this::work), threads))
                        .toArray(CompletableFuture[]::new))
                .join();
    }

    void atStop(@Observes ShutdownEvent event) throws InterruptedException {
        stopping.set(true);
        threads.shutdown();
        if (!threads.awaitTermination(STOP_SECONDS, TimeUnit.SECONDS)) {
            LOG.info("Batches of trials under way are left to be begun anew");
        }
    }

    private void work(TrialStore.Due due) {
        try {
            boolean more = true;
            while (more && !stopping.get()) {
                more = tryPolicies.doBatch(due);
            }
        } catch (RuntimeException fault) {
            LOG.errorf(fault, "A batch of the trial %s of %s faulted and is tried again", due.trial(), due.tenant());
        }
    }
}
