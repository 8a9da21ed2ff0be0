package org.axlecause.access;

import io.github.bucket4j.Bucket;
import io.github.bucket4j.ConsumptionProbe;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.axlecause.shared.Quota;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** How many requests each key may send; each replica counts for itself. */
@ApplicationScoped
class RequestLimit {

    private static final Duration WINDOW = Duration.ofMinutes(1);

    private final long limit;
    private final Map<String, Bucket> buckets = new ConcurrentHashMap<>();

    RequestLimit(@ConfigProperty(name = "axlecause.requests-per-minute") long limit) {
        this.limit = limit;
    }

    /** Counts a request of this key. */
    Quota take(String key) {
        ConsumptionProbe probe = buckets.computeIfAbsent(key, first -> bucket()).tryConsumeAndReturnRemaining(1);
        return new Quota(
                "key",
                limit,
                WINDOW,
                probe.getRemainingTokens(),
                Duration.ofNanos(probe.isConsumed() ? probe.getNanosToWaitForReset() : probe.getNanosToWaitForRefill()),
                !probe.isConsumed());
    }

    private Bucket bucket() {
        return Bucket.builder()
                .addLimit(rate -> rate.capacity(limit).refillGreedy(limit, WINDOW))
                .build();
    }
}
