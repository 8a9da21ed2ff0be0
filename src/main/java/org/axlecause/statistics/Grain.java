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
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.axlecause.casefile.Countable;

/** Which dimensions, beside the month, the folded cells are told apart by; the coarsest grain comes first. */
enum Grain {
    PROBABILITIES(Set.of(), Questions.PROBABILITIES),
    TOTAL(Set.of(CATEGORY, REGIME), Questions.OF_CASES),
    PROBABILITIES_OF_SITE(Set.of(SITE), Questions.PROBABILITIES),
    PROBABILITIES_OF_MODEL(Set.of(MAKE, MODEL, CATEGORY, LAYOUT, REGIME), Questions.PROBABILITIES),
    PROBABILITIES_OF_AGE(Set.of(AGE_BAND, ODOMETER_BAND), Questions.PROBABILITIES),
    SITE_ALONE(Set.of(SITE, CATEGORY, REGIME), Questions.OF_CASES),
    MODEL_ALONE(Set.of(MAKE, MODEL, CATEGORY, LAYOUT, REGIME), Questions.OF_CASES),
    AGE_ALONE(Set.of(AGE_BAND, ODOMETER_BAND), Questions.OF_CASES),
    SITE_AND_MODEL(Set.of(SITE, MAKE, MODEL, CATEGORY, LAYOUT, REGIME), Questions.OF_CASES),
    VEHICLE(Set.of(MAKE, MODEL, CATEGORY, LAYOUT, AGE_BAND, ODOMETER_BAND, REGIME), Questions.OF_CASES),
    /** What sites are compared by. */
    STRATUM(Set.of(SITE, LAYOUT, AGE_BAND, ODOMETER_BAND), Set.of(Countable.OUTCOME)),
    /** What sites are compared by among the vehicles of a make, a category or a regime. */
    STRATUM_OF_MAKE(Set.of(SITE, MAKE, CATEGORY, LAYOUT, AGE_BAND, ODOMETER_BAND, REGIME), Set.of(Countable.OUTCOME)),
    /** Its cells have the day in place of the month: for what begins or ends within a month. */
    DAILY(Set.of(), Questions.OF_CASES);

    private final Set<Dimension> dimensions;
    private final Set<String> questions;

    Grain(Set<Dimension> dimensions, Set<String> questions) {
        this.dimensions = dimensions;
        this.questions = questions;
    }

    /** Questions that it answers, in their own order. */
    List<String> questions() {
        return questions.stream().sorted().toList();
    }

    boolean has(Dimension dimension) {
        return dimensions.contains(dimension);
    }

    /** Whether its cells tell these apart for these questions. */
    boolean answers(Collection<Dimension> needed, Collection<String> asked) {
        return questions.containsAll(asked) && dimensions.containsAll(needed);
    }

    /** The coarsest grain by months that does; none where only the rows of the cases do. */
    static Optional<Grain> of(Collection<Dimension> needed, Collection<String> asked) {
        return Stream.of(values())
                .filter(grain -> grain != DAILY)
                .filter(grain -> grain.answers(needed, asked))
                .findFirst();
    }

    /** Its code in the cells. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static final class Questions {
        static final Set<String> OF_CASES = Set.of(
                Countable.CASE,
                Countable.OUTCOME,
                Countable.CAUSE,
                Countable.PAIR,
                Countable.LINE,
                Countable.CHECK,
                Countable.MINUTES);
        static final Set<String> PROBABILITIES = Set.of(Countable.CALIBRATION, Countable.TOLD);
    }
}
