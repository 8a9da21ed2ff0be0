package org.axlecause.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.rules.Workshop.FRONT_LEFT;
import static org.axlecause.rules.Workshop.REAR;
import static org.axlecause.rules.Workshop.REAR_LEFT;
import static org.axlecause.rules.Workshop.REAR_RIGHT;
import static org.axlecause.rules.Workshop.clause;
import static org.axlecause.rules.Workshop.confirmed;
import static org.axlecause.rules.Workshop.discFront;
import static org.axlecause.rules.Workshop.discWithParking;
import static org.axlecause.rules.Workshop.drumRear;
import static org.axlecause.rules.Workshop.found;
import static org.axlecause.rules.Workshop.measured;
import static org.axlecause.rules.Workshop.obstacle;
import static org.axlecause.rules.Workshop.ruledOut;
import static org.axlecause.rules.Workshop.suspected;
import static org.axlecause.rules.Workshop.van;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Extent;
import org.axlecause.facts.FailedPart;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.PartState;
import org.axlecause.facts.Place;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.SoiledLining;
import org.axlecause.inference.RuleBench;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every scope rule both ways: the facts that make its line, and the nearest facts that do not. */
class ScopeRulesTest {

    private static final RuleBench RULES = RuleBench.forFolder("scope");

    private static final String CYLINDER = "renew wheel-cylinder at axle 2 left (required)";
    private static final String CALLIPER = "renew calliper at axle 1 left (required)";
    private static final String HOSE = "renew flexible-hose at axle 2 left (required)";
    private static final String PIPE = "fabricate brake-pipe at axle 2 left (required)";
    private static final String SHOES = "renew shoe-set at axle 2 (required)";
    private static final String PADS = "renew pad-set at axle 1 (required)";
    private static final String DRUMS = "renew drum at axle 2 (required)";
    private static final String DISCS = "renew disc at axle 1 (required)";
    private static final String KIT = "renew hardware-kit at axle 2 (required)";
    private static final String KIT_ADVISED = "renew hardware-kit at axle 2 (recommended)";
    private static final String ADJUSTER = "renew adjuster at axle 2 left (required)";
    private static final String CABLE = "renew parking-cable at axle 2 left (required)";
    private static final String PINS = "renew slide-pin-kit at axle 1 left (required)";
    private static final String SEAL = "renew hub-seal at axle 2 left (required)";
    private static final String BEARING = "renew hub-bearing at axle 2 left (required)";

    /** One rule, the line it makes, facts that make it and facts that just do not. */
    record Row(String rule, String line, List<Object> given, List<Object> justNot) {
        @Override
        public String toString() {
            return rule + " " + line;
        }
    }

    static Stream<Row> causes() {
        return Stream.of(
                cause("SCO-101", CauseCode.WHEEL_CYLINDER_LEAKING, REAR_LEFT, CYLINDER),
                cause("SCO-102", CauseCode.WHEEL_CYLINDER_PISTON_STUCK, REAR_LEFT, CYLINDER),
                cause("SCO-103", CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT, REAR_LEFT, CYLINDER),
                cause("SCO-111", CauseCode.CALLIPER_PISTON_SEIZED, FRONT_LEFT, CALLIPER),
                cause("SCO-115", CauseCode.HOSE_RESTRICTED, REAR_LEFT, HOSE),
                cause("SCO-117", CauseCode.BRAKE_PIPE_CORRODED, REAR_LEFT, PIPE),
                cause("SCO-131", CauseCode.SLIDE_PINS_SEIZED, FRONT_LEFT, PINS),
                cause("SCO-133", CauseCode.PARKING_CABLE_SEIZED, REAR_LEFT, CABLE),
                cause("SCO-136", CauseCode.HUB_SEAL_LEAKING, REAR_LEFT, SEAL),
                cause("SCO-151", CauseCode.WHEEL_CYLINDER_LEAKING, REAR_LEFT, SHOES),
                cause("SCO-152", CauseCode.HUB_SEAL_LEAKING, REAR_LEFT, SHOES),
                cause("SCO-153", CauseCode.LINING_SOAKED_EARLIER, REAR_LEFT, SHOES),
                cause("SCO-171", CauseCode.LINING_WORN_OUT, REAR, SHOES),
                cause("SCO-172", CauseCode.LINING_WORN_OUT, FRONT_LEFT, PADS),
                cause("SCO-177", CauseCode.LINING_GLAZED, REAR, "clean shoe-set at axle 2 (required)"),
                cause("SCO-178", CauseCode.LINING_GLAZED, REAR, "renew shoe-set at axle 2 (recommended)"),
                cause("SCO-179", CauseCode.LINING_GLAZED, FRONT_LEFT, PADS),
                cause("SCO-181", CauseCode.DRUM_OVAL, REAR_RIGHT, DRUMS),
                cause("SCO-182", CauseCode.DRUM_ECCENTRIC, REAR_RIGHT, DRUMS),
                cause("SCO-222", CauseCode.ADJUSTER_NOT_TAKEN_UP, REAR_LEFT, "free adjuster at axle 2 left (required)"),
                cause("SCO-223", CauseCode.ADJUSTER_NOT_TAKEN_UP, REAR_LEFT, KIT),
                cause(
                        "SCO-224",
                        CauseCode.AIR_IN_CIRCUIT,
                        Place.ofCircuit(1),
                        "bleed brake-fluid at circuit 1 (required)"),
                cause("SCO-107", CauseCode.WHEEL_CYLINDER_WRONG_BORE, REAR, CYLINDER),
                cause(
                        "SCO-108",
                        CauseCode.WHEEL_CYLINDER_WRONG_BORE,
                        REAR,
                        "renew wheel-cylinder at axle 2 right (required)"),
                cause("SCO-113", CauseCode.CALLIPER_LEAKING, FRONT_LEFT, CALLIPER),
                cause("SCO-113", CauseCode.CALLIPER_BANK_SEIZED, FRONT_LEFT, CALLIPER),
                cause("SCO-130", CauseCode.CALLIPER_LEVER_NOT_RETURNING, FRONT_LEFT, CALLIPER),
                cause("SCO-130", CauseCode.CALLIPER_LEVER_NOT_APPLYING, FRONT_LEFT, CALLIPER),
                cause(
                        "SCO-114",
                        CauseCode.BLEED_NIPPLE_WEEPING,
                        REAR_LEFT,
                        "renew bleed-nipple at axle 2 left (required)"),
                cause("SCO-123", CauseCode.HOSE_LEAKING, REAR_LEFT, HOSE),
                cause("SCO-123", CauseCode.HOSE_BULGING, REAR_LEFT, HOSE),
                cause("SCO-124", CauseCode.BRAKE_PIPE_CRUSHED, REAR_LEFT, PIPE),
                cause("SCO-124", CauseCode.PIPE_UNION_LEAKING, REAR_LEFT, PIPE),
                cause(
                        "SCO-125",
                        CauseCode.WHEEL_PORT_BLOCKED,
                        REAR_LEFT,
                        "clean bleed-nipple at axle 2 left (required)"),
                cause("SCO-301", CauseCode.WHEEL_PORT_BLOCKED, REAR_LEFT, "bleed brake-fluid at circuit 2 (required)"),
                cause(
                        "SCO-143",
                        CauseCode.PADS_SEIZED_IN_CARRIER,
                        FRONT_LEFT,
                        "clean slide-pin-kit at axle 1 (required)"),
                cause("SCO-312", CauseCode.PADS_SEIZED_IN_CARRIER, FRONT_LEFT, PADS),
                cause("SCO-144", CauseCode.PARKING_CABLE_BROKEN, REAR_LEFT, CABLE),
                cause(
                        "SCO-145",
                        CauseCode.PARKING_CABLE_STRETCHED,
                        REAR_LEFT,
                        "adjust parking-brake at vehicle (required)"),
                cause(
                        "SCO-146",
                        CauseCode.PARKING_EQUALISER_SEIZED,
                        REAR,
                        "free parking-equaliser at vehicle (required)"),
                cause("SCO-147", CauseCode.SHOE_LEVER_SEIZED, REAR_LEFT, KIT),
                cause("SCO-148", CauseCode.PARKING_SHOES_WORN, REAR, "renew parking-shoe-set at axle 2 (required)"),
                cause(
                        "SCO-149",
                        CauseCode.ELECTRIC_PARKING_ACTUATOR_WEAK,
                        REAR_LEFT,
                        "renew parking-actuator at axle 2 left (required)"),
                cause("SCO-150", CauseCode.HUB_BEARING_WORN, REAR_LEFT, BEARING),
                cause("SCO-156", CauseCode.CALLIPER_LEAKING, FRONT_LEFT, "clean disc at axle 1 (required)"),
                cause("SCO-157", CauseCode.LINING_SOILED_IN_WORK, REAR_LEFT, SHOES),
                cause("SCO-157", CauseCode.DRUM_SOILED, REAR_LEFT, "clean drum at axle 2 (required)"),
                cause("SCO-171", CauseCode.LINING_DETACHED, REAR_LEFT, SHOES),
                cause("SCO-171", CauseCode.LININGS_UNLIKE, REAR, SHOES),
                cause("SCO-172", CauseCode.LININGS_UNLIKE, FRONT_LEFT, PADS),
                cause("SCO-190", CauseCode.DRUM_OVERSIZE, REAR_LEFT, DRUMS),
                cause("SCO-180", CauseCode.DRUM_SCORED, REAR_LEFT, DRUMS),
                cause("SCO-190", CauseCode.DRUM_CRACKED, REAR_LEFT, DRUMS),
                cause("SCO-197", CauseCode.DISC_CRACKED, FRONT_LEFT, DISCS),
                cause("SCO-197", CauseCode.DISC_CORRODED, FRONT_LEFT, DISCS),
                cause("SCO-197", CauseCode.DISC_THICKNESS_VARYING, FRONT_LEFT, DISCS),
                cause("SCO-197", CauseCode.DISC_RUN_OUT, FRONT_LEFT, DISCS),
                cause("SCO-198", CauseCode.SEAT_NOT_CLEAN, FRONT_LEFT, "clean hub-face at axle 1 left (required)"),
                cause("SCO-199", CauseCode.DEBRIS_IN_DRUM, REAR_LEFT, "clean drum at axle 2 (required)"),
                cause("SCO-246", CauseCode.RETURN_SPRING_BROKEN, REAR_LEFT, KIT),
                cause("SCO-246", CauseCode.HOLD_DOWN_BROKEN, REAR_LEFT, KIT),
                cause(
                        "SCO-247",
                        CauseCode.BACK_PLATE_LEDGES_WORN,
                        REAR_LEFT,
                        "clean hardware-kit at axle 2 (required)"),
                cause("SCO-247", CauseCode.SHOES_MISPLACED, REAR_LEFT, "clean hardware-kit at axle 2 (required)"),
                cause("SCO-248", CauseCode.SHOES_MISPLACED, FRONT_LEFT, "clean pad-set at axle 1 (required)"),
                cause("SCO-249", CauseCode.BACK_PLATE_LOOSE, REAR_LEFT, "renew back-plate at axle 2 left (required)"),
                cause("SCO-250", CauseCode.ADJUSTER_ON_WRONG_SIDE, REAR, ADJUSTER),
                cause("SCO-251", CauseCode.ADJUSTER_ON_WRONG_SIDE, REAR, "renew adjuster at axle 2 right (required)"),
                cause("SCO-252", CauseCode.SHOES_OVER_ADJUSTED, REAR_LEFT, "adjust shoe-set at axle 2 (required)"),
                cause("SCO-253", CauseCode.PARKING_CABLE_OVER_TIGHT, REAR_LEFT, "adjust shoe-set at axle 2 (required)"),
                cause(
                        "SCO-145",
                        CauseCode.PARKING_CABLE_OVER_TIGHT,
                        REAR_LEFT,
                        "adjust parking-brake at vehicle (required)"),
                unit("SCO-261", CauseCode.FLUID_BOILING, "renew brake-fluid at vehicle (required)"),
                unit("SCO-262", CauseCode.MINERAL_OIL_IN_FLUID, "renew hydraulic-system at vehicle (required)"),
                unit("SCO-264", CauseCode.MINERAL_OIL_IN_FLUID, "renew brake-fluid at vehicle (required)"),
                unit("SCO-271", CauseCode.MASTER_CYLINDER_BYPASSING, "renew master-cylinder at vehicle (required)"),
                unit("SCO-271", CauseCode.MASTER_CYLINDER_LEAKING, "renew master-cylinder at vehicle (required)"),
                unit("SCO-273", CauseCode.MASTER_CYLINDER_PORT_COVERED, "adjust master-cylinder at vehicle (required)"),
                unit("SCO-274", CauseCode.SERVO_WEAK, "renew servo at vehicle (required)"),
                unit("SCO-274", CauseCode.SERVO_STICKING_ON, "renew servo at vehicle (required)"),
                unit("SCO-276", CauseCode.LOAD_SENSING_VALVE_SEIZED, "adjust load-sensing-valve at vehicle (required)"),
                unit("SCO-277", CauseCode.CIRCUIT_VALVE_STUCK, "renew load-sensing-valve at vehicle (required)"),
                unit("SCO-280", CauseCode.MODULATOR_VALVE_FAULTY, "renew antilock-modulator at vehicle (required)"),
                unit("SCO-281", CauseCode.MODULATOR_VALVE_FAULTY, "bleed antilock-modulator at vehicle (required)"),
                cause(
                        "SCO-282",
                        CauseCode.CIRCUIT_LOST,
                        Place.ofCircuit(2),
                        "bleed brake-fluid at circuit 2 (required)"),
                unit("SCO-283", CauseCode.PEDAL_LINKAGE_BINDING, "free pedal-linkage at vehicle (required)"),
                cause(
                        "SCO-284",
                        CauseCode.ANTILOCK_SENSOR_FAULTY,
                        REAR_LEFT,
                        "renew antilock-sensor at axle 2 left (required)"),
                outside(CauseCode.TYRES_UNEQUAL),
                outside(CauseCode.GRIP_LIMIT),
                outside(CauseCode.TRANSMISSION_DRAG),
                outside(CauseCode.REGENERATIVE_BLENDING),
                outside(CauseCode.LONG_DISUSE),
                outside(CauseCode.RUST_FILM),
                outside(CauseCode.LINING_NOT_BEDDED),
                new Row(
                        "SCO-225",
                        "measure roller-test at vehicle (required)",
                        List.of(suspected(CauseCode.TEST_NOT_VALID, REAR)),
                        List.of(ruledOut(CauseCode.TEST_NOT_VALID, REAR))));
    }

    static Stream<Row> states() {
        return Stream.of(
                state("SCO-104", CYLINDER, REAR_LEFT, Component.WHEEL_CYLINDER, Condition.LEAKING, Condition.DAMP),
                state("SCO-104", CYLINDER, REAR_LEFT, Component.WHEEL_CYLINDER, Condition.TIGHT, Condition.SOUND),
                state("SCO-104", CYLINDER, REAR_LEFT, Component.WHEEL_CYLINDER, Condition.PITTED, Condition.SOUND),
                state("SCO-104", CYLINDER, REAR_LEFT, Component.WHEEL_CYLINDER, Condition.SEIZED, Condition.SOUND),
                state("SCO-105", CYLINDER, REAR_LEFT, Component.WHEEL_CYLINDER, Condition.SPLIT, Condition.DAMP),
                state("SCO-106", CYLINDER, REAR_LEFT, Component.WHEEL_CYLINDER, Condition.WRONG_PART, Condition.SOUND),
                state("SCO-112", CALLIPER, FRONT_LEFT, Component.CALLIPER, Condition.LEAKING, Condition.DAMP),
                state("SCO-116", HOSE, REAR_LEFT, Component.FLEXIBLE_HOSE, Condition.BULGING, Condition.SOUND),
                state("SCO-118", PIPE, REAR_LEFT, Component.BRAKE_PIPE, Condition.LEAKING, Condition.SOUND),
                state("SCO-119", PIPE, REAR_LEFT, Component.PIPE_UNION, Condition.TURNS_WITH_PIPE, Condition.SOUND),
                state("SCO-120", CYLINDER, REAR_LEFT, Component.BLEED_NIPPLE, Condition.SHEARED, Condition.BLOCKED),
                state("SCO-121", CALLIPER, FRONT_LEFT, Component.BLEED_NIPPLE, Condition.SEIZED, Condition.BLOCKED),
                state(
                        "SCO-122",
                        "renew bleed-nipple at axle 2 left (required)",
                        REAR_LEFT,
                        Component.BLEED_NIPPLE,
                        Condition.BLOCKED,
                        Condition.SOUND),
                state("SCO-132", PINS, FRONT_LEFT, Component.SLIDE_PIN, Condition.TIGHT, Condition.SOUND),
                state("SCO-134", CABLE, REAR_LEFT, Component.PARKING_CABLE, Condition.FRAYED, Condition.SOUND),
                state("SCO-135", ADJUSTER, REAR_LEFT, Component.ADJUSTER, Condition.SEIZED, Condition.NOT_TAKEN_UP),
                state("SCO-137", SEAL, REAR_LEFT, Component.HUB_SEAL, Condition.LEAKING, Condition.DAMP),
                state("SCO-138", BEARING, REAR_LEFT, Component.HUB_BEARING, Condition.LOOSE, Condition.SOUND),
                state(
                        "SCO-140",
                        "renew back-plate at axle 2 left (required)",
                        REAR_LEFT,
                        Component.BACK_PLATE,
                        Condition.CORRODED,
                        Condition.SOUND),
                state(
                        "SCO-141",
                        "free parking-equaliser at vehicle (required)",
                        REAR_LEFT,
                        Component.PARKING_EQUALISER,
                        Condition.SEIZED,
                        Condition.SOUND),
                state(
                        "SCO-142",
                        "renew parking-actuator at axle 2 left (required)",
                        REAR_LEFT,
                        Component.ELECTRIC_PARKING_ACTUATOR,
                        Condition.SEIZED,
                        Condition.SOUND),
                state("SCO-154", SHOES, REAR_LEFT, Component.SHOE_LINING, Condition.SOAKED, Condition.SOUND),
                state("SCO-155", PADS, FRONT_LEFT, Component.PAD, Condition.CONTAMINATED, Condition.SOUND),
                state("SCO-173", SHOES, REAR_LEFT, Component.SHOE_LINING, Condition.DETACHED, Condition.SOUND),
                state("SCO-174", PADS, FRONT_LEFT, Component.PAD, Condition.WORN, Condition.SOUND),
                state("SCO-183", DRUMS, REAR_LEFT, Component.DRUM, Condition.CRACKED, Condition.SOUND),
                state("SCO-191", DISCS, FRONT_LEFT, Component.DISC, Condition.UNDERSIZE, Condition.SOUND),
                vehicleState(
                        "SCO-263",
                        "renew hydraulic-system at vehicle (required)",
                        Component.BRAKE_FLUID,
                        Condition.WRONG_PART),
                vehicleState(
                        "SCO-265",
                        "renew brake-fluid at vehicle (required)",
                        Component.BRAKE_FLUID,
                        Condition.CONTAMINATED),
                vehicleState(
                        "SCO-272",
                        "renew master-cylinder at vehicle (required)",
                        Component.MASTER_CYLINDER,
                        Condition.LEAKING),
                vehicleState("SCO-275", "renew servo at vehicle (required)", Component.SERVO, Condition.BROKEN),
                vehicleState(
                        "SCO-278",
                        "renew load-sensing-valve at vehicle (required)",
                        Component.LOAD_SENSING_VALVE,
                        Condition.LEAKING),
                vehicleState(
                        "SCO-279",
                        "adjust load-sensing-valve at vehicle (required)",
                        Component.LOAD_SENSING_VALVE,
                        Condition.SEIZED),
                state("SCO-241", KIT, REAR_LEFT, Component.RETURN_SPRING, Condition.STRETCHED, Condition.SOUND),
                state("SCO-242", KIT, REAR_LEFT, Component.HOLD_DOWN, Condition.BROKEN, Condition.SOUND),
                new Row(
                        "SCO-234",
                        "renew calliper-carrier at axle 1 left (recommended)",
                        List.of(found(Component.PAD, Condition.SEIZED, FRONT_LEFT, Extent.SEVERE)),
                        List.of(found(Component.PAD, Condition.SEIZED, FRONT_LEFT, Extent.MODERATE))),
                new Row(
                        "SCO-187",
                        DRUMS,
                        List.of(found(Component.DRUM, Condition.SCORED, REAR_LEFT, Extent.SEVERE)),
                        List.of(found(Component.DRUM, Condition.SCORED, REAR_LEFT, Extent.LIGHT))),
                new Row(
                        "SCO-188",
                        "machine drum at axle 2 (recommended)",
                        List.of(found(Component.DRUM, Condition.SCORED, REAR_LEFT, Extent.LIGHT)),
                        List.of(found(Component.DRUM, Condition.SCORED, REAR_LEFT, Extent.SEVERE))),
                new Row(
                        "SCO-195",
                        DISCS,
                        List.of(found(Component.DISC, Condition.CORRODED, FRONT_LEFT, Extent.SEVERE)),
                        List.of(found(Component.DISC, Condition.CORRODED, FRONT_LEFT, Extent.MODERATE))),
                new Row(
                        "SCO-196",
                        "renew disc at axle 1 (recommended)",
                        List.of(found(Component.DISC, Condition.CORRODED, FRONT_LEFT, Extent.MODERATE)),
                        List.of(found(Component.DISC, Condition.CORRODED, FRONT_LEFT, Extent.SEVERE))));
    }

    static Stream<Row> measurements() {
        return Stream.of(
                measuredRow(
                        "SCO-139",
                        BEARING,
                        Component.HUB_BEARING,
                        REAR_LEFT,
                        MeasuredQuantity.HUB_PLAY,
                        "0.00011",
                        "0.00010",
                        clause(ClauseCode.HUB_PLAY, "0.00010")),
                measuredRow(
                        "SCO-266",
                        "renew brake-fluid at vehicle (required)",
                        Component.BRAKE_FLUID,
                        Place.VEHICLE,
                        MeasuredQuantity.FLUID_WATER_CONTENT,
                        "0.05",
                        "0.049",
                        clause(ClauseCode.FLUID_WATER_CONTENT_URGENT, "0.05")),
                fluid("SCO-267", MeasuredQuantity.FLUID_WATER_CONTENT, "0.03", "0.029", ClauseCode.FLUID_WATER_CONTENT),
                fluid("SCO-268", MeasuredQuantity.FLUID_BOILING_POINT, "179", "180", ClauseCode.FLUID_BOILING_POINT),
                measuredRow(
                        "SCO-175",
                        "renew shoe-set at axle 2 (recommended)",
                        Component.SHOE_LINING,
                        REAR_LEFT,
                        MeasuredQuantity.LINING_THICKNESS,
                        "0.0020",
                        "0.0021",
                        clause(ClauseCode.LINING_RENEWAL_THICKNESS, "0.0020", Necessity.RECOMMENDED)),
                measuredRow(
                        "SCO-176",
                        "renew pad-set at axle 1 (recommended)",
                        Component.PAD,
                        FRONT_LEFT,
                        MeasuredQuantity.PAD_THICKNESS,
                        "0.0030",
                        "0.0031",
                        clause(ClauseCode.PAD_RENEWAL_THICKNESS, "0.0030", Necessity.RECOMMENDED)),
                new Row(
                        "SCO-184",
                        DRUMS,
                        List.of(measured(
                                Component.DRUM, REAR_LEFT, MeasuredQuantity.DRUM_DIAMETER, "0.2043", "0.2042")),
                        List.of(measured(
                                Component.DRUM, REAR_LEFT, MeasuredQuantity.DRUM_DIAMETER, "0.2042", "0.2042"))),
                measuredRow(
                        "SCO-185",
                        DRUMS,
                        Component.DRUM,
                        REAR_LEFT,
                        MeasuredQuantity.DRUM_OVALITY,
                        "0.00016",
                        "0.00015",
                        clause(ClauseCode.DRUM_OVALITY, "0.00015")),
                measuredRow(
                        "SCO-186",
                        DRUMS,
                        Component.DRUM,
                        REAR_LEFT,
                        MeasuredQuantity.DRUM_ECCENTRICITY,
                        "0.00011",
                        "0.00010",
                        clause(ClauseCode.DRUM_ECCENTRICITY, "0.00010")),
                new Row(
                        "SCO-192",
                        DISCS,
                        List.of(measured(
                                Component.DISC, FRONT_LEFT, MeasuredQuantity.DISC_THICKNESS, "0.0199", "0.0200")),
                        List.of(measured(
                                Component.DISC, FRONT_LEFT, MeasuredQuantity.DISC_THICKNESS, "0.0200", "0.0200"))),
                measuredRow(
                        "SCO-193",
                        DISCS,
                        Component.DISC,
                        FRONT_LEFT,
                        MeasuredQuantity.DISC_THICKNESS_VARIATION,
                        "0.000026",
                        "0.000025",
                        clause(ClauseCode.DISC_THICKNESS_VARIATION, "0.000025")),
                measuredRow(
                        "SCO-194",
                        "clean hub-face at axle 1 left (required)",
                        Component.DISC,
                        FRONT_LEFT,
                        MeasuredQuantity.DISC_RUN_OUT,
                        "0.00007",
                        "0.00006",
                        clause(ClauseCode.DISC_RUN_OUT, "0.00006")));
    }

    static Stream<Row> obstacles() {
        return Stream.of(
                met("SCO-401", PIPE, Component.PIPE_UNION, Condition.TURNS_WITH_PIPE, REAR_LEFT),
                met("SCO-401", PIPE, Component.PIPE_UNION, Condition.SEIZED, REAR_LEFT),
                met("SCO-402", PIPE, Component.PIPE_UNION, Condition.STRIPPED, REAR_LEFT),
                met(
                        "SCO-403",
                        "renew pipe-nut at axle 2 left (required)",
                        Component.PIPE_UNION,
                        Condition.ROUNDED,
                        REAR_LEFT),
                met("SCO-404", CYLINDER, Component.BLEED_NIPPLE, Condition.SHEARED, REAR_LEFT),
                met("SCO-405", CALLIPER, Component.BLEED_NIPPLE, Condition.SEIZED, FRONT_LEFT),
                met(
                        "SCO-406",
                        "renew bleed-nipple at axle 2 left (required)",
                        Component.BLEED_NIPPLE,
                        Condition.ROUNDED,
                        REAR_LEFT),
                met("SCO-407", CYLINDER, Component.WHEEL_CYLINDER, Condition.STRIPPED, REAR_LEFT),
                met("SCO-408", CALLIPER, Component.CALLIPER, Condition.STRIPPED, FRONT_LEFT),
                met(
                        "SCO-409",
                        "renew back-plate at axle 2 left (required)",
                        Component.BACK_PLATE,
                        Condition.CORRODED,
                        REAR_LEFT),
                met("SCO-410", ADJUSTER, Component.ADJUSTER, Condition.STRIPPED, REAR_LEFT),
                met("SCO-411", KIT_ADVISED, Component.DRUM, Condition.SEIZED, REAR_LEFT),
                met("SCO-412", DRUMS, Component.DRUM, Condition.BROKEN, REAR_LEFT),
                met("SCO-413", BEARING, Component.HUB_BEARING, Condition.SEIZED, REAR_LEFT),
                met("SCO-414", HOSE, Component.FLEXIBLE_HOSE, Condition.TURNS_WITH_PIPE, REAR_LEFT),
                met(
                        "SCO-415",
                        "renew wheel-bolt at axle 2 left (required)",
                        Component.WHEEL_BOLT,
                        Condition.SHEARED,
                        REAR_LEFT),
                met("SCO-416", DISCS, Component.DISC, Condition.BROKEN, FRONT_LEFT),
                met("SCO-417", PINS, Component.SLIDE_PIN, Condition.SEIZED, FRONT_LEFT),
                met("SCO-418", CABLE, Component.PARKING_CABLE, Condition.SEIZED, REAR_LEFT),
                met("SCO-419", KIT, Component.RETURN_SPRING, Condition.BROKEN, REAR_LEFT),
                met("SCO-420", KIT, Component.HOLD_DOWN, Condition.BROKEN, REAR_LEFT),
                new Row(
                        "SCO-421",
                        "bleed antilock-modulator at vehicle (required)",
                        List.of(obstacle(Component.BRAKE_FLUID, Condition.NOT_VISIBLE, Place.VEHICLE), van()),
                        List.of(
                                obstacle(Component.BRAKE_FLUID, Condition.NOT_VISIBLE, Place.VEHICLE),
                                van(CircuitSplit.DIAGONAL, null, null, false))));
    }

    static Stream<Row> renewals() {
        return Stream.of(
                twin(
                        "SCO-202",
                        "renew wheel-cylinder at axle 2 right (recommended)",
                        found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_LEFT),
                        ClauseCode.TWIN_HYDRAULIC_PART),
                new Row(
                        "SCO-204",
                        "renew calliper at axle 1 right (recommended)",
                        List.of(
                                found(Component.CALLIPER, Condition.SEIZED, FRONT_LEFT),
                                clause(ClauseCode.TWIN_CALLIPER, Necessity.RECOMMENDED),
                                clause(ClauseCode.TWIN_CALLIPER_AGE, "8"),
                                van(CircuitSplit.DIAGONAL, LocalDate.of(2017, 3, 2), null, true)),
                        List.of(
                                found(Component.CALLIPER, Condition.SEIZED, FRONT_LEFT),
                                clause(ClauseCode.TWIN_CALLIPER, Necessity.RECOMMENDED),
                                clause(ClauseCode.TWIN_CALLIPER_AGE, "8"),
                                van(CircuitSplit.DIAGONAL, LocalDate.of(2017, 3, 3), null, true))),
                twin(
                        "SCO-207",
                        "renew flexible-hose at axle 2 right (recommended)",
                        found(Component.FLEXIBLE_HOSE, Condition.CRACKED, REAR_LEFT),
                        ClauseCode.TWIN_FLEXIBLE_HOSE),
                twin(
                        "SCO-209",
                        "fabricate brake-pipe at axle 2 right (recommended)",
                        obstacle(Component.PIPE_UNION, Condition.TURNS_WITH_PIPE, REAR_LEFT),
                        ClauseCode.TWIN_BRAKE_PIPE),
                twin(
                        "SCO-211",
                        "renew parking-cable at axle 2 right (recommended)",
                        confirmed(CauseCode.PARKING_CABLE_SEIZED, REAR_LEFT),
                        ClauseCode.TWIN_PARKING_CABLE),
                twin(
                        "SCO-213",
                        "renew adjuster at axle 2 right (recommended)",
                        found(Component.ADJUSTER, Condition.WORN, REAR_LEFT),
                        ClauseCode.TWIN_ADJUSTER),
                twin(
                        "SCO-163",
                        "renew drum at axle 2 (recommended)",
                        found(Component.SHOE_LINING, Condition.SOAKED, REAR_LEFT),
                        ClauseCode.CONTAMINATED_DRUM),
                new Row(
                        "SCO-162",
                        "clean drum at axle 2 (required)",
                        List.of(found(Component.SHOE_LINING, Condition.SOAKED, REAR_LEFT), drumRear()),
                        List.of(found(Component.SHOE_LINING, Condition.SOUND, REAR_LEFT), drumRear())),
                new Row(
                        "SCO-165",
                        "clean disc at axle 1 (required)",
                        List.of(found(Component.PAD, Condition.SOAKED, FRONT_LEFT), discFront()),
                        List.of(found(Component.PAD, Condition.SOUND, FRONT_LEFT), discFront())),
                new Row(
                        "SCO-189",
                        "renew shoe-set at axle 2 (recommended)",
                        List.of(found(Component.DRUM, Condition.OVERSIZE, REAR_RIGHT)),
                        List.of(found(Component.DRUM, Condition.SCORED, REAR_RIGHT, Extent.LIGHT))),
                new Row(
                        "SCO-201",
                        CYLINDER,
                        List.of(found(Component.WHEEL_CYLINDER, Condition.TIGHT, REAR_LEFT)),
                        List.of(found(Component.WHEEL_CYLINDER, Condition.TIGHT, REAR_RIGHT))));
    }

    static Stream<Row> hardware() {
        LocalDate sixYearsAgo = LocalDate.of(2020, 3, 2);
        LocalDate sevenYearsAgo = LocalDate.of(2019, 3, 2);
        return Stream.of(
                kit("SCO-243", clause(ClauseCode.HARDWARE_KIT_AGE, "6"), sevenYearsAgo, "1000", sixYearsAgo, "1000"),
                kit(
                        "SCO-244",
                        clause(ClauseCode.HARDWARE_KIT_DISTANCE, "60000000"),
                        sixYearsAgo,
                        "60000001",
                        sixYearsAgo,
                        "60000000"),
                kit("SCO-245", clause(ClauseCode.HARDWARE_KIT_AGE, "6"), null, null, null, "1000"));
    }

    static Stream<Row> consequences() {
        Object shoes = found(Component.SHOE_LINING, Condition.WORN, REAR_LEFT);
        Object pads = found(Component.PAD, Condition.WORN, FRONT_LEFT);
        Object cylinder = found(Component.WHEEL_CYLINDER, Condition.TIGHT, REAR_LEFT);
        return Stream.of(
                new Row(
                        "SCO-301",
                        "bleed brake-fluid at circuit 2 (required)",
                        List.of(cylinder, van()),
                        List.of(shoes, van())),
                new Row(
                        "SCO-301",
                        "bleed brake-fluid at vehicle (required)",
                        List.of(cylinder, van(null, null, null, true)),
                        List.of(cylinder, van())),
                new Row(
                        "SCO-302",
                        "adjust shoe-set at axle 2 (required)",
                        List.of(shoes, drumRear()),
                        List.of(pads, drumRear(), discFront())),
                new Row(
                        "SCO-303",
                        "adjust parking-brake at vehicle (required)",
                        List.of(shoes, drumRear()),
                        List.of(shoes, discWithParking(ParkingLayout.CABLE_ON_CALLIPER))),
                new Row(
                        "SCO-304",
                        "adjust parking-brake at vehicle (required)",
                        List.of(confirmed(CauseCode.PARKING_CABLE_SEIZED, REAR_LEFT)),
                        List.of(suspected(CauseCode.PARKING_CABLE_SEIZED, REAR_LEFT))),
                new Row(
                        "SCO-305",
                        "adjust parking-brake at vehicle (required)",
                        List.of(
                                found(Component.PAD, Condition.WORN, REAR_LEFT),
                                discWithParking(ParkingLayout.ELECTRIC_ON_CALLIPER)),
                        List.of(
                                found(Component.PAD, Condition.WORN, REAR_LEFT),
                                discWithParking(ParkingLayout.SHOES_IN_DISC))),
                new Row(
                        "SCO-306",
                        "measure roller-test at vehicle (required)",
                        List.of(shoes),
                        List.of(found(Component.SHOE_LINING, Condition.SOUND, REAR_LEFT))),
                new Row("SCO-307", "measure drum at axle 2 (required)", List.of(shoes), List.of(cylinder)),
                new Row("SCO-308", "measure disc at axle 1 (required)", List.of(pads), List.of(shoes)),
                new Row(
                        "SCO-309",
                        PADS,
                        List.of(found(Component.DISC, Condition.CRACKED, FRONT_LEFT)),
                        List.of(found(Component.DISC, Condition.SCORED, FRONT_LEFT, Extent.LIGHT))),
                new Row(
                        "SCO-310",
                        "clean hub-face at axle 1 (required)",
                        List.of(found(Component.DISC, Condition.CRACKED, FRONT_LEFT)),
                        List.of(pads)),
                new Row(
                        "SCO-311",
                        PADS,
                        List.of(found(Component.CALLIPER, Condition.SEIZED, FRONT_LEFT)),
                        List.of(found(Component.FLEXIBLE_HOSE, Condition.CRACKED, FRONT_LEFT))),
                new Row(
                        "SCO-312",
                        PADS,
                        List.of(found(Component.SLIDE_PIN, Condition.SEIZED, FRONT_LEFT)),
                        List.of(found(Component.SLIDE_PIN, Condition.SOUND, FRONT_LEFT))),
                new Row(
                        "SCO-313",
                        "measure hub-bearing at axle 2 left (required)",
                        List.of(confirmed(CauseCode.HUB_SEAL_LEAKING, REAR_LEFT)),
                        List.of(cylinder)),
                new Row(
                        "SCO-314",
                        SEAL,
                        List.of(found(Component.HUB_BEARING, Condition.LOOSE, REAR_LEFT)),
                        List.of(found(Component.HUB_BEARING, Condition.SOUND, REAR_LEFT))));
    }

    static Stream<Row> extents() {
        Object hat = discWithParking(ParkingLayout.SHOES_IN_DISC);
        Object thin = clause(ClauseCode.LINING_RENEWAL_THICKNESS, "0.002", Necessity.RECOMMENDED);
        String discs = "renew disc at axle 2 (required)";
        return Stream.of(
                new Row(
                        "SCO-126",
                        HOSE,
                        List.of(found(Component.FLEXIBLE_HOSE, Condition.CRACKED, REAR_LEFT)),
                        List.of(found(Component.FLEXIBLE_HOSE, Condition.CRACKED, REAR_LEFT, Extent.LIGHT))),
                new Row(
                        "SCO-128",
                        PIPE,
                        List.of(found(Component.BRAKE_PIPE, Condition.CORRODED, REAR_LEFT)),
                        List.of(found(Component.BRAKE_PIPE, Condition.CORRODED, REAR_LEFT, Extent.LIGHT))),
                new Row(
                        "SCO-159",
                        "renew parking-shoe-set at axle 2 (recommended)",
                        List.of(lining("0.002"), thin, hat),
                        List.of(lining("0.0021"), thin, hat)),
                new Row("SCO-160", discs, List.of(drum("0.1901"), hat), List.of(drum("0.190"), hat)),
                new Row(
                        "SCO-166",
                        discs,
                        List.of(confirmed(CauseCode.DRUM_OVAL, REAR_LEFT), hat),
                        List.of(confirmed(CauseCode.DRUM_OVAL, REAR_LEFT), drumRear())),
                new Row(
                        "SCO-167",
                        discs,
                        List.of(found(Component.DRUM, Condition.CRACKED, REAR_LEFT), hat),
                        List.of(found(Component.DRUM, Condition.CRACKED, REAR_LEFT), drumRear())),
                new Row(
                        "SCO-226",
                        CABLE,
                        List.of(found(Component.PARKING_CABLE, Condition.FRAYED, REAR)),
                        List.of(found(Component.PARKING_CABLE, Condition.FRAYED, REAR_RIGHT))),
                new Row(
                        "SCO-227",
                        "renew parking-cable at axle 2 right (required)",
                        List.of(found(Component.PARKING_CABLE, Condition.FRAYED, REAR)),
                        List.of(found(Component.PARKING_CABLE, Condition.FRAYED, REAR_LEFT))),
                new Row(
                        "SCO-424",
                        BEARING,
                        List.of(obstacle(Component.DRUM, Condition.NOT_ACCESSIBLE, REAR_LEFT)),
                        List.of(found(Component.DRUM, Condition.NOT_ACCESSIBLE, REAR_LEFT))));
    }

    private static Object lining(String thickness) {
        return measured(Component.SHOE_LINING, REAR_LEFT, MeasuredQuantity.LINING_THICKNESS, thickness, null);
    }

    private static Object drum(String diameter) {
        return measured(Component.DRUM, REAR_LEFT, MeasuredQuantity.DRUM_DIAMETER, diameter, "0.190");
    }

    @ParameterizedTest
    @MethodSource({"causes", "states", "measurements", "obstacles", "renewals", "hardware", "consequences", "extents"})
    void a_line_stands_on_its_facts_and_falls_without_them(Row row) {
        assertThat(lines(row.given())).as(row.toString()).contains(row.line());
        assertThat(grounds(row.given())).as("grounds of " + row).contains(row.rule());
        assertThat(lines(row.justNot())).as("just not: " + row).doesNotContain(row.line());
    }

    @ParameterizedTest
    @MethodSource("states")
    void what_is_found_after_the_work_makes_no_scope(Row row) {
        List<Object> afterWork = row.given().stream()
                .map(fact -> fact instanceof PartState state
                        ? Workshop.afterWork(state.component(), state.condition(), state.place())
                        : fact)
                .toList();

        assertThat(lines(afterWork)).isEmpty();
    }

    private static Row cause(String rule, CauseCode code, Place place, String line) {
        return new Row(
                rule,
                line,
                List.of(confirmed(code, place), drumRear(), discFront(), van()),
                List.of(suspected(code, place), drumRear(), discFront(), van()));
    }

    private static Row unit(String rule, CauseCode code, String line) {
        return cause(rule, code, Place.VEHICLE, line);
    }

    private static Row outside(CauseCode code) {
        return cause("SCO-285", code, REAR, "measure roller-test at vehicle (required)");
    }

    private static Row state(
            String rule, String line, Place place, Component component, Condition bad, Condition harmless) {
        return new Row(
                rule,
                line,
                List.of(found(component, bad, place), drumRear(), discFront()),
                List.of(found(component, harmless, place), drumRear(), discFront()));
    }

    private static Row vehicleState(String rule, String line, Component component, Condition bad) {
        return state(rule, line, Place.VEHICLE, component, bad, Condition.SOUND);
    }

    private static Row measuredRow(
            String rule,
            String line,
            Component component,
            Place place,
            MeasuredQuantity quantity,
            String beyond,
            String just,
            Object clause) {
        return new Row(
                rule,
                line,
                List.of(measured(component, place, quantity, beyond, null), clause),
                List.of(measured(component, place, quantity, just, null), clause));
    }

    /** Fluid beyond a limit of the policy and just within it. */
    private static Row fluid(String rule, MeasuredQuantity quantity, String beyond, String within, ClauseCode limit) {
        Object clause = clause(limit, limit == ClauseCode.FLUID_BOILING_POINT ? "180" : "0.03");
        Object renewal = clause(ClauseCode.FLUID_RENEWAL, Necessity.RECOMMENDED);
        return new Row(
                rule,
                "renew brake-fluid at vehicle (recommended)",
                List.of(measured(Component.BRAKE_FLUID, Place.VEHICLE, quantity, beyond, null), clause, renewal),
                List.of(measured(Component.BRAKE_FLUID, Place.VEHICLE, quantity, within, null), clause, renewal));
    }

    private static Row met(String rule, String line, Component component, Condition condition, Place place) {
        return new Row(
                rule,
                line,
                List.of(obstacle(component, condition, place), drumRear(), discFront()),
                List.of(obstacle(component, Condition.LOOSE, place), drumRear(), discFront()));
    }

    private static Row twin(String rule, String line, Object failed, ClauseCode clause) {
        return new Row(
                rule,
                line,
                List.of(failed, drumRear(), clause(clause, Necessity.RECOMMENDED)),
                List.of(failed, drumRear(), clause(clause, "1")));
    }

    private static Row kit(
            String rule, Object clause, LocalDate used, String distance, LocalDate usedLess, String distanceLess) {
        Object shoes = found(Component.SHOE_LINING, Condition.WORN, REAR_LEFT);
        Object wanted = clause(ClauseCode.HARDWARE_KIT_WITH_SHOES, Necessity.RECOMMENDED);
        return new Row(
                rule,
                KIT_ADVISED,
                List.of(shoes, wanted, clause, van(CircuitSplit.DIAGONAL, used, distance, true)),
                List.of(shoes, wanted, clause, van(CircuitSplit.DIAGONAL, usedLess, distanceLess, true)));
    }

    private static List<String> lines(List<Object> facts) {
        return proposals(facts).stream().map(ScopeProposal::shown).toList();
    }

    private static List<String> grounds(List<Object> facts) {
        return Stream.of(FailedPart.class, SoiledLining.class, ScopeProposal.class)
                .flatMap(type -> RULES.given(facts.toArray()).concluded(type).stream())
                .map(conclusion -> conclusion.because().rule())
                .toList();
    }

    private static List<ScopeProposal> proposals(List<Object> facts) {
        return RULES.given(facts.toArray()).concluded(ScopeProposal.class);
    }
}
