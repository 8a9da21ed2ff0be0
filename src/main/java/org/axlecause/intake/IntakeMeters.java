package org.axlecause.intake;

import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import jakarta.enterprise.context.ApplicationScoped;

/** Counts what became of events and times judging; no label names a tenant, a site or a person. */
@ApplicationScoped
class IntakeMeters {

    private static final String JUDGING = "axlecause.judging";
    private static final String OUTCOME = "outcome";

    private final MeterRegistry registry;

    IntakeMeters(MeterRegistry registry) {
        this.registry = registry;
    }

    void count(Standing standing) {
        registry.counter("axlecause.events", "standing", standing.toString()).increment();
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
