package org.axlecause.casefile;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Comparator;
import org.axlecause.facts.EntryId;

/**
 * An event in a case's history.
 *
 * @param position its place in the order of arrival, from 1
 * @param id its identity
 * @param type full type of the event
 * @param time when it happened, as sent
 * @param receivedAt when it came in
 * @param actor who sent it
 * @param body canonical JSON of the whole event, personal data replaced by tokens
 */
public record StoredEvent(
        int position,
        EntryId id,
        String type,
        OffsetDateTime time,
        OffsetDateTime receivedAt,
        String actor,
        String body) {

    /** The order that counts: time as an instant, source, id. */
    static final Comparator<StoredEvent> ORDER = Comparator.<StoredEvent, Instant>comparing(
                    event -> event.time().toInstant())
            .thenComparing(StoredEvent::id);
}
