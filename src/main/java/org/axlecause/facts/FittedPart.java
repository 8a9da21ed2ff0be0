package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A part that was fitted.
 *
 * @param item kind of part
 * @param place where
 * @param quantity how many
 * @param number part number
 * @param matchedOld whether it was matched against the old one before it went on
 */
public record FittedPart(
        ScopeItem item,
        Place place,
        @Nullable BigDecimal quantity,
        @Nullable String number,
        @Nullable Boolean matchedOld) {}
