package org.axlecause.casefile;

import java.util.List;
import java.util.Map;
import org.axlecause.facts.EntryId;
import org.jspecify.annotations.Nullable;

/**
 * What a locked case is judged from.
 *
 * @param events in the order that counts
 * @param figures figures of its roller tests as JSON
 * @param last the case as it was last judged; null where it has no events
 * @param sites the sites at which its vehicle was presented, by code
 */
record StoredHistory(
        List<StoredEvent> events,
        Map<EntryId, String> figures,
        @Nullable LastJudgement last,
        Map<String, StoredSite> sites) {}
