package org.axlecause.outbound;

import java.time.OffsetDateTime;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Which events are sent once more.
 *
 * @param event the one event; null for all of the time range
 * @param from first moment of the range
 * @param to first moment after the range
 */
record Replay(@Nullable UUID event, OffsetDateTime from, OffsetDateTime to) {

    private static final OffsetDateTime BEGINNING = OffsetDateTime.parse("1970-01-01T00:00:00Z");
    private static final OffsetDateTime END = OffsetDateTime.parse("9999-01-01T00:00:00Z");

    static Replay of(UUID event) {
        return new Replay(event, BEGINNING, END);
    }

    static Replay between(OffsetDateTime from, OffsetDateTime to) {
        return new Replay(null, from, to);
    }
}
