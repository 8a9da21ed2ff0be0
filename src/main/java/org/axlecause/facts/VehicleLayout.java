package org.axlecause.facts;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What scope and work need to know of the vehicle; only the second call of the rule base sees it.
 *
 * @param vehicle the vehicle
 * @param day day of the presentation
 */
public record VehicleLayout(Vehicle vehicle, LocalDate day) implements Shown {

    @Override
    public String shown() {
        return "vehicle of category " + vehicle.category();
    }

    /** Full years since first use, or null where that day is unknown. */
    public @Nullable BigDecimal ageInYears() {
        LocalDate from = vehicle.firstUsed() != null ? vehicle.firstUsed() : vehicle.firstRegistered();
        return from == null ? null : BigDecimal.valueOf(ChronoUnit.YEARS.between(from, day));
    }

    /**
     * The hydraulic circuit that feeds a wheel or an axle, or the whole vehicle where that is more than one circuit or
     * unknown. Circuit 1 is the front one, or the one of the left front wheel.
     */
    public Place circuitOf(Place place) {
        CircuitSplit split = vehicle.circuitSplit();
        if (place.circuit() != null) {
            return Place.ofCircuit(place.circuit());
        }
        if (split == null || place.axle() == null) {
            return Place.VEHICLE;
        }
        return switch (split) {
            case SINGLE -> Place.ofCircuit(1);
            case FRONT_REAR -> Place.ofCircuit(isFront(place) ? 1 : 2);
            case DIAGONAL ->
                place.side() == null
                        ? Place.VEHICLE
                        : Place.ofCircuit(isFront(place) == (place.side() == Side.LEFT) ? 1 : 2);
        };
    }

    /** How far the circuit of {@link #circuitOf} reaches. */
    public ScopeExtent circuitExtentOf(Place place) {
        return circuitOf(place).circuit() == null ? ScopeExtent.VEHICLE : ScopeExtent.CIRCUIT;
    }

    private static boolean isFront(Place place) {
        return place.axle() != null && place.axle() == 1;
    }

    /** Year of first use or registration, or null where unknown. */
    public @Nullable BigDecimal firstYear() {
        LocalDate from = vehicle.firstUsed() != null ? vehicle.firstUsed() : vehicle.firstRegistered();
        return from == null ? null : BigDecimal.valueOf(from.getYear());
    }

    /** Axles of the vehicle. */
    public List<Axle> axles() {
        return vehicle.axles();
    }
}
