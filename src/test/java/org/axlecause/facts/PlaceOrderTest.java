package org.axlecause.facts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PlaceOrderTest {

    private static final long SEED = 20260404L;

    @Test
    void places_go_from_the_vehicle_over_axles_and_sides_to_spots_and_what_is_left_out_comes_first() {
        List<Place> inOrder = List.of(
                Place.VEHICLE,
                Place.ofCircuit(1),
                Place.ofCircuit(2),
                Place.ofAxle(1),
                Place.ofWheel(1, Side.LEFT),
                Place.ofSpot(1, Side.LEFT, Spot.LEADING),
                Place.ofSpot(1, Side.LEFT, Spot.TRAILING),
                Place.ofWheel(1, Side.RIGHT),
                Place.ofAxle(2),
                Place.ofWheel(2, Side.LEFT),
                Place.ofAxle(11));
        List<Place> shuffled = new ArrayList<>(inOrder);
        Collections.shuffle(shuffled, new Random(SEED));

        Collections.sort(shuffled);

        assertThat(shuffled).as("sorted after shuffling with seed %d", SEED).isEqualTo(inOrder);
    }
}
