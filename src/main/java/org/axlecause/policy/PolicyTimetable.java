package org.axlecause.policy;

import java.time.Duration;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * When the published versions of a tenant's policies begin. What is published after a moment takes no part in judging a
 * vehicle that was presented by then, so that a timetable stays right for all moments before it was read.
 *
 * @param readAt when it was read, by the clock that dates publications
 * @param beginnings those of a policy one after the other, each time the one that supersedes the others first
 */
record PolicyTimetable(OffsetDateTime readAt, List<Beginning> beginnings) {

    /** A publication is seen by all after its transaction has ended, and clocks of replicas differ a little. */
    private static final Duration UNTIL_SEEN = Duration.ofMinutes(2);

    PolicyTimetable {
        beginnings = List.copyOf(beginnings);
    }

    /**
     * The beginning of a version.
     *
     * @param key what names it
     * @param from its first day
     * @param publishedAt when it was published
     * @param covers the sites it judges at; all of them where null
     */
    record Beginning(
            PolicyVersionStore.Key key,
            LocalDate from,
            OffsetDateTime publishedAt,
            @Nullable List<String> covers) {}

    /** Whether every version that was published by that moment was seen when this was read. */
    boolean isSureOf(OffsetDateTime moment) {
        return moment.isBefore(readAt.minus(UNTIL_SEEN));
    }

    /** The version in effect at a site on a day, of those published by a moment: the first policy's that covers the site. */
    Optional<PolicyVersionStore.Key> inEffect(String site, LocalDate day, OffsetDateTime publishedBy) {
        String name = null;
        for (Beginning beginning : beginnings) {
            boolean superseded = beginning.key().name().equals(name);
            if (!superseded
                    && !beginning.from().isAfter(day)
                    && !beginning.publishedAt().isAfter(publishedBy)) {
                name = beginning.key().name();
                if (beginning.covers() == null || beginning.covers().contains(site)) {
                    return Optional.of(beginning.key());
                }
            }
        }
        return Optional.empty();
    }
}
