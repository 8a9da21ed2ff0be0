package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A clause of the policy in effect; only the second call of the rule base sees it.
 *
 * @param code which clause
 * @param value number it sets, SI or ratio or count
 * @param necessity necessity it sets
 * @param extent extent it sets
 * @param source where the value comes from
 * @param verified standing of the value
 * @param locked whether lower layers may not change it
 */
public record PolicyClause(
        ClauseCode code,
        @Nullable BigDecimal value,
        @Nullable Necessity necessity,
        @Nullable ScopeExtent extent,
        String source,
        Verified verified,
        boolean locked)
        implements Shown {

    /** A clause that sets no extent. */
    public PolicyClause(
            ClauseCode code,
            @Nullable BigDecimal value,
            @Nullable Necessity necessity,
            String source,
            Verified verified,
            boolean locked) {
        this(code, value, necessity, null, source, verified, locked);
    }

    @Override
    public String shown() {
        return "policy clause " + code;
    }
}
