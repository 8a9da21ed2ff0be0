package org.axlecause.judgement;

import org.axlecause.facts.Bound;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitStanding;
import org.axlecause.facts.Verified;
import org.jspecify.annotations.Nullable;

/**
 * A limit as the case document shows it.
 *
 * @param value limit with unit
 * @param bound side on which it refuses
 * @param standing whose limit it is
 * @param verified how well the value is verified against a text
 * @param source document and section
 */
public record ShownLimit(
        @Nullable Quantity value, Bound bound, LimitStanding standing, Verified verified, String source) {

    static ShownLimit of(Limit limit) {
        return new ShownLimit(
                Quantity.of(limit.kind(), limit.value()),
                limit.bound(),
                limit.standing(),
                limit.verified(),
                limit.source());
    }
}
