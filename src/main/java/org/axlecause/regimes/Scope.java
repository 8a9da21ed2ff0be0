package org.axlecause.regimes;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.axlecause.facts.Axle;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.Vehicle;
import org.jspecify.annotations.Nullable;

/** What a limit is about; each axle and each wheel gets a limit of its own. */
enum Scope {
    VEHICLE,
    AXLE,
    FRONT_AXLE,
    REAR_AXLES,
    WHEEL;

    /** The places of a vehicle that it means. */
    List<Spot> spots(Vehicle vehicle) {
        return switch (this) {
            case VEHICLE -> List.of(new Spot(Place.VEHICLE, null));
            case AXLE -> axles(vehicle).map(Scope::whole).toList();
            case FRONT_AXLE ->
                axles(vehicle)
                        .filter(axle -> axle.number() == 1)
                        .map(Scope::whole)
                        .toList();
            case REAR_AXLES ->
                axles(vehicle)
                        .filter(axle -> axle.number() > 1)
                        .map(Scope::whole)
                        .toList();
            case WHEEL ->
                axles(vehicle)
                        .flatMap(axle -> Stream.of(Side.LEFT, Side.RIGHT)
                                .map(side -> new Spot(Place.ofWheel(axle.number(), side), axle)))
                        .toList();
        };
    }

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static Stream<Axle> axles(Vehicle vehicle) {
        return vehicle.axles().stream();
    }

    private static Spot whole(Axle axle) {
        return new Spot(Place.ofAxle(axle.number()), axle);
    }

    /** A place with its axle. */
    record Spot(Place place, @Nullable Axle axle) {}
}
