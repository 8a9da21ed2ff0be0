package org.axlecause.policy;

import java.math.BigDecimal;
import java.util.Set;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.facts.Verified;
import org.axlecause.shared.Dimension;
import org.jspecify.annotations.Nullable;

/**
 * A clause of the vocabulary: what it means and what it takes.
 *
 * @param code its code on the wire
 * @param clause the clause; null where it is a threshold
 * @param threshold the threshold; null where it is a clause
 * @param means what it means
 * @param takes names of the members that it takes beside clause and locked
 * @param optional those that may be left out
 * @param dimension dimension of the value; null where it takes none, or counts years or hours
 * @param unit UCUM unit of the baseline's value; null where it takes none
 * @param written value in the baseline, in that unit; null where it sets none
 * @param necessity necessity in the baseline; null where it sets none
 * @param extent extent in the baseline; null where it sets none
 * @param verified standing of the baseline
 * @param source source of the baseline
 */
record ClauseWord(
        String code,
        @Nullable ClauseCode clause,
        @Nullable ThresholdCode threshold,
        String means,
        Set<String> takes,
        Set<String> optional,
        @Nullable Dimension dimension,
        @Nullable String unit,
        @Nullable BigDecimal written,
        @Nullable String necessity,
        @Nullable String extent,
        Verified verified,
        String source) {

    /** The clause as the baseline sets it, where it sets it. */
    ClauseWanted baseline() {
        return new ClauseWanted(
                code,
                written,
                written == null ? null : unit,
                necessity,
                extent,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }

    /** Whether it is set once for each figure or line instead of once for all. */
    boolean isRepeated() {
        return takes.contains("figure") || takes.contains("item");
    }
}
