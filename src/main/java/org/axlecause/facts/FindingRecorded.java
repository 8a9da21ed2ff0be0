package org.axlecause.facts;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One inspection finding.
 *
 * @param stage when it was made
 * @param component part looked at
 * @param condition state it was found in
 * @param place where
 * @param check check that found it
 * @param extent how far the condition has gone
 * @param agent liquid that soiled the part
 * @param measurement measured value
 * @param note free words of the technician
 * @param evidence links to photos
 */
public record FindingRecorded(
        FindingStage stage,
        Component component,
        Condition condition,
        Place place,
        @Nullable CheckCode check,
        @Nullable Extent extent,
        @Nullable Agent agent,
        @Nullable Measurement measurement,
        @Nullable String note,
        List<String> evidence)
        implements Entry {

    public FindingRecorded {
        evidence = List.copyOf(evidence);
    }
}
