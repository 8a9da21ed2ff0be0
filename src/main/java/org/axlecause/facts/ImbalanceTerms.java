package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * How a regime compares the wheels of an axle.
 *
 * @param formula the formula
 * @param below formula of an axle behind the front one whose force is a small share of its load; null where there is
 *     only one
 * @param branch share of the axle load from which the first formula holds; null where there is only one
 * @param verified how well formula and branch are verified
 */
public record ImbalanceTerms(
        ImbalanceFormula formula,
        @Nullable ImbalanceFormula below,
        @Nullable BigDecimal branch,
        Verified verified) {}
