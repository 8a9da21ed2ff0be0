package org.axlecause.fleet;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.axlecause.facts.Axle;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.VehicleLayout;

/**
 * What confirmed causes must make the scope and what that needs of work, told a second time and by hand: no rule and no
 * catalogue is read here. Common practice, as the tables of the trade hold it.
 */
final class ExpectedRepair {

    private static final Map<CauseCode, String> SCOPE = scope();
    private static final Map<String, String> BRINGS = brings();
    private static final Map<String, String> TAKES = takes();

    private final Vehicle vehicle;
    private final VehicleLayout layout;

    ExpectedRepair(Vehicle vehicle, VehicleLayout layout) {
        this.vehicle = vehicle;
        this.layout = layout;
    }

    /** Required lines of a cause, without what they bring. */
    List<LineKey> of(CauseCode cause, Place place) {
        List<LineKey> lines = new ArrayList<>();
        for (String mark : SCOPE.getOrDefault(cause, "").split(", ", -1)) {
            if (!mark.isEmpty()) {
                lines.addAll(lines(mark, place));
            }
        }
        return lines;
    }

    /** Lines with all that they bring. */
    Set<LineKey> closed(Iterable<LineKey> given) {
        TreeSet<LineKey> closed = new TreeSet<>();
        Deque<LineKey> open = new ArrayDeque<>();
        given.forEach(open::add);
        while (!open.isEmpty()) {
            LineKey line = open.pop();
            if (closed.add(line)) {
                for (String mark : BRINGS.getOrDefault(line.action() + " " + line.item(), "")
                        .split(", ", -1)) {
                    if (!mark.isEmpty()) {
                        open.addAll(lines(mark, line.place()));
                    }
                }
            }
        }
        return closed;
    }

    /** The lines that stand on their own once one has taken another along. */
    Set<LineKey> merged(Set<LineKey> lines) {
        TreeSet<LineKey> standing = new TreeSet<>(lines);
        for (LineKey line : lines) {
            List<String> taken = List.of(
                    TAKES.getOrDefault(line.action() + " " + line.item(), "").split(", ", -1));
            standing.removeIf(other -> !other.equals(line)
                    && taken.contains(other.action() + " " + other.item())
                    && line.place().covers(other.place()));
        }
        return standing;
    }

    private List<LineKey> lines(String mark, Place at) {
        String[] words = mark.split(" ", -1);
        if (words.length > 3 && !applies(words[3], at)) {
            return List.of();
        }
        List<LineKey> lines = new ArrayList<>();
        for (Place place : places(words[2], at)) {
            lines.add(new LineKey(code(ScopeAction.values(), words[0]), code(ScopeItem.values(), words[1]), place));
        }
        return lines;
    }

    private boolean applies(String on, Place at) {
        Axle axle = at.axle() == null ? null : vehicle.axle(at.axle());
        ParkingLayout parking = axle == null ? null : axle.parkingBrake();
        return switch (on) {
            case "drum" -> axle != null && axle.isDrum();
            case "disc" -> axle != null && axle.isDisc();
            case "hat" -> parking == ParkingLayout.SHOES_IN_DISC;
            case "no-hat" -> parking != ParkingLayout.SHOES_IN_DISC;
            case "cable-on-shoes" -> parking == ParkingLayout.CABLE_ON_SERVICE_SHOES;
            case "cable-or-motor-on-calliper" ->
                parking == ParkingLayout.CABLE_ON_CALLIPER || parking == ParkingLayout.ELECTRIC_ON_CALLIPER;
            case "antilock" -> !Boolean.FALSE.equals(vehicle.antilock());
            default -> throw new IllegalArgumentException(on);
        };
    }

    private List<Place> places(String reach, Place at) {
        return switch (reach) {
            case "wheel" -> List.of(at.wheel());
            case "axle" -> List.of(at.axlePlace());
            case "both" -> at.axle() == null ? List.of(at) : List.of(at.left(), at.right());
            case "circuit" -> List.of(layout.circuitOf(at));
            case "vehicle" -> List.of(Place.VEHICLE);
            case "shoe-axle" ->
                vehicle.axles().stream()
                        .filter(axle -> axle.parkingBrake() == ParkingLayout.CABLE_ON_SERVICE_SHOES)
                        .map(axle -> Place.ofAxle(axle.number()))
                        .toList();
            default -> throw new IllegalArgumentException(reach);
        };
    }

    private static <E extends Enum<E>> E code(E[] constants, String word) {
        for (E constant : constants) {
            if (constant.toString().equals(word)) {
                return constant;
            }
        }
        throw new IllegalArgumentException(word);
    }

    private static Map<CauseCode, String> scope() {
        Map<CauseCode, String> scope = new HashMap<>();
        String shoesOrPads = "renew shoe-set axle drum, renew pad-set axle disc";
        String soiled = shoesOrPads + ", clean drum axle drum, clean disc axle disc";
        String drums = "renew drum axle no-hat, renew disc axle hat";
        String testAgain = "measure roller-test vehicle";
        scope.put(CauseCode.WHEEL_CYLINDER_LEAKING, "renew wheel-cylinder wheel, renew shoe-set axle, clean drum axle");
        scope.put(CauseCode.WHEEL_CYLINDER_PISTON_STUCK, "renew wheel-cylinder wheel");
        scope.put(CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT, "renew wheel-cylinder wheel");
        scope.put(CauseCode.WHEEL_CYLINDER_WRONG_BORE, "renew wheel-cylinder both");
        scope.put(CauseCode.CALLIPER_PISTON_SEIZED, "renew calliper wheel, renew pad-set axle");
        scope.put(CauseCode.CALLIPER_BANK_SEIZED, "renew calliper wheel, renew pad-set axle");
        scope.put(CauseCode.CALLIPER_LEAKING, "renew calliper wheel, renew pad-set axle, clean disc axle");
        scope.put(CauseCode.CALLIPER_LEVER_NOT_RETURNING, "renew calliper wheel");
        scope.put(CauseCode.CALLIPER_LEVER_NOT_APPLYING, "renew calliper wheel");
        scope.put(CauseCode.SLIDE_PINS_SEIZED, "renew slide-pin-kit wheel, renew pad-set axle");
        scope.put(CauseCode.PADS_SEIZED_IN_CARRIER, "clean slide-pin-kit axle, renew pad-set axle");
        scope.put(CauseCode.BLEED_NIPPLE_WEEPING, "renew bleed-nipple wheel");
        scope.put(CauseCode.WHEEL_PORT_BLOCKED, "clean bleed-nipple wheel");
        scope.put(CauseCode.HOSE_RESTRICTED, "renew flexible-hose both");
        scope.put(CauseCode.HOSE_LEAKING, "renew flexible-hose both");
        scope.put(CauseCode.HOSE_BULGING, "renew flexible-hose both");
        scope.put(CauseCode.BRAKE_PIPE_CORRODED, "fabricate brake-pipe wheel");
        scope.put(CauseCode.BRAKE_PIPE_CRUSHED, "fabricate brake-pipe wheel");
        scope.put(CauseCode.PIPE_UNION_LEAKING, "fabricate brake-pipe wheel");
        scope.put(CauseCode.AIR_IN_CIRCUIT, "bleed brake-fluid circuit");
        scope.put(CauseCode.CIRCUIT_LOST, "bleed brake-fluid circuit");
        scope.put(CauseCode.FLUID_BOILING, "renew brake-fluid vehicle");
        scope.put(CauseCode.MINERAL_OIL_IN_FLUID, "renew hydraulic-system vehicle");
        scope.put(CauseCode.MODULATOR_VALVE_FAULTY, "renew antilock-modulator vehicle");
        scope.put(CauseCode.LOAD_SENSING_VALVE_SEIZED, "adjust load-sensing-valve vehicle");
        scope.put(CauseCode.CIRCUIT_VALVE_STUCK, "renew load-sensing-valve vehicle");
        scope.put(CauseCode.MASTER_CYLINDER_BYPASSING, "renew master-cylinder vehicle");
        scope.put(CauseCode.MASTER_CYLINDER_LEAKING, "renew master-cylinder vehicle");
        scope.put(CauseCode.MASTER_CYLINDER_PORT_COVERED, "adjust master-cylinder vehicle");
        scope.put(CauseCode.SERVO_WEAK, "renew servo vehicle");
        scope.put(CauseCode.SERVO_STICKING_ON, "renew servo vehicle");
        scope.put(CauseCode.PEDAL_LINKAGE_BINDING, "free pedal-linkage vehicle");
        scope.put(CauseCode.LINING_SOAKED_EARLIER, soiled);
        scope.put(CauseCode.LINING_SOILED_IN_WORK, soiled);
        scope.put(CauseCode.DRUM_SOILED, soiled);
        scope.put(CauseCode.HUB_SEAL_LEAKING, "renew hub-seal wheel, " + soiled);
        scope.put(CauseCode.LINING_GLAZED, "clean shoe-set axle drum, renew pad-set axle disc");
        scope.put(CauseCode.LINING_WORN_OUT, shoesOrPads);
        scope.put(CauseCode.LINING_DETACHED, shoesOrPads);
        scope.put(CauseCode.LININGS_UNLIKE, shoesOrPads);
        scope.put(CauseCode.LINING_NOT_BEDDED, testAgain);
        scope.put(CauseCode.RUST_FILM, testAgain);
        scope.put(CauseCode.TYRES_UNEQUAL, testAgain);
        scope.put(CauseCode.GRIP_LIMIT, testAgain);
        scope.put(CauseCode.TRANSMISSION_DRAG, testAgain);
        scope.put(CauseCode.REGENERATIVE_BLENDING, testAgain);
        scope.put(CauseCode.LONG_DISUSE, testAgain);
        scope.put(CauseCode.TEST_NOT_VALID, testAgain);
        scope.put(CauseCode.SHOES_MISPLACED, "clean hardware-kit axle drum, clean pad-set axle disc");
        scope.put(CauseCode.DRUM_OVAL, drums);
        scope.put(CauseCode.DRUM_ECCENTRIC, drums);
        scope.put(CauseCode.DRUM_OVERSIZE, drums);
        scope.put(CauseCode.DRUM_SCORED, drums);
        scope.put(CauseCode.DRUM_CRACKED, drums);
        scope.put(CauseCode.DISC_CRACKED, "renew disc axle");
        scope.put(CauseCode.DISC_CORRODED, "renew disc axle");
        scope.put(CauseCode.DISC_RUN_OUT, "renew disc axle");
        scope.put(CauseCode.DISC_THICKNESS_VARYING, "renew disc axle");
        scope.put(CauseCode.SEAT_NOT_CLEAN, "clean hub-face wheel");
        scope.put(CauseCode.DEBRIS_IN_DRUM, "clean drum axle");
        scope.put(CauseCode.ADJUSTER_NOT_TAKEN_UP, "free adjuster wheel, renew hardware-kit axle");
        scope.put(CauseCode.SHOES_OVER_ADJUSTED, "adjust shoe-set axle");
        scope.put(CauseCode.RETURN_SPRING_BROKEN, "renew hardware-kit axle");
        scope.put(CauseCode.HOLD_DOWN_BROKEN, "renew hardware-kit axle");
        scope.put(CauseCode.BACK_PLATE_LEDGES_WORN, "clean hardware-kit axle, renew hardware-kit axle");
        scope.put(CauseCode.BACK_PLATE_LOOSE, "renew back-plate wheel, renew hardware-kit axle");
        scope.put(CauseCode.ADJUSTER_ON_WRONG_SIDE, "renew adjuster both");
        scope.put(CauseCode.PARKING_CABLE_SEIZED, "renew parking-cable wheel");
        scope.put(CauseCode.PARKING_CABLE_BROKEN, "renew parking-cable wheel");
        scope.put(CauseCode.PARKING_CABLE_STRETCHED, "adjust parking-brake vehicle");
        scope.put(CauseCode.PARKING_CABLE_OVER_TIGHT, "adjust parking-brake vehicle, adjust shoe-set shoe-axle");
        scope.put(CauseCode.PARKING_EQUALISER_SEIZED, "free parking-equaliser vehicle");
        scope.put(CauseCode.SHOE_LEVER_SEIZED, "renew hardware-kit axle");
        scope.put(CauseCode.PARKING_SHOES_WORN, "renew parking-shoe-set axle");
        scope.put(CauseCode.ELECTRIC_PARKING_ACTUATOR_WEAK, "renew parking-actuator wheel");
        scope.put(CauseCode.HUB_BEARING_WORN, "renew hub-bearing wheel");
        scope.put(CauseCode.ANTILOCK_SENSOR_FAULTY, "renew antilock-sensor wheel");
        return scope;
    }

    private static Map<String, String> brings() {
        Map<String, String> brings = new HashMap<>();
        String test = "measure roller-test vehicle";
        String bleed = test + ", bleed brake-fluid circuit";
        String shoes = test + ", adjust shoe-set axle drum";
        String setParking = test + ", adjust parking-brake vehicle";
        String calliperParking = ", adjust parking-brake vehicle cable-or-motor-on-calliper";
        brings.put("renew wheel-cylinder", bleed + ", adjust shoe-set axle drum");
        brings.put("renew shoe-set", shoes + ", measure drum axle");
        brings.put("clean shoe-set", shoes);
        brings.put("renew hardware-kit", shoes);
        brings.put("clean hardware-kit", shoes);
        brings.put("renew adjuster", shoes);
        brings.put("free adjuster", shoes);
        brings.put("renew back-plate", shoes);
        brings.put("renew drum", shoes);
        brings.put("adjust shoe-set", test + ", adjust parking-brake vehicle cable-on-shoes");
        brings.put("renew calliper", bleed + calliperParking);
        brings.put("renew pad-set", test + ", measure disc axle" + calliperParking);
        brings.put("renew disc", test + ", renew pad-set axle, clean hub-face axle" + calliperParking);
        brings.put("renew slide-pin-kit", test + ", renew pad-set axle");
        brings.put("clean slide-pin-kit", test + ", renew pad-set axle");
        brings.put("renew hub-seal", test + ", measure hub-bearing wheel");
        brings.put("renew hub-bearing", test + ", renew hub-seal wheel");
        brings.put("renew parking-shoe-set", setParking + ", measure drum axle");
        for (String line : List.of("renew parking-cable", "free parking-equaliser", "renew parking-actuator")) {
            brings.put(line, setParking);
        }
        for (String line : List.of(
                "renew flexible-hose",
                "fabricate brake-pipe",
                "renew bleed-nipple",
                "clean bleed-nipple",
                "renew master-cylinder",
                "renew load-sensing-valve")) {
            brings.put(line, bleed);
        }
        brings.put("renew antilock-modulator", bleed + ", bleed antilock-modulator vehicle");
        brings.put(
                "renew hydraulic-system",
                bleed + ", renew brake-fluid vehicle, bleed antilock-modulator vehicle antilock");
        for (String line : List.of(
                "adjust parking-brake",
                "bleed brake-fluid",
                "renew brake-fluid",
                "bleed antilock-modulator",
                "adjust load-sensing-valve",
                "adjust master-cylinder",
                "renew servo",
                "free pedal-linkage",
                "clean drum",
                "clean disc",
                "clean hub-face",
                "clean pad-set",
                "renew antilock-sensor")) {
            brings.put(line, test);
        }
        return brings;
    }

    private static Map<String, String> takes() {
        return Map.ofEntries(
                Map.entry("renew shoe-set", "clean shoe-set"),
                Map.entry("renew pad-set", "clean pad-set"),
                Map.entry("renew wheel-cylinder", "renew bleed-nipple, clean bleed-nipple"),
                Map.entry("renew calliper", "renew bleed-nipple, clean bleed-nipple, renew parking-actuator"),
                Map.entry("renew bleed-nipple", "clean bleed-nipple"),
                Map.entry("renew drum", "clean drum, machine drum, measure drum"),
                Map.entry("renew disc", "clean disc, measure disc"),
                Map.entry("renew brake-fluid", "bleed brake-fluid"),
                Map.entry("clean hub-face", "clean hub-face"),
                Map.entry("renew hub-bearing", "measure hub-bearing, renew hub-seal"),
                Map.entry("renew adjuster", "free adjuster"),
                Map.entry("renew master-cylinder", "adjust master-cylinder"),
                Map.entry("renew load-sensing-valve", "adjust load-sensing-valve"),
                Map.entry("renew slide-pin-kit", "free slide-pin-kit, clean slide-pin-kit"));
    }
}
