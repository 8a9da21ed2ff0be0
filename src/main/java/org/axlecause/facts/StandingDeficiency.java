package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A deficiency that the latest test or finding still shows; only the second call of the rule base sees it.
 *
 * @param code what is deficient
 * @param place where
 * @param severity class in the regime's scale; null where the inspector judges
 * @param share value in parts of its limit; null where it has none
 * @param says the deficiency in words, with its value
 * @param ofPolicy whether it only breaks a limit that the policy sets beside the law
 */
public record StandingDeficiency(
        DeficiencyCode code,
        Place place,
        @Nullable DeficiencyClass severity,
        @Nullable BigDecimal share,
        String says,
        boolean ofPolicy)
        implements Shown {

    /** A deficiency that the regime knows. */
    public StandingDeficiency(
            DeficiencyCode code,
            Place place,
            @Nullable DeficiencyClass severity,
            @Nullable BigDecimal share,
            String says) {
        this(code, place, severity, share, says, false);
    }

    @Override
    public String shown() {
        return says;
    }
}
