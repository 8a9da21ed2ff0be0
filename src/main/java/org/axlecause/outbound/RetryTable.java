package org.axlecause.outbound;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** When a failed delivery is tried again: the table that Standard Webhooks 1.0.0 recommends, about 76 hours in all. */
final class RetryTable {

    private static final List<Duration> WAITS = List.of(
            Duration.ofSeconds(5),
            Duration.ofMinutes(5),
            Duration.ofMinutes(30),
            Duration.ofHours(2),
            Duration.ofHours(5),
            Duration.ofHours(10),
            Duration.ofHours(14),
            Duration.ofHours(20),
            Duration.ofHours(24));

    /** Up to a tenth more, so that what failed together doesn't come back together. */
    private static final int MOST_EXTRA_PERCENT = 10;

    private RetryTable() {}

    /** How long to wait after this attempt, from 1, has failed; empty when it was the last. */
    static Optional<Duration> waitAfter(int attempt, UUID event) {
        if (attempt > WAITS.size()) {
            return Optional.empty();
        }
        Duration wait = WAITS.get(attempt - 1);
        int percent = Math.floorMod(31 * event.hashCode() + attempt, MOST_EXTRA_PERCENT + 1);
        return Optional.of(wait.plus(wait.multipliedBy(percent).dividedBy(100)));
    }
}
