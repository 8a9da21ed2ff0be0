package org.axlecause.fleet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.random.RandomGenerator;
import org.axlecause.facts.Axle;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.Drive;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.Vehicle;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/**
 * A kind of fault: where it can be, how often it is there, and the forms in which it comes.
 *
 * @param code what it is
 * @param at kind of place
 * @param on kind of wheel brake, or null
 * @param brakes layouts of wheel brake; none means all
 * @param parking layouts of parking brake; none means all
 * @param only what the vehicle must be
 * @param weights relative frequency: drums old and young, discs old and young; null where it can't be
 * @param bothSides share of cases in which both wheels have it
 * @param spots whether it sits at one of two spots of the wheel brake
 * @param recentWork word for the work that it may come from, or null
 * @param forms the forms
 */
record FaultKind(
        CauseCode code,
        At at,
        FaultForm.@Nullable On on,
        List<BrakeLayout> brakes,
        List<ParkingLayout> parking,
        List<Only> only,
        List<@Nullable Double> weights,
        double bothSides,
        boolean spots,
        @Nullable String recentWork,
        List<FaultForm> forms) {

    private static final List<String> WEIGHTS = List.of("drum-old", "drum-young", "disc-old", "disc-young");

    /** Kind of place that a fault is at. */
    enum At {
        WHEEL,
        AXLE,
        CIRCUIT,
        VEHICLE;

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** What a vehicle or axle must be to have a fault. */
    enum Only {
        ANTILOCK,
        REAR_AXLE,
        DRIVEN_AXLE,
        SPLIT_DIAGONAL,
        REGENERATIVE;

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    static FaultKind read(YamlNode node) {
        node.only(
                "code",
                "at",
                "on",
                "brakes",
                "parking",
                "only",
                "weights",
                "both-sides",
                "spots",
                "recent-work",
                "forms");
        YamlNode weights = node.member("weights");
        List<@Nullable Double> read = new ArrayList<>();
        for (String kind : WEIGHTS) {
            read.add(weights.has(kind) ? Double.valueOf(weights.decimal(kind).doubleValue()) : null);
        }
        return new FaultKind(
                node.code("code", CauseCode.class),
                node.code("at", At.class),
                node.optionalCode("on", FaultForm.On.class),
                node.codes("brakes", BrakeLayout.class),
                node.codes("parking", ParkingLayout.class),
                node.codes("only", Only.class),
                read,
                node.has("both-sides") ? node.decimal("both-sides").doubleValue() : 0,
                Boolean.TRUE.equals(node.optionalFlag("spots")),
                node.optionalText("recent-work"),
                node.items("forms").stream().map(FaultForm::read).toList());
    }

    /** How often it is behind a complaint about this axle; none where it can't be there. */
    double weight(Vehicle vehicle, Axle axle, double age, FaultTable table) {
        boolean fits = (on == null || (on == FaultForm.On.DRUM) == axle.isDrum())
                && (brakes.isEmpty() || brakes.contains(axle.brake()))
                && (parking.isEmpty() || parking.contains(axle.parkingBrake()))
                && only.stream().allMatch(needed -> holds(needed, vehicle, axle));
        if (!fits) {
            return 0;
        }
        boolean old = age >= (axle.isDrum() ? table.drumOldFrom() : table.discOldFrom());
        Double weight = weights.get((axle.isDrum() ? 0 : 2) + (old ? 0 : 1));
        return weight == null ? 0 : Math.max(weight, table.leastWeight());
    }

    private static boolean holds(Only needed, Vehicle vehicle, Axle axle) {
        return switch (needed) {
            case ANTILOCK -> Boolean.TRUE.equals(vehicle.antilock());
            case REAR_AXLE -> axle.number() > 1;
            case DRIVEN_AXLE ->
                vehicle.drive() == Drive.ALL || (vehicle.drive() == Drive.FRONT) == (axle.number() == 1);
            case SPLIT_DIAGONAL -> vehicle.circuitSplit() == CircuitSplit.DIAGONAL;
            case REGENERATIVE -> Boolean.TRUE.equals(vehicle.regenerative());
        };
    }

    /** Where it is, on a vehicle whose axle it was drawn for. */
    List<Place> places(Axle axle, RandomGenerator random) {
        return switch (at) {
            case VEHICLE -> List.of(Place.VEHICLE);
            case AXLE -> List.of(Place.ofAxle(axle.number()));
            case CIRCUIT -> List.of(Place.ofCircuit(random.nextBoolean() ? 1 : 2));
            case WHEEL -> {
                Side side = random.nextBoolean() ? Side.LEFT : Side.RIGHT;
                Place one = Place.ofWheel(axle.number(), side);
                yield random.nextDouble() < bothSides ? List.of(one.left(), one.right()) : List.of(one);
            }
        };
    }

    FaultForm form(RandomGenerator random) {
        double drawn = random.nextDouble();
        for (FaultForm form : forms) {
            drawn -= form.share();
            if (drawn < 0) {
                return form;
            }
        }
        return forms.get(forms.size() - 1);
    }
}
