package org.axlecause.statistics;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.OptionalInt;

/**
 * When the published weights of a tenant begin. A version is published some time before it begins, so that a timetable
 * stays right for a while without being read again.
 *
 * @param readAt when it was read, by the clock of the database
 * @param beginnings in the order of the versions, which is that of their beginnings
 */
record Timetable(OffsetDateTime readAt, List<Beginning> beginnings) {

    /** How long before its beginning a version is published at least. */
    static final Duration LEAD = Duration.ofMinutes(1);

    /** What is left of the lead once the transaction that publishes has had its time. */
    private static final Duration SURE_FOR = LEAD.dividedBy(2);

    Timetable {
        beginnings = List.copyOf(beginnings);
    }

    /**
     * The beginning of a version.
     *
     * @param version its number
     * @param from its first moment
     */
    record Beginning(int version, OffsetDateTime from) {}

    /** Whether no version that begins by that moment can have been published since this was read. */
    boolean isSureOf(OffsetDateTime moment) {
        return moment.isBefore(readAt.plus(SURE_FOR));
    }

    /** Where a version stands at the moment at which this was read. */
    WeightsVersion.State stateOf(WeightsVersion version) {
        if (version.effectiveFrom().isAfter(readAt)) {
            return WeightsVersion.State.TO_COME;
        }
        return at(readAt).orElse(version.version()) == version.version()
                ? WeightsVersion.State.IN_FORCE
                : WeightsVersion.State.SUPERSEDED;
    }

    /** The version in force at a moment; none before the first. */
    OptionalInt at(OffsetDateTime moment) {
        return beginnings.stream()
                .filter(beginning -> !beginning.from().isAfter(moment))
                .mapToInt(Beginning::version)
                .max();
    }
}
