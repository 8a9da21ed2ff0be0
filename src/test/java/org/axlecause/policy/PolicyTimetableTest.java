package org.axlecause.policy;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import org.axlecause.policy.PolicyTimetable.Beginning;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class PolicyTimetableTest {

    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
    private static final OffsetDateTime PRESENTED = OffsetDateTime.parse("2026-03-02T08:15:00Z");
    private static final OffsetDateTime EARLIER = PRESENTED.minusDays(30);

    @Test
    void the_version_that_began_last_is_in_effect_from_its_first_day_on() {
        PolicyTimetable timetable =
                of(beginning("fleet", 2, DAY, EARLIER, null), beginning("fleet", 1, DAY.minusYears(1), EARLIER, null));

        assertThat(timetable.inEffect("quay-street", DAY, PRESENTED)).contains(version("fleet", 2));
        assertThat(timetable.inEffect("quay-street", DAY.minusDays(1), PRESENTED))
                .contains(version("fleet", 1));
        assertThat(timetable.inEffect("quay-street", DAY.minusYears(2), PRESENTED))
                .isEmpty();
    }

    @Test
    void what_was_published_after_the_vehicle_came_takes_no_part() {
        PolicyTimetable timetable = of(
                beginning("fleet", 2, DAY.minusDays(1), PRESENTED.plusSeconds(1), null),
                beginning("fleet", 1, DAY.minusYears(1), EARLIER, null));

        assertThat(timetable.inEffect("quay-street", DAY, PRESENTED)).contains(version("fleet", 1));
        assertThat(timetable.inEffect("quay-street", DAY, PRESENTED.plusSeconds(1)))
                .contains(version("fleet", 2));
    }

    @Test
    void a_version_that_leaves_a_site_out_supersedes_the_one_that_covered_it() {
        PolicyTimetable timetable = of(
                beginning("coast", 2, DAY, EARLIER, List.of("mill-lane")),
                beginning("coast", 1, DAY.minusYears(1), EARLIER, List.of("mill-lane", "quay-street")),
                beginning("fleet", 1, DAY.minusYears(1), EARLIER, null));

        assertThat(timetable.inEffect("mill-lane", DAY, PRESENTED)).contains(version("coast", 2));
        assertThat(timetable.inEffect("quay-street", DAY, PRESENTED)).contains(version("fleet", 1));
        assertThat(timetable.inEffect("quay-street", DAY.minusDays(1), PRESENTED))
                .contains(version("coast", 1));
    }

    @Test
    void it_is_sure_of_moments_by_which_every_publication_had_ended_when_it_was_read() {
        PolicyTimetable timetable = new PolicyTimetable(PRESENTED, List.of());

        assertThat(timetable.isSureOf(PRESENTED.minusMinutes(2).minusNanos(1))).isTrue();
        assertThat(timetable.isSureOf(PRESENTED.minusMinutes(2))).isFalse();
        assertThat(timetable.isSureOf(PRESENTED)).isFalse();
    }

    private static PolicyTimetable of(Beginning... beginnings) {
        return new PolicyTimetable(PRESENTED, List.of(beginnings));
    }

    private static PolicyVersionStore.Key version(String name, int version) {
        return new PolicyVersionStore.Key(name, version);
    }

    private static Beginning beginning(
            String name, int version, LocalDate from, OffsetDateTime publishedAt, @Nullable List<String> covers) {
        return new Beginning(version(name, version), from, publishedAt, covers);
    }
}
