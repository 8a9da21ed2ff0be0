package org.axlecause.intake;

import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Counts what became of events, times judging and tells how many records of Kafka wait; no label names a tenant, a site
 * or a person.
 */
@ApplicationScoped
class IntakeMeters {

    private static final String JUDGING = "axlecause.judging";
    private static final String OUTCOME = "outcome";

    private final MeterRegistry registry;
    private final AtomicLong waiting = new AtomicLong();

    IntakeMeters(MeterRegistry registry) {
        this.registry = registry;
        Gauge.builder("axlecause.kafka.waiting", waiting, AtomicLong::get).register(registry);
    }

    void count(Standing standing) {
        registry.counter("axlecause.events", "standing", standing.toString()).increment();
    }

    /** How many records this replica has yet to read of the partitions that it was given. */
    void waiting(long records) {
        waiting.set(records);
    }

    Timer.Sample begin() {
        return Timer.start(registry);
    }

    void done(Timer.Sample sample) {
        sample.stop(registry.timer(JUDGING, OUTCOME, "done"));
    }

    void faulted(Timer.Sample sample) {
        sample.stop(registry.timer(JUDGING, OUTCOME, "faulted"));
    }
}
