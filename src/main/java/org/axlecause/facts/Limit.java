package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A limit that holds for this vehicle on this day; a figure exactly at the limit conforms.
 *
 * @param deficiency deficiency of a figure beyond it
 * @param kind figure it limits
 * @param brake brake it is about
 * @param place wheel, axle or vehicle it holds for, in full
 * @param bound side on which it refuses
 * @param value limit in SI units or as a ratio
 * @param severity class in the regime's scale; null where the inspector judges
 * @param item number in the regime's document
 * @param standing whose limit it is
 * @param verified how well the value is verified
 * @param source document and section
 */
public record Limit(
        DeficiencyCode deficiency,
        FigureKind kind,
        BrakeSystem brake,
        Place place,
        Bound bound,
        BigDecimal value,
        @Nullable DeficiencyClass severity,
        @Nullable String item,
        LimitStanding standing,
        Verified verified,
        String source)
        implements Shown {

    @Override
    public String shown() {
        return bound + " " + FigureWords.of(kind, value) + " by " + source;
    }
}
