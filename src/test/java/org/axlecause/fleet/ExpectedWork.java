package org.axlecause.fleet;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.axlecause.facts.Axle;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.Vehicle;

/** The steps that lines need, told a second time and by hand, and pairs of steps that must never stand the wrong way round. */
final class ExpectedWork {

    /** What is done to a line itself: the step that does it. */
    private static final Map<String, String> DOES = Map.ofEntries(
            Map.entry("renew shoe-set", ""),
            Map.entry("clean shoe-set", "dress-linings"),
            Map.entry("adjust shoe-set", "set-shoes"),
            Map.entry("renew hardware-kit", ""),
            Map.entry("clean hardware-kit", ""),
            Map.entry("clean drum", "degrease-drum"),
            Map.entry("clean disc", "degrease-disc"),
            Map.entry("clean pad-set", "fit-pads"),
            Map.entry("renew pad-set", "fit-pads"),
            Map.entry("renew slide-pin-kit", "free-slide-pins"),
            Map.entry("clean slide-pin-kit", "free-slide-pins"),
            Map.entry("clean bleed-nipple", "renew-bleed-nipple"),
            Map.entry("bleed brake-fluid", "bleed-circuit"),
            Map.entry("renew brake-fluid", "flush-fluid"),
            Map.entry("bleed antilock-modulator", "cycle-modulator"),
            Map.entry("renew antilock-modulator", "renew-modulator"),
            Map.entry("renew hydraulic-system", "renew-rubber-parts"),
            Map.entry("renew parking-shoe-set", "renew-parking-shoes"),
            Map.entry("adjust load-sensing-valve", "set-load-sensing-valve"),
            Map.entry("adjust master-cylinder", "set-master-cylinder"),
            Map.entry("measure hub-bearing", "check-hub-bearing"),
            Map.entry("measure roller-test", ""));

    private static final Set<String> STRIPS = Set.of(
            "shoe-set",
            "drum",
            "hardware-kit",
            "adjuster",
            "wheel-cylinder",
            "back-plate",
            "hub-seal",
            "hub-bearing",
            "hub-face",
            "pad-set",
            "disc",
            "calliper",
            "slide-pin-kit",
            "calliper-carrier",
            "parking-shoe-set");

    private static final Set<String> SHOES_OFF =
            Set.of("hardware-kit", "wheel-cylinder", "back-plate", "hub-seal", "hub-bearing", "adjuster");

    private static final Set<String> FRICTION = Set.of("shoe-set", "pad-set", "disc", "drum", "parking-shoe-set");

    /** Earlier and later step, whatever the place; by the order of the trade. */
    static final List<List<String>> ORDER = List.of(
            List.of("read-vehicle-data", "secure-and-lift"),
            List.of("service-mode", "remove-calliper"),
            List.of("secure-and-lift", "control-dust"),
            List.of("control-dust", "remove-drum"),
            List.of("control-dust", "remove-calliper"),
            List.of("remove-drum", "look-over-axle"),
            List.of("look-over-axle", "match-parts"),
            List.of("match-parts", "strip-shoes"),
            List.of("strip-shoes", "renew-wheel-cylinder"),
            List.of("renew-wheel-cylinder", "fit-shoes"),
            List.of("renew-wheel-cylinder", "refit-shoes"),
            List.of("renew-hub-seal", "fit-shoes"),
            List.of("clean-back-plate", "fit-shoes"),
            List.of("fit-hardware-kit", "fit-shoes"),
            List.of("fit-shoes", "fit-drum"),
            List.of("refit-shoes", "fit-drum"),
            List.of("degrease-drum", "fit-drum"),
            List.of("fit-drum", "bleed-circuit"),
            List.of("fit-drum", "flush-fluid"),
            List.of("fit-calliper", "bleed-circuit"),
            List.of("push-pistons-back", "fit-pads"),
            List.of("lower-fluid", "push-pistons-back"),
            List.of("clean-hub-face", "renew-disc"),
            List.of("renew-disc", "fit-pads"),
            List.of("fit-pads", "fit-calliper"),
            List.of("renew-flexible-hose", "bleed-circuit"),
            List.of("fabricate-brake-pipe", "bleed-circuit"),
            List.of("bleed-circuit", "set-shoes"),
            List.of("bleed-circuit", "cycle-modulator"),
            List.of("set-shoes", "set-parking-brake"),
            List.of("renew-parking-cable", "set-parking-brake"),
            List.of("fit-calliper", "calibrate-parking-brake"),
            List.of("set-parking-brake", "refit-wheels"),
            List.of("calibrate-parking-brake", "refit-wheels"),
            List.of("bleed-circuit", "refit-wheels"),
            List.of("refit-wheels", "pump-pedal"),
            List.of("pump-pedal", "leak-check"),
            List.of("leak-check", "slow-check"),
            List.of("pump-pedal", "slow-check"),
            List.of("slow-check", "bed-in"),
            List.of("slow-check", "final-roller-test"),
            List.of("bed-in", "final-roller-test"),
            List.of("bed-in", "repeat-roller-test"));

    private final Vehicle vehicle;

    ExpectedWork(Vehicle vehicle) {
        this.vehicle = vehicle;
    }

    /** The ids of the steps that these lines need. */
    Set<String> of(Set<LineKey> lines, Set<Place> notBedded, boolean barred) {
        TreeSet<String> steps = new TreeSet<>();
        boolean work = lines.stream().anyMatch(line -> !is(line, "measure roller-test"));
        boolean force = lines.stream().anyMatch(LineKey::isChangingForce);
        boolean test = lines.stream().anyMatch(line -> is(line, "measure roller-test"));
        if (work) {
            steps.addAll(List.of(
                    "read-vehicle-data-vehicle",
                    "secure-and-lift-vehicle",
                    "refit-wheels-vehicle",
                    "pump-pedal-vehicle"));
        }
        for (LineKey line : lines) {
            addOwn(line, lines, steps);
        }
        if (!barred) {
            if (force) {
                steps.add("slow-check-vehicle");
            }
            if (test) {
                steps.add(force ? "final-roller-test-vehicle" : "repeat-roller-test-vehicle");
                notBedded.forEach(axle -> steps.add("bed-in-" + axle.id()));
            }
            lines.stream()
                    .filter(line ->
                            line.isExchange() && FRICTION.contains(line.item().toString()))
                    .forEach(line ->
                            steps.add("bed-in-" + line.place().axlePlace().id()));
        }
        return steps;
    }

    private void addOwn(LineKey line, Set<LineKey> lines, Set<String> steps) {
        String kind = line.action() + " " + line.item();
        String place = line.place().id();
        String item = line.item().toString();
        String does = kind.equals("adjust parking-brake")
                ? (electric() ? "calibrate-parking-brake" : "set-parking-brake")
                : DOES.getOrDefault(kind, kind.replace(' ', '-'));
        if (!does.isEmpty()) {
            steps.add(does + "-" + place);
        }
        if (line.isExchange() && !item.equals("brake-fluid")) {
            steps.add("match-parts-" + line.place().axlePlace().id());
        }
        if (kind.equals("bleed brake-fluid") || kind.equals("renew brake-fluid") || kind.equals("renew hub-seal")) {
            steps.add("leak-check-vehicle");
        }
        if (kind.equals("renew pad-set")) {
            steps.add("lower-fluid-vehicle");
        }
        if (STRIPS.contains(item) && !kind.startsWith("adjust")) {
            addStrip(line, lines, steps);
        }
    }

    private void addStrip(LineKey line, Set<LineKey> lines, Set<String> steps) {
        Place at = line.place().axlePlace();
        Axle axle = vehicle.axle(at.axle());
        List<Place> wheels = line.place().isWheel() ? List.of(line.place().wheel()) : List.of(at.left(), at.right());
        String kind = line.action() + " " + line.item();
        steps.add("control-dust-vehicle");
        steps.add("look-over-axle-" + at.id());
        if (axle.parkingBrake() == ParkingLayout.ELECTRIC_ON_CALLIPER) {
            steps.add("service-mode-" + at.id());
        }
        if (kind.equals("renew hardware-kit")) {
            wheels.forEach(wheel -> steps.add("fit-hardware-kit-" + wheel.id()));
        }
        if (axle.isDisc()) {
            for (Place wheel : wheels) {
                steps.add("remove-calliper-" + wheel.id());
                steps.add("fit-calliper-" + wheel.id());
                if (line.item().toString().equals("pad-set")) {
                    steps.add("push-pistons-back-" + wheel.id());
                }
            }
            return;
        }
        steps.add("remove-drum-" + at.id());
        steps.add("fit-drum-" + at.left().id());
        steps.add("fit-drum-" + at.right().id());
        boolean newShoes = lines.stream()
                .anyMatch(other -> is(other, "renew shoe-set") && other.place().equals(at));
        boolean shoesOff = kind.equals("renew shoe-set")
                || (SHOES_OFF.contains(line.item().toString()) && !kind.startsWith("measure"));
        if (shoesOff) {
            for (Place wheel : wheels) {
                steps.add("strip-shoes-" + wheel.id());
                steps.add("clean-back-plate-" + wheel.id());
                steps.add((newShoes ? "fit-shoes-" : "refit-shoes-") + wheel.id());
            }
        }
    }

    private boolean electric() {
        return vehicle.axles().stream().anyMatch(axle -> axle.parkingBrake() == ParkingLayout.ELECTRIC_ON_CALLIPER);
    }

    private static boolean is(LineKey line, String kind) {
        return (line.action() + " " + line.item()).equals(kind);
    }
}
