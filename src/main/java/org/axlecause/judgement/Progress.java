package org.axlecause.judgement;

import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import org.axlecause.diagnosis.RankedCause;
import org.axlecause.facts.CheckCode;
import org.jspecify.annotations.Nullable;

/**
 * How the causes stood while the vehicle was looked at, entries that were taken back left out.
 *
 * @param arrival causes after the arrival test, before anything was looked at; null where no arrival test came first
 * @param beforeOpening causes before the first look with a wheel off; null where there was none
 * @param asked checks that were worth making at some time
 * @param made checks that were made, in order
 * @param last causes after the last look
 */
public record Progress(
        @Nullable List<RankedCause> arrival,
        @Nullable List<RankedCause> beforeOpening,
        Set<CheckCode> asked,
        List<MadeCheck> made,
        List<RankedCause> last) {

    /** A case in which nothing was weighed. */
    public static final Progress NONE = new Progress(null, null, Set.of(), List.of(), List.of());

    public Progress {
        arrival = arrival == null ? null : List.copyOf(arrival);
        beforeOpening = beforeOpening == null ? null : List.copyOf(beforeOpening);
        asked = Set.copyOf(asked);
        made = List.copyOf(made);
        last = List.copyOf(last);
    }

    /**
     * A check that was made.
     *
     * @param check the check
     * @param asked whether it was worth making just before
     * @param answered whether the place could be got at
     * @param told bits by which the doubt about the causes has fallen; below 0 where it rose
     * @param minutes minutes that it is expected to take, access included where it was asked for
     */
    public record MadeCheck(CheckCode check, boolean asked, boolean answered, BigDecimal told, int minutes) {}
}
