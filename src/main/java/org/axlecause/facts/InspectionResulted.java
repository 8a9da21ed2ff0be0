package org.axlecause.facts;

import java.util.List;

/**
 * What the official test said afterwards.
 *
 * @param result passed or failed
 * @param items items noted, by number in the regime's document
 */
public record InspectionResulted(InspectionResult result, List<NoticedDeficiency> items) implements Entry {

    public InspectionResulted {
        items = List.copyOf(items);
    }
}
