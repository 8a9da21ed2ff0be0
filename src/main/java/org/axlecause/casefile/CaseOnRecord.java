package org.axlecause.casefile;

import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is on record of a case.
 *
 * @param served its document
 * @param siteName name of its site; null while none is known
 * @param zone time zone of its site
 * @param events its history in the order that counts
 */
public record CaseOnRecord(ServedCase served, @Nullable String siteName, ZoneId zone, List<StoredEvent> events) {

    public CaseOnRecord {
        events = List.copyOf(events);
    }
}
