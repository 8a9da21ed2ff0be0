package org.axlecause.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.rules.Workshop.FRONT;
import static org.axlecause.rules.Workshop.FRONT_LEFT;
import static org.axlecause.rules.Workshop.REAR;
import static org.axlecause.rules.Workshop.REAR_LEFT;
import static org.axlecause.rules.Workshop.afterWork;
import static org.axlecause.rules.Workshop.clause;
import static org.axlecause.rules.Workshop.confirmed;
import static org.axlecause.rules.Workshop.decided;
import static org.axlecause.rules.Workshop.discFront;
import static org.axlecause.rules.Workshop.discWithParking;
import static org.axlecause.rules.Workshop.drumRear;
import static org.axlecause.rules.Workshop.found;
import static org.axlecause.rules.Workshop.proposed;
import static org.axlecause.rules.Workshop.van;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CautionProposal;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Conclusion;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Decision;
import org.axlecause.facts.LineDone;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.StandingLeak;
import org.axlecause.facts.StandingSymptom;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.StepProposal;
import org.axlecause.facts.Strength;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.TestBarred;
import org.axlecause.facts.UnaskedLine;
import org.axlecause.facts.WorkedWheel;
import org.axlecause.inference.RuleBench;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Every work rule both ways: the line that needs its step or caution, and one that does not. */
class WorkRulesTest {

    private static final RuleBench RULES = RuleBench.forFolder("scope", "work");

    private static final Object SHOES = proposed(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR);
    private static final Object CYLINDER = proposed(ScopeAction.RENEW, ScopeItem.WHEEL_CYLINDER, REAR_LEFT);
    private static final Object PADS = proposed(ScopeAction.RENEW, ScopeItem.PAD_SET, FRONT);
    private static final Object CABLE = proposed(ScopeAction.RENEW, ScopeItem.PARKING_CABLE, REAR_LEFT);
    private static final Object TEST_ONLY = proposed(ScopeAction.MEASURE, ScopeItem.ROLLER_TEST, Place.VEHICLE);

    /** One rule, what it concludes, facts that make it and facts that just do not. */
    record Row(String rule, String concludes, List<Object> given, List<Object> justNot) {
        @Override
        public String toString() {
            return rule + " " + concludes;
        }
    }

    static Stream<Row> entryAndExit() {
        return Stream.of(
                row("WRK-101", "read-vehicle-data at vehicle", List.of(SHOES), List.of(TEST_ONLY)),
                row("WRK-102", "secure-and-lift at vehicle", List.of(SHOES), List.of(TEST_ONLY)),
                row("WRK-103", "control-dust at vehicle", List.of(SHOES, drumRear()), List.of(CABLE, drumRear())),
                row(
                        "WRK-104",
                        "service-mode at axle 2",
                        List.of(
                                proposed(ScopeAction.RENEW, ScopeItem.PAD_SET, REAR),
                                discWithParking(ParkingLayout.ELECTRIC_ON_CALLIPER)),
                        List.of(
                                proposed(ScopeAction.RENEW, ScopeItem.PAD_SET, REAR),
                                discWithParking(ParkingLayout.CABLE_ON_CALLIPER))),
                row("WRK-105", "refit-wheels at vehicle", List.of(SHOES), List.of(TEST_ONLY)),
                row("WRK-106", "pump-pedal at vehicle", List.of(SHOES), List.of(TEST_ONLY)),
                row("WRK-107", "leak-check at vehicle", List.of(CYLINDER, van()), List.of(SHOES, van())),
                row(
                        "WRK-108",
                        "leak-check at vehicle",
                        List.of(proposed(ScopeAction.RENEW, ScopeItem.HUB_SEAL, REAR_LEFT)),
                        List.of(proposed(ScopeAction.RENEW, ScopeItem.ADJUSTER, REAR_LEFT))),
                row("WRK-109", "slow-check at vehicle", List.of(SHOES), List.of(TEST_ONLY)),
                row("WRK-110", "bed-in at axle 2", List.of(SHOES), List.of(CYLINDER)),
                row("WRK-111", "final-roller-test at vehicle", List.of(SHOES), List.of(TEST_ONLY)),
                row("WRK-112", "repeat-roller-test at vehicle", List.of(TEST_ONLY), List.of(TEST_ONLY, SHOES)));
    }

    static Stream<Row> drumAxle() {
        return Stream.of(
                row("WRK-201", "remove-drum at axle 2", List.of(SHOES, drumRear()), List.of(PADS, discFront())),
                row("WRK-202", "look-over-axle at axle 2", List.of(SHOES, drumRear()), List.of(CABLE, drumRear())),
                row(
                        "WRK-203",
                        "match-parts at axle 2",
                        List.of(SHOES, drumRear()),
                        List.of(proposed(ScopeAction.CLEAN, ScopeItem.SHOE_SET, REAR), drumRear())),
                row(
                        "WRK-204",
                        "strip-shoes at axle 2 right",
                        List.of(SHOES, drumRear()),
                        List.of(CYLINDER, drumRear())),
                row(
                        "WRK-205",
                        "clean-back-plate at axle 2 left",
                        List.of(CYLINDER, drumRear()),
                        List.of(proposed(ScopeAction.CLEAN, ScopeItem.DRUM, REAR), drumRear())),
                row("WRK-206", "fit-shoes at axle 2 left", List.of(SHOES, drumRear()), List.of(CYLINDER, drumRear())),
                row(
                        "WRK-209",
                        "refit-shoes at axle 2 left",
                        List.of(CYLINDER, drumRear()),
                        List.of(CYLINDER, SHOES, drumRear())),
                row(
                        "WRK-218",
                        "fit-hardware-kit at axle 2 left",
                        List.of(proposed(ScopeAction.RENEW, ScopeItem.HARDWARE_KIT, REAR), drumRear()),
                        List.of(proposed(ScopeAction.CLEAN, ScopeItem.HARDWARE_KIT, REAR), drumRear())),
                row("WRK-207", "fit-drum at axle 2 left", List.of(SHOES, drumRear()), List.of(PADS, discFront())),
                row("WRK-208", "fit-drum at axle 2 right", List.of(CYLINDER, drumRear()), List.of(PADS, discFront())));
    }

    static Stream<Row> discAxle() {
        return Stream.of(
                row(
                        "WRK-301",
                        "remove-calliper at axle 1 left",
                        List.of(PADS, discFront()),
                        List.of(SHOES, drumRear())),
                row("WRK-302", "fit-calliper at axle 1 right", List.of(PADS, discFront()), List.of(SHOES, drumRear())),
                row("WRK-303", "lower-fluid at vehicle", List.of(PADS), List.of(SHOES)),
                row(
                        "WRK-304",
                        "push-pistons-back at axle 1 left",
                        List.of(PADS, discFront()),
                        List.of(proposed(ScopeAction.CLEAN, ScopeItem.DISC, FRONT), discFront())));
    }

    static Stream<Row> parkingBrake() {
        Object adjust = proposed(ScopeAction.ADJUST, ScopeItem.PARKING_BRAKE, Place.VEHICLE);
        return Stream.of(
                row(
                        "WRK-511",
                        "set-parking-brake at vehicle",
                        List.of(adjust, drumRear()),
                        List.of(adjust, discWithParking(ParkingLayout.ELECTRIC_ON_CALLIPER))),
                row(
                        "WRK-512",
                        "calibrate-parking-brake at vehicle",
                        List.of(adjust, discWithParking(ParkingLayout.ELECTRIC_ON_CALLIPER)),
                        List.of(adjust, drumRear())));
    }

    static Stream<Row> cautions() {
        Object fluid = proposed(ScopeAction.BLEED, ScopeItem.BRAKE_FLUID, Place.ofCircuit(1));
        Object bolt = proposed(ScopeAction.RENEW, ScopeItem.WHEEL_BOLT, REAR_LEFT);
        Object electric = discWithParking(ParkingLayout.ELECTRIC_ON_CALLIPER);
        Object adjust = proposed(ScopeAction.ADJUST, ScopeItem.PARKING_BRAKE, Place.VEHICLE);
        Object oldYear = clause(ClauseCode.OLD_FRICTION_MATERIAL_YEAR, "1999");
        return Stream.of(
                row("WRK-901", "dust", List.of(SHOES, drumRear()), List.of(CABLE, drumRear())),
                row(
                        "WRK-902",
                        "old-friction-material",
                        List.of(SHOES, drumRear(), oldYear, usedSince(1999)),
                        List.of(SHOES, drumRear(), oldYear, usedSince(2000))),
                row(
                        "WRK-903",
                        "old-friction-material",
                        List.of(SHOES, drumRear(), van(CircuitSplit.DIAGONAL, null, null, true)),
                        List.of(SHOES, drumRear(), van())),
                row("WRK-904", "fluid-handling", List.of(CYLINDER), List.of(SHOES, drumRear())),
                row("WRK-905", "fluid-class", List.of(fluid), List.of(CYLINDER)),
                row("WRK-906", "lifting", List.of(SHOES), List.of(TEST_ONLY)),
                row("WRK-907", "road-test", List.of(SHOES), List.of(TEST_ONLY)),
                row("WRK-908", "roller-bed", List.of(SHOES), List.of(SHOES, leakWithoutWork())),
                row("WRK-909", "spring-tension", List.of(SHOES, drumRear()), List.of(PADS, discFront())),
                row("WRK-910", "pressure-bleeding", List.of(fluid), List.of(CYLINDER)),
                row("WRK-911", "two-person-check", List.of(fluid), List.of(bolt)),
                row("WRK-912", "electric-parking-brake", List.of(adjust, electric), List.of(adjust, drumRear())),
                row(
                        "WRK-913",
                        "antilock-modulator",
                        List.of(fluid, van()),
                        List.of(fluid, van(CircuitSplit.DIAGONAL, null, null, false))),
                row("WRK-914", "high-voltage", List.of(SHOES, Workshop.regenerativeVan()), List.of(SHOES, van())),
                row("WRK-915", "hot-parts", List.of(SHOES, drumRear()), List.of(CABLE, drumRear())),
                row("WRK-916", "solvents", List.of(SHOES, drumRear()), List.of(CABLE, drumRear())),
                row("WRK-917", "machining", List.of(bolt), List.of(SHOES)),
                row("WRK-918", "torque-and-limits", List.of(SHOES), List.of(TEST_ONLY)),
                row("WRK-919", "air-suspension", List.of(SHOES, Workshop.airSuspendedVan()), List.of(SHOES, van())),
                row("WRK-920", "local-law", List.of(TEST_ONLY), List.of()),
                row("WRK-921", "unmarked-parts", List.of(SHOES), List.of(fluid)),
                row(
                        "WRK-922",
                        "restraint-wiring",
                        List.of(proposed(ScopeAction.RENEW, ScopeItem.SERVO, Place.VEHICLE)),
                        List.of(SHOES)));
    }

    @ParameterizedTest
    @MethodSource({"entryAndExit", "drumAxle", "discAxle", "parkingBrake", "cautions"})
    void a_step_or_caution_stands_with_its_line_and_not_without(Row row) {
        assertThat(concluded(row.given())).as(row.toString()).contains(row.rule() + " " + row.concludes());
        assertThat(concluded(row.justNot())).as("just not: " + row).doesNotContain(row.rule() + " " + row.concludes());
    }

    @ParameterizedTest
    @CsvSource({
        "WRK-211, RENEW, WHEEL_CYLINDER, renew-wheel-cylinder",
        "WRK-212, RENEW, HUB_SEAL, renew-hub-seal",
        "WRK-213, MEASURE, HUB_BEARING, check-hub-bearing",
        "WRK-214, RENEW, HUB_BEARING, renew-hub-bearing",
        "WRK-215, RENEW, ADJUSTER, renew-adjuster",
        "WRK-216, FREE, ADJUSTER, free-adjuster",
        "WRK-217, RENEW, BACK_PLATE, renew-back-plate",
        "WRK-219, CLEAN, SHOE_SET, dress-linings",
        "WRK-220, CLEAN, DRUM, degrease-drum",
        "WRK-221, MEASURE, DRUM, measure-drum",
        "WRK-222, MACHINE, DRUM, machine-drum",
        "WRK-223, RENEW, DRUM, renew-drum",
        "WRK-224, ADJUST, SHOE_SET, set-shoes",
        "WRK-311, RENEW, PAD_SET, fit-pads",
        "WRK-312, RENEW, DISC, renew-disc",
        "WRK-313, MEASURE, DISC, measure-disc",
        "WRK-314, CLEAN, DISC, degrease-disc",
        "WRK-315, CLEAN, HUB_FACE, clean-hub-face",
        "WRK-316, RENEW, CALLIPER, renew-calliper",
        "WRK-320, RENEW, CALLIPER_CARRIER, renew-calliper-carrier",
        "WRK-317, RENEW, SLIDE_PIN_KIT, free-slide-pins",
        "WRK-401, FABRICATE, BRAKE_PIPE, fabricate-brake-pipe",
        "WRK-402, RENEW, PIPE_NUT, renew-pipe-nut",
        "WRK-403, RENEW, FLEXIBLE_HOSE, renew-flexible-hose",
        "WRK-404, RENEW, BLEED_NIPPLE, renew-bleed-nipple",
        "WRK-405, BLEED, BRAKE_FLUID, bleed-circuit",
        "WRK-406, RENEW, BRAKE_FLUID, flush-fluid",
        "WRK-407, BLEED, ANTILOCK_MODULATOR, cycle-modulator",
        "WRK-408, RENEW, MASTER_CYLINDER, renew-master-cylinder",
        "WRK-409, RENEW, SERVO, renew-servo",
        "WRK-410, ADJUST, LOAD_SENSING_VALVE, set-load-sensing-valve",
        "WRK-411, RENEW, LOAD_SENSING_VALVE, renew-load-sensing-valve",
        "WRK-318, CLEAN, SLIDE_PIN_KIT, free-slide-pins",
        "WRK-319, CLEAN, PAD_SET, fit-pads",
        "WRK-412, RENEW, ANTILOCK_MODULATOR, renew-modulator",
        "WRK-413, RENEW, HYDRAULIC_SYSTEM, renew-rubber-parts",
        "WRK-414, CLEAN, BLEED_NIPPLE, renew-bleed-nipple",
        "WRK-415, ADJUST, MASTER_CYLINDER, set-master-cylinder",
        "WRK-416, FREE, PEDAL_LINKAGE, free-pedal-linkage",
        "WRK-417, RENEW, ANTILOCK_SENSOR, renew-antilock-sensor",
        "WRK-501, RENEW, PARKING_CABLE, renew-parking-cable",
        "WRK-502, FREE, PARKING_EQUALISER, free-parking-equaliser",
        "WRK-503, RENEW, PARKING_ACTUATOR, renew-parking-actuator",
        "WRK-504, RENEW, PARKING_SHOE_SET, renew-parking-shoes",
        "WRK-505, RENEW, WHEEL_BOLT, renew-wheel-bolt"
    })
    void each_kind_of_line_has_the_step_that_does_it(String rule, ScopeAction action, ScopeItem item, String step) {
        LineKey line = new LineKey(action, item, REAR_LEFT);

        assertThat(steps(List.of(proposed(action, item, REAR_LEFT))))
                .filteredOn(proposal -> proposal.because().rule().equals(rule))
                .singleElement()
                .returns(step + " at axle 2 left", StepProposal::shown)
                .returns(line, StepProposal::line);
        assertThat(concluded(List.of(proposed(action, item, REAR_LEFT), decided(line, Decision.REFUSED))))
                .isEmpty();
    }

    @Test
    void linings_not_bedded_are_bedded_in_and_new_fluid_is_followed_by_a_look_for_leaks() {
        Object test = proposed(ScopeAction.MEASURE, ScopeItem.ROLLER_TEST, Place.VEHICLE);
        Object fluid = proposed(ScopeAction.RENEW, ScopeItem.BRAKE_FLUID, Place.VEHICLE);

        assertThat(steps(StepCode.BED_IN, confirmed(CauseCode.LINING_NOT_BEDDED, REAR), test))
                .containsExactly("WRK-113");
        assertThat(steps(StepCode.BED_IN, test)).isEmpty();
        assertThat(steps(StepCode.LEAK_CHECK, fluid, van())).contains("WRK-114");
        assertThat(steps(StepCode.LEAK_CHECK, test, van())).isEmpty();
    }

    private static List<String> steps(StepCode code, Object... facts) {
        return RULES.given(facts).concluded(StepProposal.class).stream()
                .filter(step -> step.step() == code)
                .map(step -> step.because().rule())
                .distinct()
                .toList();
    }

    @Test
    void an_axle_line_takes_both_wheels_apart_and_a_wheel_line_one() {
        assertThat(wheels(SHOES, drumRear())).contains("WRK-011 axle 2 left", "WRK-012 axle 2 right");
        assertThat(wheels(CYLINDER, drumRear())).containsExactly("WRK-013 axle 2 left");
        assertThat(wheels(CABLE, drumRear())).isEmpty();
    }

    @Test
    void no_roller_or_road_step_is_planned_while_a_leak_stands_that_no_line_mends() {
        Object leak = found(Component.BRAKE_PIPE, Condition.LEAKING, FRONT_LEFT);
        LineKey pipe = new LineKey(ScopeAction.FABRICATE, ScopeItem.BRAKE_PIPE, FRONT_LEFT);

        assertThat(driven(List.of(SHOES, drumRear(), leak, van())))
                .contains("final-roller-test at vehicle", "slow-check at vehicle", "bed-in at axle 2");
        assertThat(driven(List.of(SHOES, drumRear(), leak, van(), decided(pipe, Decision.REFUSED))))
                .isEmpty();
        assertThat(bars(List.of(SHOES, leak, van(), decided(pipe, Decision.REFUSED))))
                .containsExactly("WRK-801");
        assertThat(bars(List.of(
                        SHOES,
                        leak,
                        van(),
                        decided(pipe, Decision.REFUSED),
                        afterWork(Component.BRAKE_PIPE, Condition.SOUND, FRONT_LEFT))))
                .isEmpty();
    }

    @Test
    void no_roller_or_road_step_is_planned_while_the_pedal_sinks_or_no_fluid_is_seen() {
        Object bleeding = proposed(ScopeAction.BLEED, ScopeItem.BRAKE_FLUID, Place.VEHICLE);
        Object sinking = found(Component.PEDAL, Condition.SINKING, Place.VEHICLE);
        Object symptom = new StandingSymptom(SymptomCode.PEDAL_SINKING, Place.VEHICLE, Strength.CLEAR, "pedal sinks");
        Object dry = found(Component.BRAKE_FLUID, Condition.NOT_VISIBLE, Place.VEHICLE);

        assertThat(bars(List.of(SHOES, sinking))).containsExactly("WRK-802");
        assertThat(bars(List.of(SHOES, symptom))).containsExactly("WRK-803");
        assertThat(bars(List.of(SHOES, dry))).containsExactly("WRK-804");
        assertThat(driven(List.of(SHOES, drumRear(), sinking))).isEmpty();
        assertThat(driven(List.of(SHOES, drumRear(), symptom))).isEmpty();
        assertThat(driven(List.of(SHOES, drumRear(), dry))).isEmpty();
        assertThat(bars(List.of(SHOES, sinking, symptom, dry, bleeding))).isEmpty();
        assertThat(bars(List.of(
                        SHOES,
                        sinking,
                        dry,
                        afterWork(Component.PEDAL, Condition.SOUND, Place.VEHICLE),
                        afterWork(Component.BRAKE_FLUID, Condition.SOUND, Place.VEHICLE))))
                .isEmpty();
    }

    @Test
    void leaks_stand_until_a_look_after_the_work_finds_the_part_sound() {
        assertThat(leaks(found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_LEFT)))
                .containsExactly("SCO-901");
        assertThat(leaks(confirmed(CauseCode.WHEEL_CYLINDER_LEAKING, REAR_LEFT)))
                .containsExactly("SCO-902");
        assertThat(leaks(confirmed(CauseCode.HUB_SEAL_LEAKING, REAR_LEFT))).containsExactly("SCO-903");
        assertThat(leaks(confirmed(CauseCode.CALLIPER_LEAKING, FRONT_LEFT))).containsExactly("SCO-904");
        assertThat(leaks(confirmed(CauseCode.HOSE_LEAKING, FRONT_LEFT))).containsExactly("SCO-905");
        assertThat(leaks(confirmed(CauseCode.PIPE_UNION_LEAKING, FRONT_LEFT))).containsExactly("SCO-906");
        assertThat(leaks(confirmed(CauseCode.MASTER_CYLINDER_LEAKING, Place.VEHICLE)))
                .containsExactly("SCO-907");
        assertThat(leaks(confirmed(CauseCode.BLEED_NIPPLE_WEEPING, FRONT_LEFT))).containsExactly("SCO-908");
        assertThat(leaks(
                        confirmed(CauseCode.HOSE_LEAKING, FRONT_LEFT),
                        confirmed(CauseCode.MASTER_CYLINDER_LEAKING, Place.VEHICLE),
                        afterWork(Component.FLEXIBLE_HOSE, Condition.SOUND, FRONT_LEFT),
                        afterWork(Component.MASTER_CYLINDER, Condition.SOUND, Place.VEHICLE)))
                .isEmpty();
        assertThat(leaks(
                        found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_LEFT),
                        confirmed(CauseCode.WHEEL_CYLINDER_LEAKING, REAR_LEFT),
                        confirmed(CauseCode.HUB_SEAL_LEAKING, REAR_LEFT),
                        afterWork(Component.WHEEL_CYLINDER, Condition.SOUND, REAR_LEFT),
                        afterWork(Component.HUB_SEAL, Condition.SOUND, REAR)))
                .isEmpty();
        assertThat(leaks(
                        found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_LEFT),
                        afterWork(Component.WHEEL_CYLINDER, Condition.SOUND, Workshop.REAR_RIGHT)))
                .containsExactly("SCO-901");
    }

    @Test
    void a_decided_line_that_nothing_asks_for_says_why_it_stays() {
        LineKey seal = new LineKey(ScopeAction.RENEW, ScopeItem.HUB_SEAL, REAR_LEFT);

        assertThat(rules(new Object[] {decided(seal, Decision.AGREED)}, UnaskedLine.class))
                .containsExactly("WRK-821");
        assertThat(rules(
                        new Object[] {
                            decided(seal, Decision.AGREED), proposed(ScopeAction.RENEW, ScopeItem.HUB_SEAL, REAR_LEFT)
                        },
                        UnaskedLine.class))
                .isEmpty();
    }

    @Test
    void work_that_nothing_asks_for_says_why_it_stays() {
        LineKey seal = new LineKey(ScopeAction.RENEW, ScopeItem.HUB_SEAL, REAR_LEFT);

        assertThat(rules(new Object[] {new LineDone(seal)}, UnaskedLine.class)).containsExactly("WRK-822");
        assertThat(rules(
                        new Object[] {new LineDone(seal), proposed(ScopeAction.RENEW, ScopeItem.HUB_SEAL, REAR_LEFT)},
                        UnaskedLine.class))
                .isEmpty();
    }

    private static Object leakWithoutWork() {
        return new StandingSymptom(SymptomCode.PEDAL_SINKING, Place.VEHICLE, Strength.CLEAR, "pedal sinks");
    }

    private static Object usedSince(int year) {
        return van(CircuitSplit.DIAGONAL, LocalDate.of(year, 7, 1), null, true);
    }

    private static Row row(String rule, String concludes, List<Object> given, List<Object> justNot) {
        return new Row(rule, concludes, given, justNot);
    }

    private static List<StepProposal> steps(List<Object> facts) {
        return RULES.given(facts.toArray()).concluded(StepProposal.class);
    }

    private static List<String> driven(List<Object> facts) {
        return steps(facts).stream()
                .map(StepProposal::shown)
                .filter(step -> step.startsWith("final") || step.startsWith("slow") || step.startsWith("bed-in"))
                .distinct()
                .toList();
    }

    private static List<String> bars(List<Object> facts) {
        return rules(facts.toArray(), TestBarred.class);
    }

    private static List<String> leaks(Object... facts) {
        return rules(facts, StandingLeak.class);
    }

    private static List<String> rules(Object[] facts, Class<? extends Conclusion> type) {
        return RULES.given(facts).concluded(type).stream()
                .map(conclusion -> conclusion.because().rule())
                .toList();
    }

    private static List<String> wheels(Object... facts) {
        return RULES.given(facts).concluded(WorkedWheel.class).stream()
                .filter(wheel -> wheel.line().action() == ScopeAction.RENEW)
                .map(wheel -> wheel.because().rule() + " " + wheel.place())
                .distinct()
                .toList();
    }

    private static List<String> concluded(List<Object> facts) {
        return Stream.of(StepProposal.class, CautionProposal.class)
                .flatMap(type -> RULES.given(facts.toArray()).concluded(type).stream())
                .map(conclusion -> conclusion.because().rule() + " " + conclusion.shown())
                .distinct()
                .toList();
    }
}
