package org.axlecause.statistics;

import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Which cases are asked about; what is not set chooses nothing.
 *
 * @param from first day of presentation
 * @param to first day of presentation that no longer counts
 * @param months numbers of the months of presentation; empty for all
 * @param values values of dimensions; a dimension without values chooses nothing, one with none left no case
 */
record Cohort(
        @Nullable LocalDate from, @Nullable LocalDate to, List<Integer> months, Map<Dimension, List<String>> values) {

    Cohort {
        months = List.copyOf(months);
        Map<Dimension, List<String>> copy = new EnumMap<>(Dimension.class);
        values.forEach((dimension, words) -> copy.put(dimension, List.copyOf(words)));
        values = Collections.unmodifiableMap(copy);
    }

    /** The same choice of cases in another period. */
    Cohort during(LocalDate newFrom, LocalDate newTo) {
        return new Cohort(newFrom, newTo, months, values);
    }

    /** The same choice of cases by these dimensions alone. */
    Cohort onlyBy(Dimension... kept) {
        Map<Dimension, List<String>> some = new EnumMap<>(Dimension.class);
        Stream.of(kept)
                .filter(values::containsKey)
                .forEach(dimension -> some.put(dimension, values.getOrDefault(dimension, List.of())));
        return new Cohort(from, to, months, some);
    }

    Set<Dimension> dimensions() {
        return values.keySet();
    }

    /** First day of the first month that lies in the period as a whole; null where it has no beginning. */
    @Nullable
    LocalDate firstWholeMonth() {
        return from == null || from.getDayOfMonth() == 1
                ? from
                : from.plusMonths(1).withDayOfMonth(1);
    }

    /** First day after the last month that lies in the period as a whole; null where it has no end. */
    @Nullable
    LocalDate endOfWholeMonths() {
        return to == null ? null : to.withDayOfMonth(1);
    }

    /** First day of the first year that lies in the period as a whole; null where it has no beginning. */
    @Nullable
    LocalDate firstWholeYear() {
        return from == null || from.getDayOfYear() == 1
                ? from
                : from.plusYears(1).withDayOfYear(1);
    }

    /** First day after the last year that lies in the period as a whole; null where it has no end. */
    @Nullable
    LocalDate endOfWholeYears() {
        return to == null ? null : to.withDayOfYear(1);
    }
}
