package org.axlecause.statistics;

import org.jspecify.annotations.Nullable;

/**
 * How surprising counts are where nothing differs.
 *
 * @param method what was calculated
 * @param statistic value of chi-squared; null where the method has none
 * @param pValue probability of counts at least as far from even, from 0 to 1
 */
public record Significance(Method method, @Nullable Double statistic, double pValue) {

    /** What was calculated. */
    public enum Method {
        FISHER_EXACT,
        CHI_SQUARED
    }
}
