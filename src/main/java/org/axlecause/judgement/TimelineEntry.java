package org.axlecause.judgement;

import java.time.OffsetDateTime;

/**
 * An entry of the case's timeline.
 *
 * @param source source of the event
 * @param id id of the event
 * @param time when it happened
 * @param type type of the event
 * @param withdrawn whether it was taken back
 * @param says the entry in a few words
 */
public record TimelineEntry(
        String source, String id, OffsetDateTime time, String type, boolean withdrawn, String says) {}
