package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A deficiency of a figure or a finding against a limit.
 *
 * @param code what is deficient
 * @param place where
 * @param stage stage of the test or null for a finding
 * @param test identity of the test or finding
 * @param severity class in the regime's scale; null where the inspector judges
 * @param item number in the regime's document
 * @param value the figure, SI or ratio
 * @param limit the limit that is broken; null where a finding alone makes the deficiency
 * @param because ground
 */
public record Deficiency(
        DeficiencyCode code,
        Place place,
        @Nullable Stage stage,
        EntryId test,
        @Nullable DeficiencyClass severity,
        @Nullable String item,
        @Nullable BigDecimal value,
        @Nullable Limit limit,
        Because because)
        implements Conclusion {

    @Override
    public String shown() {
        return code + " at " + place;
    }
}
