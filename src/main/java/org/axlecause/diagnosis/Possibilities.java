package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.Axle;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.Drive;
import org.axlecause.facts.Place;
import org.axlecause.facts.Vehicle;
import org.jspecify.annotations.Nullable;

/** What could be wrong on every vehicle of one layout, and where each cause would show. */
final class Possibilities {

    private final List<Candidate> candidates;
    private final Map<Candidate, List<Effect>> effects = new HashMap<>();

    Possibilities(CauseModel model, Kind kind) {
        Vehicle vehicle = kind.vehicle();
        Layout layout = new Layout(vehicle);
        List<Candidate> found = new ArrayList<>();
        for (Cause cause : model.causes()) {
            for (Place place : layout.places(cause.level())) {
                Axle axle = layout.axleOf(place);
                if (axle == null ? fitsVehicle(cause, vehicle) : cause.fits(vehicle, axle)) {
                    Candidate candidate = new Candidate(cause.code(), place);
                    found.add(candidate);
                    effects.put(candidate, effects(model, layout, cause, place));
                }
            }
        }
        Collections.sort(found);
        candidates = List.copyOf(found);
    }

    private static boolean fitsVehicle(Cause cause, Vehicle vehicle) {
        return cause.fits(vehicle) && vehicle.axles().stream().anyMatch(axle -> axle.brake() != null);
    }

    private static List<Effect> effects(CauseModel model, Layout layout, Cause cause, Place from) {
        List<Effect> effects = new ArrayList<>();
        for (Link link : cause.links()) {
            Level level = link.finding()
                    ? model.finding(link.evidence()).level()
                    : model.symptomOf(link.evidence()).level();
            effects.add(new Effect(
                    link.strength(),
                    layout.reached(from, link.reach(), level).stream()
                            .map(place -> new Sign(link.evidence(), link.finding(), place))
                            .toList(),
                    link.firstRunOnly()));
        }
        return effects;
    }

    /** Every cause at every place where the layout allows it, sorted by code and place. */
    List<Candidate> candidates() {
        return candidates;
    }

    /** What a candidate would show, in the order of its links. */
    List<Effect> effectsOf(Candidate candidate) {
        return effects.getOrDefault(candidate, List.of());
    }

    /**
     * One link of a cause at a place.
     *
     * @param strength how surely it shows, a probability
     * @param signs what it would show
     * @param firstRunOnly whether it shows in a first run only
     */
    record Effect(double strength, List<Sign> signs, boolean firstRunOnly) {}

    /**
     * The layout of a vehicle: all that causes can depend on, and nothing that tells two such vehicles apart.
     *
     * @param category category of the vehicle
     * @param axles axles from the front
     * @param split division of the hydraulic circuits
     * @param drive driven axles
     * @param regenerative whether the drive brakes regeneratively
     * @param antilock whether an anti-lock system is fitted
     */
    record Kind(
            String category,
            List<Axle> axles,
            @Nullable CircuitSplit split,
            @Nullable Drive drive,
            @Nullable Boolean regenerative,
            @Nullable Boolean antilock) {

        static Kind of(Vehicle vehicle) {
            return new Kind(
                    vehicle.category(),
                    vehicle.axles(),
                    vehicle.circuitSplit(),
                    vehicle.drive(),
                    vehicle.regenerative(),
                    vehicle.antilock());
        }

        private Vehicle vehicle() {
            return new Vehicle(
                    category,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    drive,
                    null,
                    regenerative,
                    null,
                    split,
                    antilock,
                    null,
                    axles,
                    null);
        }
    }
}
