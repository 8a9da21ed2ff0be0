package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * State of a part by the latest finding on it; only the second call of the rule base sees it.
 *
 * @param entry identity of the finding's entry
 * @param stage when it was found
 * @param component the part
 * @param condition its state
 * @param place where
 * @param extent how far the condition has gone
 * @param agent liquid that soiled it
 * @param measurement measured value
 */
public record PartState(
        EntryId entry,
        FindingStage stage,
        Component component,
        Condition condition,
        Place place,
        @Nullable Extent extent,
        @Nullable Agent agent,
        @Nullable Measurement measurement)
        implements Shown {

    @Override
    public String shown() {
        return component + " " + condition + " at " + place + " (" + entry.id() + ")";
    }
}
