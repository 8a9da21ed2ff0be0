package org.axlecause.casefile;

import java.time.OffsetDateTime;
import org.axlecause.facts.EntryId;

/**
 * An accepted event on its way into a case's history.
 *
 * @param id its identity
 * @param type full type of the event
 * @param time when it happened, as sent
 * @param receivedAt when it came in
 * @param actor who sent it
 * @param body canonical JSON of the whole event, personal data replaced by tokens
 * @param digest SHA-256 of its content in hex, by which a repetition is known
 */
public record NewEvent(
        EntryId id,
        String type,
        OffsetDateTime time,
        OffsetDateTime receivedAt,
        String actor,
        String body,
        String digest) {}
