package org.axlecause.regimes;

import java.time.LocalDate;
import java.util.Set;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/**
 * Days from one day on and before another; either end may be open.
 *
 * @param from first day
 * @param before first day no longer in it
 */
record Period(@Nullable LocalDate from, @Nullable LocalDate before) {

    static Period of(YamlNode node, String name) {
        LocalDate from = node.optionalDate(name + "-from");
        LocalDate before = node.optionalDate(name + "-before");
        if (from != null && before != null && !from.isBefore(before)) {
            throw node.member(name + "-before")
                    .wrong(
                            "'" + name + "-before' " + before + " is not after '" + name + "-from' " + from,
                            "exchange the two days or mend one");
        }
        return new Period(from, before);
    }

    boolean holds(LocalDate day) {
        return (from == null || !day.isBefore(from)) && (before == null || day.isBefore(before));
    }

    /** Whether the day may lie in it; notes the datum where the day is not known. */
    boolean admits(@Nullable LocalDate day, Datum datum, Set<Datum> unknown) {
        if (from == null && before == null) {
            return true;
        }
        if (day == null) {
            unknown.add(datum);
            return true;
        }
        return holds(day);
    }
}
