package org.axlecause.facts;

import java.math.BigDecimal;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Earlier work on the brakes.
 *
 * @param item what was worked on
 * @param place where
 * @param date when
 * @param distanceSince distance covered since, metres
 */
public record RecentWork(
        ScopeItem item,
        Place place,
        @Nullable LocalDate date,
        @Nullable BigDecimal distanceSince) implements Shown {

    /** Whether the vehicle has covered no more than that distance since; never where the distance is not known. */
    public boolean within(BigDecimal distance) {
        return distanceSince != null && distanceSince.compareTo(distance) <= 0;
    }

    @Override
    public String shown() {
        return "recent work on " + item + ", " + place;
    }
}
