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
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Which dimensions the folded cells of repairs are told apart by, beside the month of the case, proof and return. */
enum RepairGrain {
    AGE_ALONE(Set.of(AGE_BAND, ODOMETER_BAND)),
    SITE_ALONE(Set.of(SITE, CATEGORY, REGIME)),
    MODEL_ALONE(Set.of(MAKE, MODEL, CATEGORY, LAYOUT, REGIME)),
    /** A repair with several items is in the cell of each. */
    ITEM(Set.of()),
    /** What sites are compared by: proved in a month, come back within the time that counts (1) or not. */
    STRATUM(Set.of(SITE, LAYOUT, AGE_BAND, ODOMETER_BAND));

    private final Set<Dimension> dimensions;

    RepairGrain(Set<Dimension> dimensions) {
        this.dimensions = dimensions;
    }

    boolean has(Dimension dimension) {
        return dimensions.contains(dimension);
    }

    boolean hasAll(Collection<Dimension> needed) {
        return dimensions.containsAll(needed);
    }

    /** The coarsest grain by days that tells all of these apart; none where only the rows of the repairs do. */
    static Optional<RepairGrain> byDay(Collection<Dimension> needed) {
        return Stream.of(AGE_ALONE, SITE_ALONE, MODEL_ALONE)
                .filter(grain -> grain.hasAll(needed))
                .findFirst();
    }

    /** Its code in the cells. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
