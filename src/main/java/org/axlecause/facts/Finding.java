package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * A finding that speaks about causes: as found or during the work, not withdrawn.
 *
 * @param entry identity of its entry
 * @param stage when it was made
 * @param component part looked at
 * @param condition state it was found in
 * @param place where
 * @param check check that found it
 * @param extent how far the condition has gone
 * @param agent liquid that soiled the part
 * @param measurement measured value
 */
public record Finding(
        EntryId entry,
        FindingStage stage,
        Component component,
        Condition condition,
        Place place,
        @Nullable CheckCode check,
        @Nullable Extent extent,
        @Nullable Agent agent,
        @Nullable Measurement measurement)
        implements Shown {

    @Override
    public String shown() {
        return component
                + " "
                + condition
                + (agent == null ? "" : " with " + agent)
                + (measurement == null ? "" : ", " + measurement.quantity() + " " + measurement.sent())
                + " at "
                + place
                + " ("
                + entry.id()
                + ")";
    }
}
