package org.axlecause.repair;

import java.time.OffsetDateTime;
import java.util.List;
import org.axlecause.facts.InspectionResult;

/**
 * What the official test said afterwards; set beside the verification and no part of it.
 *
 * @param result passed or failed
 * @param items items noted, by number in the regime's document
 * @param time when it was held
 */
public record LaterInspection(InspectionResult result, List<String> items, OffsetDateTime time) {

    public LaterInspection {
        items = List.copyOf(items);
    }
}
