package org.axlecause.repair;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.StepCode;
import org.junit.jupiter.api.Test;

class StepOrderTest {

    private static final long SEED = 20261128;
    private static final RepairCatalogue CATALOGUE = RepairCatalogue.onClassPath();

    private static final Place REAR = Place.ofAxle(2);
    private static final Place LEFT = Place.ofWheel(2, Side.LEFT);
    private static final Place RIGHT = Place.ofWheel(2, Side.RIGHT);

    /** One side stays whole as the pattern for the other: common practice. */
    @Test
    void the_right_side_is_taken_apart_once_the_left_one_is_whole_again() {
        assertThat(ordered(shoesOfBothSides()))
                .containsExactly(
                        "strip-shoes-axle-2-left",
                        "fit-shoes-axle-2-left",
                        "strip-shoes-axle-2-right",
                        "fit-shoes-axle-2-right");
    }

    @Test
    void both_sides_are_apart_together_where_a_step_of_the_axle_before_the_fitting_needs_it() {
        Set<StepOrder.Key> steps = shoesOfBothSides();
        steps.add(new StepOrder.Key(StepCode.FABRICATE_BRAKE_PIPE, REAR));

        assertThat(ordered(steps))
                .containsExactly(
                        "strip-shoes-axle-2-left",
                        "strip-shoes-axle-2-right",
                        "fabricate-brake-pipe-axle-2",
                        "fit-shoes-axle-2-left",
                        "fit-shoes-axle-2-right");
    }

    @Test
    void any_steps_at_any_places_have_an_order() {
        System.out.printf("steps at random places, seed %d%n", SEED);
        Random random = new Random(SEED);
        List<StepCode> codes = List.of(StepCode.values());
        List<Place> places = List.of(
                Place.ofAxle(1),
                Place.ofWheel(1, Side.LEFT),
                Place.ofWheel(1, Side.RIGHT),
                REAR,
                LEFT,
                RIGHT,
                Place.ofCircuit(1),
                Place.VEHICLE);
        for (int draw = 0; draw < 2000; draw++) {
            Set<StepOrder.Key> steps = new LinkedHashSet<>();
            for (int number = 0; number < 40; number++) {
                steps.add(new StepOrder.Key(
                        codes.get(random.nextInt(codes.size())), places.get(random.nextInt(places.size()))));
            }

            assertThatCode(() -> ordered(steps)).doesNotThrowAnyException();
        }
    }

    @Test
    void steps_that_come_again_come_in_the_same_order_whatever_came_between() {
        StepOrders orders = new StepOrders(CATALOGUE);
        Set<StepOrder.Key> fewer = new LinkedHashSet<>(shoesOfBothSides());
        fewer.removeIf(step -> step.place().equals(RIGHT));

        for (Set<StepOrder.Key> steps : List.of(shoesOfBothSides(), fewer, shoesOfBothSides())) {
            assertThat(orders.of(steps)).isEqualTo(new StepOrder(CATALOGUE, steps).ordered());
            assertThat(orders.of(steps).keySet())
                    .containsExactlyElementsOf(
                            new StepOrder(CATALOGUE, steps).ordered().keySet());
        }
    }

    private static Set<StepOrder.Key> shoesOfBothSides() {
        List<StepOrder.Key> steps = Stream.of(StepCode.FIT_SHOES, StepCode.STRIP_SHOES)
                .flatMap(step -> Stream.of(new StepOrder.Key(step, RIGHT), new StepOrder.Key(step, LEFT)))
                .toList();
        return new LinkedHashSet<>(steps);
    }

    private static List<String> ordered(Set<StepOrder.Key> steps) {
        return new StepOrder(CATALOGUE, Collections.unmodifiableSet(steps))
                .ordered().keySet().stream().map(StepOrder.Key::id).toList();
    }
}
