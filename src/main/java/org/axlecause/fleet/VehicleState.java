package org.axlecause.fleet;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.facts.Axle;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Place;
import org.axlecause.facts.Vehicle;

/** An invented vehicle: its wheels with what faults have done to them, and what there is to be seen. */
final class VehicleState {

    private final Vehicle vehicle;
    private final Pedal pedal;
    private final double weight;
    private final Map<Place, WheelState> wheels = new TreeMap<>();
    private final List<Sight> sights = new ArrayList<>();
    private final List<Fault> brought = new ArrayList<>();
    private final Map<Place, Map<MeasuredQuantity, Double>> measures = new TreeMap<>();

    VehicleState(Vehicle vehicle, Pedal pedal, double weight) {
        this.vehicle = vehicle;
        this.pedal = pedal;
        this.weight = weight;
    }

    Vehicle vehicle() {
        return vehicle;
    }

    Pedal pedal() {
        return pedal;
    }

    /** Weight as tested, newtons. */
    double weight() {
        return weight;
    }

    void add(WheelState wheel) {
        wheels.put(wheel.place(), wheel);
    }

    List<WheelState> wheels() {
        return List.copyOf(wheels.values());
    }

    WheelState wheel(Place place) {
        WheelState wheel = wheels.get(place.wheel());
        if (wheel == null) {
            throw new IllegalArgumentException("no wheel at " + place);
        }
        return wheel;
    }

    WheelState left(Axle axle) {
        return wheel(Place.ofAxle(axle.number()).left());
    }

    WheelState right(Axle axle) {
        return wheel(Place.ofAxle(axle.number()).right());
    }

    List<WheelState> wheelsIn(Place place) {
        if (place.circuit() != null) {
            return wheels.values().stream()
                    .filter(wheel -> place.circuit().equals(vehicle.circuitOf(wheel.place())))
                    .toList();
        }
        return wheels.values().stream()
                .filter(wheel -> place.wheel().covers(wheel.place()))
                .toList();
    }

    void see(Sight sight) {
        sights.add(sight);
    }

    void bring(Fault fault) {
        brought.add(fault);
    }

    /** What the faults have led to and is a fault by itself. */
    List<Fault> brought() {
        return List.copyOf(brought);
    }

    List<Sight> sights() {
        return List.copyOf(sights);
    }

    boolean shows(Component component, Condition condition) {
        return sights.stream().anyMatch(sight -> sight.component() == component && sight.condition() == condition);
    }

    void measure(Place place, MeasuredQuantity quantity, double value) {
        measures.computeIfAbsent(place.wheel(), empty -> new EnumMap<>(MeasuredQuantity.class))
                .put(quantity, value);
    }

    /** What is measured there because of a fault; without a number where the part is sound. */
    double measured(Place place, MeasuredQuantity quantity) {
        Map<MeasuredQuantity, Double> here = measures.get(place.wheel());
        Double value = here == null ? null : here.get(quantity);
        return value == null ? Double.NaN : value;
    }
}
