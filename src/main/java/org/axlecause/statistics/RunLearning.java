package org.axlecause.statistics;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jboss.logging.Logger;

/** Works proposals out on every replica, beside its other work: one step after the other, each in its own transaction. */
@ApplicationScoped
class RunLearning {

    private static final Logger LOG = Logger.getLogger(RunLearning.class);

    private final ProposalStore proposals;
    private final LearnWeights learnWeights;
    private final AtomicBoolean stopping = new AtomicBoolean();

    RunLearning(ProposalStore proposals, LearnWeights learnWeights) {
        this.proposals = proposals;
        this.learnWeights = learnWeights;
    }

    /** Works until nothing is left to take. */
    @Scheduled(
            every = "{axlecause.learning.interval}",
            concurrentExecution = ConcurrentExecution.SKIP,
            identity = "learning of weights")
    void run() {
        proposals.due().forEach(this::work);
    }

    void atStop(@Observes ShutdownEvent event) {
        stopping.set(true);
    }

    private void work(ProposalStore.Due due) {
        try {
            boolean more = true;
            while (more && !stopping.get()) {
                more = learnWeights.step(due);
            }
        } catch (RuntimeException fault) {
            LOG.errorf(
                    fault, "A step of the proposal %s of %s faulted and is tried again", due.proposal(), due.tenant());
        }
    }
}
