package org.axlecause.diagnosis;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.facts.Axle;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.Vehicle;
import org.jspecify.annotations.Nullable;

/** Places of a vehicle and how they hang together. */
final class Layout {

    private final Vehicle vehicle;
    private final List<Place> wheels = new ArrayList<>();
    private final List<Place> axles = new ArrayList<>();
    private final List<Place> circuits = new ArrayList<>();

    Layout(Vehicle vehicle) {
        this.vehicle = vehicle;
        for (Axle axle : vehicle.axles()) {
            axles.add(Place.ofAxle(axle.number()));
            wheels.add(Place.ofWheel(axle.number(), Side.LEFT));
            wheels.add(Place.ofWheel(axle.number(), Side.RIGHT));
        }
        circuits.add(Place.ofCircuit(1));
        if (vehicle.circuitSplit() != CircuitSplit.SINGLE) {
            circuits.add(Place.ofCircuit(2));
        }
    }

    Vehicle vehicle() {
        return vehicle;
    }

    List<Place> places(Level level) {
        return switch (level) {
            case WHEEL -> wheels;
            case AXLE -> axles;
            case CIRCUIT -> circuits;
            case VEHICLE -> List.of(Place.VEHICLE);
        };
    }

    @Nullable
    Axle axleOf(Place place) {
        return place.axle() == null ? null : vehicle.axle(place.axle());
    }

    @Nullable
    WheelBrake brakeOf(Place place) {
        Axle axle = axleOf(place);
        return axle == null ? null : WheelBrake.of(axle);
    }

    /** Whether the parking brake of the axle presses the linings or pads of its service brake. */
    boolean parksOnServiceFriction(Place place) {
        Axle axle = axleOf(place);
        return axle != null && axle.parkingBrake() != ParkingLayout.SHOES_IN_DISC;
    }

    /** Full years since first use, or null where that day is unknown. */
    @Nullable
    Long age(LocalDate day) {
        LocalDate from = vehicle.firstUsed() != null ? vehicle.firstUsed() : vehicle.firstRegistered();
        return from == null ? null : ChronoUnit.YEARS.between(from, day);
    }

    /** Circuits that the wheel may hang on: one, or all where the split is not known. */
    List<Place> circuitsOf(Place wheel) {
        Integer circuit = vehicle.circuitOf(wheel);
        return circuit == null ? circuits : List.of(Place.ofCircuit(circuit));
    }

    /** Wheels that a place contains or feeds. */
    List<Place> wheelsOf(Place place) {
        if (place.isWheel()) {
            return List.of(place.wheel());
        }
        if (place.circuit() != null) {
            return wheels.stream()
                    .filter(wheel -> circuitsOf(wheel).contains(Place.ofCircuit(place.circuit())))
                    .toList();
        }
        return place.axle() == null
                ? wheels
                : wheels.stream().filter(wheel -> wheel.sameAxle(place)).toList();
    }

    /** Places of a level that belong to the place: those in it, or the one it is in. */
    List<Place> at(Level level, Place place) {
        return switch (level) {
            case WHEEL -> wheelsOf(place);
            case AXLE -> place.axle() == null ? axles : List.of(Place.ofAxle(place.axle()));
            case CIRCUIT -> {
                if (place.circuit() != null) {
                    yield List.of(Place.ofCircuit(place.circuit()));
                }
                yield place.isWheel() ? circuitsOf(place.wheel()) : circuits;
            }
            case VEHICLE -> List.of(Place.VEHICLE);
        };
    }

    /** Where an effect of the given level is, seen from its cause. */
    List<Place> reached(Place from, Reach reach, Level effect) {
        return switch (reach) {
            case OTHER_WHEEL -> List.of(from.wheel().opposite());
            case CIRCUIT_WHEELS ->
                circuitsOf(from.wheel()).stream()
                        .flatMap(circuit -> wheelsOf(circuit).stream())
                        .distinct()
                        .toList();
            case EACH_CIRCUIT -> circuits;
            case SAME, SAME_WHEEL, EACH_WHEEL, CIRCUIT, AXLE, VEHICLE -> at(effect, from);
        };
    }
}
