package org.axlecause.facts;

import java.math.BigDecimal;
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

    /** Whether the part was found without fault. */
    public boolean sound() {
        return condition == Condition.SOUND;
    }

    /** Whether it was measured above the limit stamped on the part or stated by the maker. */
    public boolean aboveOwnLimit(MeasuredQuantity quantity) {
        return measurement != null && measurement.beyondOwnLimit(quantity, 1);
    }

    /** Whether it was measured below the limit stamped on the part or stated by the maker. */
    public boolean belowOwnLimit(MeasuredQuantity quantity) {
        return measurement != null && measurement.beyondOwnLimit(quantity, -1);
    }

    /** Whether it was measured above that value, the part bearing no limit of its own. */
    public boolean above(MeasuredQuantity quantity, BigDecimal most) {
        return measurement != null && measurement.beyond(quantity, most, 1);
    }

    /** Whether it was measured below that value, the part bearing no limit of its own. */
    public boolean below(MeasuredQuantity quantity, BigDecimal least) {
        return measurement != null && measurement.beyond(quantity, least, -1);
    }

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
