package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.axlecause.diagnosis.AxleShare;
import org.axlecause.diagnosis.PriorGroup;
import org.axlecause.diagnosis.RankedCause;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.statistics.ConfirmedCase.Confirmed;
import org.axlecause.statistics.Learning.AxleCount;
import org.axlecause.statistics.Learning.ForecastCount;
import org.junit.jupiter.api.Test;

/** What is counted of cases learned from and of those held out, which vehicles are which, and when a version begins. */
class LearningTest {

    private static final CauseCode OVAL = CauseCode.DRUM_OVAL;
    private static final CauseCode AIR = CauseCode.AIR_IN_CIRCUIT;
    private static final Place RIGHT = Place.ofWheel(2, Side.RIGHT);
    private static final Place LEFT = Place.ofWheel(2, Side.LEFT);
    private static final OffsetDateTime NOON = OffsetDateTime.parse("2026-03-02T12:00:00Z");

    @Test
    void an_axle_counts_once_for_each_cause_that_could_be_there_whether_it_was_confirmed_or_not() {
        List<AxleShare> shares = List.of(
                new AxleShare(OVAL, 2, PriorGroup.DRUM_OLD, 2.5, 0.05),
                new AxleShare(AIR, 1, PriorGroup.DISC_OLD, 1, 0.02),
                new AxleShare(AIR, 2, PriorGroup.DRUM_OLD, 1, 0.02));

        Learning both = Learning.counted(shares, confirmed(OVAL, RIGHT))
                .plus(Learning.counted(shares, confirmed(AIR, Place.VEHICLE)))
                .plus(Learning.HELD_OUT);

        assertThat(both.learnedFrom()).isEqualTo(2);
        assertThat(both.heldOut()).isEqualTo(1);
        assertThat(both.axles())
                .containsExactlyInAnyOrder(
                        new AxleCount(OVAL, PriorGroup.DRUM_OLD, 2.5, 0.1, 1, 2),
                        new AxleCount(AIR, PriorGroup.DISC_OLD, 1, 0.04, 1, 2),
                        new AxleCount(AIR, PriorGroup.DRUM_OLD, 1, 0.04, 1, 2));
        assertThat(both.seen())
                .filteredOn(seen -> seen.cause() == OVAL)
                .singleElement()
                .satisfies(seen -> assertThat(seen.bookShare()).isCloseTo(0.05, within(1e-15)));
    }

    @Test
    void both_wheels_of_an_axle_with_the_cause_are_one_axle_with_it() {
        List<AxleShare> shares = List.of(new AxleShare(OVAL, 2, PriorGroup.DRUM_OLD, 2.5, 0.05));
        ConfirmedCase onBoth =
                new ConfirmedCase("QS-1", "QS-1", true, List.of(new Confirmed(OVAL, LEFT), new Confirmed(OVAL, RIGHT)));

        assertThat(Learning.counted(shares, onBoth).axles())
                .extracting(AxleCount::confirmed)
                .containsExactly(1L);
        assertThat(Learning.counted(shares, confirmed(OVAL, Place.ofWheel(1, Side.LEFT)))
                        .axles())
                .extracting(AxleCount::confirmed)
                .containsExactly(0L);
    }

    @Test
    void what_one_of_the_weights_names_is_scored_for_both_and_what_is_ruled_out_for_none() {
        Learning scored = Learning.scored(
                List.of(named(OVAL, RIGHT, "0.30"), named(AIR, Place.ofCircuit(1), "0.10")),
                List.of(
                        named(OVAL, RIGHT, "0.80"),
                        named(OVAL, LEFT, "0.02"),
                        new RankedCause(
                                CauseCode.DRUM_ECCENTRIC,
                                LEFT,
                                "",
                                CauseStanding.RULED_OUT,
                                BigDecimal.ZERO,
                                false,
                                List.of(),
                                List.of(),
                                List.of())),
                confirmed(OVAL, RIGHT));

        assertThat(scored.scored()).isEqualTo(1);
        assertThat(scored.before())
                .containsExactly(new ForecastCount(0, 0, 1), new ForecastCount(10, 0, 1), new ForecastCount(30, 1, 1));
        assertThat(scored.after())
                .containsExactly(new ForecastCount(0, 0, 1), new ForecastCount(2, 0, 1), new ForecastCount(80, 1, 1));
        assertThat(scored.plus(scored).after()).contains(new ForecastCount(80, 2, 2));
    }

    @Test
    void only_groups_of_which_enough_was_seen_are_published() {
        LearningTerms terms = new LearningTerms(200, 2, 0.25);
        Learning one = Learning.counted(
                List.of(new AxleShare(OVAL, 2, PriorGroup.DRUM_OLD, 2.5, 0.05)), confirmed(OVAL, RIGHT));

        assertThat(one.published(terms)).isEmpty();
        assertThat(one.plus(one).published(terms)).singleElement().satisfies(weight -> {
            assertThat(weight.bookWeight()).isEqualTo(2.5);
            assertThat(weight.weight())
                    .as("(200 x 0.05 + 2) / 202 over 0.05, by hand")
                    .isCloseTo(2.5 * (12.0 / 202) / 0.05, within(1e-12));
        });
    }

    @Test
    void a_vehicle_is_on_one_side_of_a_proposal_and_another_proposal_parts_anew() {
        VehicleSplit split = new VehicleSplit(UUID.fromString("5a3c1b54-6a47-4f0e-8f3a-0f4f5dbb2a10"), 0.25);
        VehicleSplit other = new VehicleSplit(UUID.fromString("0d1ff0f7-24f6-4b0c-9d0b-6a8c0b0f7a11"), 0.25);

        List<String> vehicles =
                IntStream.range(0, 4000).mapToObj(number -> "token-" + number).toList();

        assertThat(vehicles)
                .allSatisfy(vehicle -> assertThat(split.holdsOut(vehicle)).isEqualTo(split.holdsOut(vehicle)));
        assertThat(vehicles.stream().filter(split::holdsOut).count())
                .as("a quarter of 4000, within five standard errors")
                .isBetween(863L, 1137L);
        assertThat(vehicles.stream()
                        .filter(split::holdsOut)
                        .filter(other::holdsOut)
                        .count())
                .as("a sixteenth of 4000, within five standard errors")
                .isBetween(173L, 327L);
    }

    @Test
    void a_version_is_in_force_from_its_first_moment_to_that_of_the_next() {
        Timetable timetable = new Timetable(
                NOON,
                List.of(
                        new Timetable.Beginning(1, NOON.minusDays(2)),
                        new Timetable.Beginning(2, NOON.minusDays(1)),
                        new Timetable.Beginning(3, NOON.plusDays(1))));

        assertThat(timetable.at(NOON.minusDays(2).minusNanos(1))).isEmpty();
        assertThat(timetable.at(NOON.minusDays(2))).hasValue(1);
        assertThat(timetable.at(NOON.minusDays(1).minusNanos(1))).hasValue(1);
        assertThat(timetable.at(NOON.minusDays(1))).hasValue(2);
        assertThat(timetable.at(NOON.plusDays(1))).hasValue(3);
        assertThat(List.of(
                        timetable.stateOf(version(1, NOON.minusDays(2))),
                        timetable.stateOf(version(2, NOON.minusDays(1))),
                        timetable.stateOf(version(3, NOON.plusDays(1)))))
                .containsExactly(
                        WeightsVersion.State.SUPERSEDED, WeightsVersion.State.IN_FORCE, WeightsVersion.State.TO_COME);
    }

    /** What is published after it was read begins a minute after its publication, and publishing takes under half of it. */
    @Test
    void a_timetable_is_read_again_before_a_later_publication_could_matter() {
        Timetable timetable = new Timetable(NOON, List.of());

        assertThat(timetable.isSureOf(NOON.minusYears(1))).isTrue();
        assertThat(timetable.isSureOf(NOON.plusSeconds(29))).isTrue();
        assertThat(timetable.isSureOf(NOON.plusSeconds(30))).isFalse();
        assertThat(Timetable.LEAD).hasSeconds(60);
    }

    private static WeightsVersion version(int number, OffsetDateTime from) {
        return new WeightsVersion(number, from, new UUID(0, number), List.of(), List.of("a"), "any", NOON, "b");
    }

    private static ConfirmedCase confirmed(CauseCode code, Place place) {
        return new ConfirmedCase("QS-1", "QS-1", true, List.of(new Confirmed(code, place)));
    }

    private static RankedCause named(CauseCode code, Place place, String probability) {
        return new RankedCause(
                code,
                place,
                "",
                CauseStanding.SUSPECTED,
                new BigDecimal(probability),
                true,
                List.of(),
                List.of(),
                List.of());
    }
}
