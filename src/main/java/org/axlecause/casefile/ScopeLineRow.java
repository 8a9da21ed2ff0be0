package org.axlecause.casefile;

import java.math.BigDecimal;
import org.axlecause.facts.Place;
import org.jspecify.annotations.Nullable;

/** One scope line of a case, as a row that statistics ask. */
public record ScopeLineRow(
        String line,
        String action,
        String item,
        Place place,
        String extent,
        BigDecimal quantity,
        String necessity,
        String standing,
        @Nullable String policyClause,
        @Nullable BigDecimal net,
        @Nullable String currency) {}
