package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.OffsetDateTime;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.EntryType;

/**
 * An event whose envelope and data have passed the checks.
 *
 * @param id source and id
 * @param type its type
 * @param subject reference of its case
 * @param time when it happened, with the sender's offset
 * @param attributes all attributes and extensions as sent, without the data
 * @param data the data as sent
 */
record IncomingEvent(
        EntryId id, EntryType type, String subject, OffsetDateTime time, ObjectNode attributes, JsonNode data) {}
