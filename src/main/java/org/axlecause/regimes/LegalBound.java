package org.axlecause.regimes;

import java.math.BigDecimal;
import org.axlecause.facts.Bound;

/**
 * The strictest value that a regime sets for cars and light vans.
 *
 * @param regime code of the regime
 * @param bound side on which it refuses
 * @param value in SI units or as a ratio
 * @param source document and section
 */
public record LegalBound(String regime, Bound bound, BigDecimal value, String source) {

    /** Whether a value of the workshop would let pass what this refuses. */
    public boolean isStricterThan(BigDecimal workshop) {
        return bound.isLower() ? workshop.compareTo(value) < 0 : workshop.compareTo(value) > 0;
    }
}
