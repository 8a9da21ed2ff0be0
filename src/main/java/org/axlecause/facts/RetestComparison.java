package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A figure of the final test beside the same figure of the arrival test; only the second call of the rule base sees it.
 *
 * @param kind the figure
 * @param brake brake applied
 * @param place wheel, axle or vehicle
 * @param before value at arrival
 * @param after value at the final test
 * @param withinLimit whether the final value conforms to the regime
 * @param withinTarget whether it reaches the workshop's target; null where there is none
 * @param limit the regime's limit, or null
 * @param target the workshop's target, or null
 */
public record RetestComparison(
        FigureKind kind,
        BrakeSystem brake,
        Place place,
        @Nullable BigDecimal before,
        @Nullable BigDecimal after,
        boolean withinLimit,
        @Nullable Boolean withinTarget,
        @Nullable BigDecimal limit,
        @Nullable BigDecimal target)
        implements Shown {

    @Override
    public String shown() {
        return kind
                + " of the "
                + brake
                + " brake at "
                + place
                + ": "
                + FigureWords.of(kind, before)
                + " before, "
                + FigureWords.of(kind, after)
                + " after";
    }
}
