package org.axlecause.statistics;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What an answer can be told apart by, with the columns that it is counted by. */
enum GroupBy {
    SITE("site", Dimension.SITE, null),
    REGION("region", Dimension.SITE, null),
    MAKE("make", Dimension.MAKE, null),
    MODEL("model", Dimension.MODEL, null),
    CATEGORY("category", Dimension.CATEGORY, null),
    LAYOUT("layout", Dimension.LAYOUT, null),
    AGE_BAND("ageBand", Dimension.AGE_BAND, null),
    ODOMETER_BAND("odometerBand", Dimension.ODOMETER_BAND, null),
    REGIME("regime", Dimension.REGIME, null),
    MONTH("month", null, null),
    SEASON("season", null, null),
    AXLE("axle", null, "axle"),
    SIDE("side", null, "side"),
    ROLE("role", null, "standing");

    private final String word;
    private final @Nullable Dimension dimension;
    private final @Nullable String member;

    GroupBy(String word, @Nullable Dimension dimension, @Nullable String member) {
        this.word = word;
        this.dimension = dimension;
        this.member = member;
    }

    static Optional<GroupBy> of(String word) {
        return Stream.of(values()).filter(by -> by.word.equals(word)).findFirst();
    }

    /** Those that part the cases; the others part the causes of a case. */
    static List<GroupBy> ofCases() {
        return Stream.of(values()).filter(by -> !by.isOfCauses()).toList();
    }

    @Nullable
    Dimension dimension() {
        return dimension;
    }

    @Nullable
    String member() {
        return member;
    }

    /** Whether it parts the causes of a case instead of the cases. */
    boolean isOfCauses() {
        return member != null;
    }

    boolean isByMonth() {
        return this == MONTH || this == SEASON;
    }

    /** The word on the wire. */
    @Override
    public String toString() {
        return word;
    }
}
