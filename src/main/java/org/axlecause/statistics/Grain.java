package org.axlecause.statistics;

import static org.axlecause.statistics.Dimension.AGE_BAND;
import static org.axlecause.statistics.Dimension.CATEGORY;
import static org.axlecause.statistics.Dimension.LAYOUT;
import static org.axlecause.statistics.Dimension.MAKE;
import static org.axlecause.statistics.Dimension.MODEL;
import static org.axlecause.statistics.Dimension.ODOMETER_BAND;
import static org.axlecause.statistics.Dimension.REGIME;
import static org.axlecause.statistics.Dimension.SITE;

import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.casefile.Countable;

/** Which dimensions, beside the month, the folded cells are told apart by; the coarsest grain comes first. */
enum Grain {
    TOTAL(EnumSet.of(CATEGORY, REGIME), Questions.ALL),
    SITE_ALONE(EnumSet.of(SITE, CATEGORY, REGIME), Questions.BUT_CALIBRATION),
    MODEL_ALONE(EnumSet.of(MAKE, MODEL, CATEGORY, LAYOUT, REGIME), Questions.BUT_CALIBRATION),
    AGE_ALONE(EnumSet.of(AGE_BAND, ODOMETER_BAND), Questions.BUT_CALIBRATION),
    VEHICLE(EnumSet.of(MAKE, MODEL, CATEGORY, LAYOUT, AGE_BAND, ODOMETER_BAND, REGIME), Questions.BUT_CALIBRATION),
    /** What sites are compared by. */
    STRATUM(EnumSet.of(SITE, LAYOUT, AGE_BAND, ODOMETER_BAND), Set.of(Countable.OUTCOME));

    private final Set<Dimension> dimensions;
    private final Set<String> questions;

    Grain(Set<Dimension> dimensions, Set<String> questions) {
        this.dimensions = Set.copyOf(dimensions);
        this.questions = Set.copyOf(questions);
    }

    /** Questions that it answers, in their own order. */
    List<String> questions() {
        return questions.stream().sorted().toList();
    }

    boolean has(Dimension dimension) {
        return dimensions.contains(dimension);
    }

    /** What distinguishes it in a grouping by several sets: 1 for each dimension that is left out, the first one highest. */
    int grouping() {
        int grouping = 0;
        for (Dimension dimension : Dimension.values()) {
            grouping = grouping * 2 + (has(dimension) ? 0 : 1);
        }
        return grouping;
    }

    /** The coarsest grain that tells all of these apart for these questions; none where only the rows of the cases do. */
    static Optional<Grain> of(Collection<Dimension> needed, Collection<String> asked) {
        return Stream.of(values())
                .filter(grain -> grain.questions.containsAll(asked))
                .filter(grain -> grain.dimensions.containsAll(needed))
                .findFirst();
    }

    /** Its code in the cells. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static final class Questions {
        static final Set<String> BUT_CALIBRATION = Set.of(
                Countable.CASE,
                Countable.OUTCOME,
                Countable.CAUSE,
                Countable.PAIR,
                Countable.LINE,
                Countable.CHECK,
                Countable.MINUTES);
        static final Set<String> ALL = Stream.concat(
                        BUT_CALIBRATION.stream(), Stream.of(Countable.CALIBRATION, Countable.TOLD))
                .collect(Collectors.toUnmodifiableSet());
    }
}
