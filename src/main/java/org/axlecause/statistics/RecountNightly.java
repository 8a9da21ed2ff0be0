package org.axlecause.statistics;

import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.OptionalLong;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * Counts the cells of each tenant anew once a night. The month that a lost replica was at is rolled back, and the count begun
 * again by the next look, of whichever replica; nothing that judging or folding waits for is held.
 */
@ApplicationScoped
class RecountNightly {

    private static final Logger LOG = Logger.getLogger(RecountNightly.class);

    private final RecountStore recounts;
    private final CountAnew countAnew;
    private final Clock clock;
    private final LocalTime begin;

    RecountNightly(
            RecountStore recounts,
            CountAnew countAnew,
            Clock clock,
            @ConfigProperty(name = "axlecause.statistics.recount-at") LocalTime begin) {
        this.recounts = recounts;
        this.countAnew = countAnew;
        this.clock = clock;
        this.begin = begin;
    }

    @Scheduled(
            every = "{axlecause.statistics.interval-of-recount}",
            concurrentExecution = ConcurrentExecution.SKIP,
            identity = "recount of statistics")
    void whenDue() {
        try {
            recount();
        } catch (RuntimeException fault) {
            LOG.warn("Statistics could not be counted anew just now; the next run goes on", fault);
        }
    }

    /** Counts anew what was not since the night began; how many cells were put right. */
    long recount() {
        OffsetDateTime now = OffsetDateTime.now(clock).withOffsetSameInstant(ZoneOffset.UTC);
        OffsetDateTime night = now.toLocalDate().atTime(begin).atOffset(ZoneOffset.UTC);
        OffsetDateTime moment = night.isAfter(now) ? night.minusDays(1) : night;
        long all = 0;
        for (String tenant : recounts.due(moment)) {
            OptionalLong differences = countAnew.all(tenant, moment, now);
            if (differences.isPresent() && differences.getAsLong() > 0) {
                all += differences.getAsLong();
                LOG.errorf(
                        "%d cells of the statistics of %s differed from a count of the cases and were put right. Report it:"
                                + " folding must not go wrong.",
                        differences.getAsLong(), tenant);
            }
        }
        return all;
    }
}
