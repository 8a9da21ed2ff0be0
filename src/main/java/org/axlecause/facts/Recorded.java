package org.axlecause.facts;

import java.time.OffsetDateTime;
import java.util.Comparator;
import org.jspecify.annotations.Nullable;

/**
 * An entry as it stands in a case's history.
 *
 * @param id identity of the event
 * @param time when it happened in the workshop, with the sender's offset
 * @param entry what it says
 * @param figures figures of a test, computed once when it was accepted; null for other entries
 */
public record Recorded(
        EntryId id,
        OffsetDateTime time,
        Entry entry,
        @Nullable TestFigures figures) implements Comparable<Recorded> {

    private static final Comparator<Recorded> ORDER = Comparator.comparing(
                    (Recorded recorded) -> recorded.time().toInstant())
            .thenComparing(Recorded::id);

    /** The order that counts: time, then source, then id. */
    @Override
    public int compareTo(Recorded other) {
        return ORDER.compare(this, other);
    }
}
