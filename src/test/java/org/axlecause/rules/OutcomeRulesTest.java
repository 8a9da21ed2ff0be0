package org.axlecause.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.rules.Workshop.FRONT;
import static org.axlecause.rules.Workshop.FRONT_LEFT;
import static org.axlecause.rules.Workshop.REAR;
import static org.axlecause.rules.Workshop.REAR_LEFT;
import static org.axlecause.rules.Workshop.REAR_RIGHT;
import static org.axlecause.rules.Workshop.afterWork;
import static org.axlecause.rules.Workshop.clause;
import static org.axlecause.rules.Workshop.confirmed;
import static org.axlecause.rules.Workshop.decided;
import static org.axlecause.rules.Workshop.discFront;
import static org.axlecause.rules.Workshop.drumRear;
import static org.axlecause.rules.Workshop.found;
import static org.axlecause.rules.Workshop.measured;
import static org.axlecause.rules.Workshop.proposed;
import static org.axlecause.rules.Workshop.suspected;
import static org.axlecause.rules.Workshop.van;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.axlecause.facts.BeddingAllowed;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Conclusion;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Decision;
import org.axlecause.facts.DeficiencyClass;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.DeficiencyInForce;
import org.axlecause.facts.Extent;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.FitnessGround;
import org.axlecause.facts.LineDone;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.OpenLine;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.PartState;
import org.axlecause.facts.Place;
import org.axlecause.facts.RefusedWork;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.RetestComparison;
import org.axlecause.facts.RetestRound;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.SettledCause;
import org.axlecause.facts.Stage;
import org.axlecause.facts.StandingCause;
import org.axlecause.facts.StandingDeficiency;
import org.axlecause.facts.StandingFault;
import org.axlecause.facts.StandingSymptom;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.Strength;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.TestedAxle;
import org.axlecause.facts.VerificationGround;
import org.axlecause.facts.WorkOutcome;
import org.axlecause.inference.RuleBench;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every outcome rule both ways; the classes of parts and tests follow the UK defect tree as far as it has a figure. */
class OutcomeRulesTest {

    private static final RuleBench RULES = RuleBench.forFolder("scope", "outcome");

    private static final String STOP = "do-not-drive";
    private static final String REPAIR = "repair-before-use";
    private static final String PLAN = "repair-planned";
    private static final Object NOISE = clause(ClauseCode.RETEST_NOISE, "0.10");
    private static final LineKey SHOES = new LineKey(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR);

    /** One rule, what it concludes, facts that make it and facts that just do not. */
    record Row(String rule, String concludes, List<Object> given, List<Object> justNot) {
        @Override
        public String toString() {
            return rule + " " + concludes;
        }
    }

    static Stream<Row> partsByState() {
        return Stream.of(
                part("OUT-205", STOP, Component.BRAKE_FLUID, Condition.NOT_VISIBLE, null),
                part("OUT-206", REPAIR, Component.BRAKE_FLUID, Condition.LOW, null),
                part("OUT-206", REPAIR, Component.BRAKE_FLUID, Condition.LOW, Extent.SEVERE),
                part("OUT-207", PLAN, Component.BRAKE_FLUID, Condition.LOW, Extent.LIGHT),
                part("OUT-208", REPAIR, Component.BRAKE_FLUID, Condition.CONTAMINATED, null),
                part("OUT-211", STOP, Component.PEDAL, Condition.SINKING, null),
                part("OUT-212", REPAIR, Component.PEDAL, Condition.SPONGY, null),
                part("OUT-231", STOP, Component.SHOE_LINING, Condition.DETACHED, null),
                part("OUT-232", REPAIR, Component.SHOE_LINING, Condition.SOAKED, null),
                part("OUT-233", STOP, Component.DRUM, Condition.CRACKED, null),
                part("OUT-234", REPAIR, Component.DRUM, Condition.OVERSIZE, null),
                part("OUT-235", REPAIR, Component.DISC, Condition.SCORED, null),
                part("OUT-236", PLAN, Component.DISC, Condition.SCORED, Extent.LIGHT),
                part("OUT-237", REPAIR, Component.BACK_PLATE, Condition.LOOSE, null),
                part("OUT-238", PLAN, Component.FLEXIBLE_HOSE, Condition.CRACKED, Extent.LIGHT),
                part("OUT-239", REPAIR, Component.FLEXIBLE_HOSE, Condition.CRACKED, null),
                part("OUT-240", STOP, Component.FLEXIBLE_HOSE, Condition.BULGING, null),
                part("OUT-241", REPAIR, Component.FLEXIBLE_HOSE, Condition.BULGING, Extent.MODERATE),
                part("OUT-242", STOP, Component.BRAKE_PIPE, Condition.CORRODED, null),
                part("OUT-243", REPAIR, Component.BRAKE_PIPE, Condition.CORRODED, Extent.MODERATE),
                part("OUT-244", REPAIR, Component.WHEEL_CYLINDER, Condition.SEIZED, null),
                part("OUT-245", REPAIR, Component.PARKING_CABLE, Condition.FRAYED, null),
                part("OUT-246", REPAIR, Component.ADJUSTER, Condition.SEIZED, null),
                part("OUT-247", STOP, Component.LOAD_SENSING_VALVE, Condition.SEIZED, null),
                part("OUT-248", REPAIR, Component.LOAD_SENSING_VALVE, Condition.SEIZED, null),
                part("OUT-249", REPAIR, Component.WARNING_LAMP, Condition.LIT, null),
                part("OUT-250", REPAIR, Component.MASTER_CYLINDER, Condition.LOOSE, null),
                part("OUT-251", STOP, Component.SERVO, Condition.BROKEN, null),
                part("OUT-252", REPAIR, Component.SERVO, Condition.WORN, null),
                part("OUT-253", REPAIR, Component.HUB_BEARING, Condition.LOOSE, null),
                part("OUT-254", STOP, Component.HUB_BEARING, Condition.LOOSE, Extent.SEVERE),
                part("OUT-255", REPAIR, Component.RETURN_SPRING, Condition.BROKEN, null));
    }

    static Stream<Row> leaksAndFluid() {
        Object cylinder = found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_LEFT);
        Object imbalance = new StandingDeficiency(
                DeficiencyCode.SERVICE_IMBALANCE, REAR, DeficiencyClass.MAJOR, null, "imbalance 63 % at axle 2");
        Object water = clause(ClauseCode.FLUID_WATER_CONTENT, "0.03");
        Object urgent = clause(ClauseCode.FLUID_WATER_CONTENT_URGENT, "0.05");
        Object pedalSound = afterWork(Component.PEDAL, Condition.SOUND, Place.VEHICLE);
        return Stream.of(
                row(
                        "OUT-201",
                        STOP,
                        List.of(found(Component.BRAKE_PIPE, Condition.LEAKING, REAR_LEFT)),
                        List.of(cylinder)),
                row("OUT-202", STOP, List.of(cylinder, imbalance), List.of(cylinder)),
                row(
                        "OUT-203",
                        REPAIR,
                        List.of(cylinder),
                        List.of(cylinder, afterWork(Component.WHEEL_CYLINDER, Condition.SOUND, REAR_LEFT))),
                row(
                        "OUT-204",
                        REPAIR,
                        List.of(confirmed(CauseCode.HUB_SEAL_LEAKING, REAR_LEFT)),
                        List.of(suspected(CauseCode.HUB_SEAL_LEAKING, REAR_LEFT))),
                row("OUT-209", REPAIR, List.of(urgent, wet("0.05")), List.of(urgent, wet("0.049"))),
                row("OUT-210", PLAN, List.of(water, wet("0.03")), List.of(water, wet("0.029"))),
                row(
                        "OUT-213",
                        STOP,
                        List.of(symptom(SymptomCode.PEDAL_SINKING)),
                        List.of(symptom(SymptomCode.PEDAL_SINKING), pedalSound)),
                row(
                        "OUT-214",
                        REPAIR,
                        List.of(symptom(SymptomCode.PEDAL_LONG)),
                        List.of(symptom(SymptomCode.PEDAL_LONG), pedalSound)),
                row(
                        "OUT-256",
                        PLAN,
                        List.of(clause(ClauseCode.PAD_RENEWAL_THICKNESS, "0.003"), pad("0.003")),
                        List.of(clause(ClauseCode.PAD_RENEWAL_THICKNESS, "0.003"), pad("0.0031"))),
                row(
                        "OUT-257",
                        PLAN,
                        List.of(clause(ClauseCode.LINING_RENEWAL_THICKNESS, "0.002"), lining("0.002")),
                        List.of(clause(ClauseCode.LINING_RENEWAL_THICKNESS, "0.002"), lining("0.0021"))));
    }

    static Stream<Row> testsAndWork() {
        Object worn = proposed(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR);
        Object wornOut = confirmed(CauseCode.LINING_WORN_OUT, REAR_LEFT);
        Object oval = confirmed(CauseCode.DRUM_OVAL, REAR_RIGHT);
        Object seized = confirmed(CauseCode.CALLIPER_PISTON_SEIZED, FRONT_LEFT);
        Object slight = clause(ClauseCode.SLIGHT_UNEVENNESS, "0.15");
        return Stream.of(
                row(
                        "OUT-271",
                        STOP,
                        List.of(deficiency(DeficiencyClass.DANGEROUS)),
                        List.of(deficiency(DeficiencyClass.MAJOR))),
                row(
                        "OUT-272",
                        REPAIR,
                        List.of(deficiency(DeficiencyClass.MAJOR)),
                        List.of(deficiency(DeficiencyClass.MINOR))),
                row("OUT-273", REPAIR, List.of(deficiency(null)), List.of(deficiency(DeficiencyClass.MINOR))),
                row("OUT-273", REPAIR, List.of(deficiency(null)), List.of(ofPolicy())),
                row("OUT-295", PLAN, List.of(ofPolicy()), List.of(deficiency(null))),
                row(
                        "OUT-274",
                        PLAN,
                        List.of(deficiency(DeficiencyClass.MINOR)),
                        List.of(deficiency(DeficiencyClass.MAJOR))),
                row("OUT-275", REPAIR, List.of(wornOut, worn), List.of(wornOut, worn, allDone())),
                row("OUT-276", STOP, List.of(wornOut, oval, worn), List.of(wornOut, effect(CauseCode.DRUM_OVAL), worn)),
                row(
                        "OUT-277",
                        STOP,
                        List.of(seized, discFront(), symptom(SymptomCode.PEDAL_LONG)),
                        List.of(wornOut, worn, drumRear(), symptom(SymptomCode.PEDAL_LONG))),
                row(
                        "OUT-278",
                        STOP,
                        List.of(seized, discFront(), found(Component.PEDAL, Condition.SPONGY, Place.VEHICLE)),
                        List.of(seized, discFront())),
                row(
                        "OUT-281",
                        REPAIR,
                        List.of(new LineDone(SHOES)),
                        List.of(new LineDone(SHOES), compared("0.60", "0.10", true, true))),
                row("OUT-282", REPAIR, List.of(bled()), List.of(bled(), compared("0.60", "0.10", true, true))),
                row(
                        "OUT-283",
                        REPAIR,
                        List.of(compared("0.60", "0.40", false, false)),
                        List.of(compared("0.60", "0.20", true, false))),
                row(
                        "OUT-284",
                        REPAIR,
                        List.of(new ReportedStep(StepCode.SERVICE_MODE, REAR, WorkOutcome.DONE)),
                        List.of(
                                new ReportedStep(StepCode.SERVICE_MODE, REAR, WorkOutcome.DONE),
                                new ReportedStep(StepCode.CALIBRATE_PARKING_BRAKE, Place.VEHICLE, WorkOutcome.DONE))),
                row(
                        "OUT-294",
                        PLAN,
                        List.of(slight, tested(Stage.ARRIVAL, "0.15")),
                        List.of(slight, tested(Stage.ARRIVAL, "0.149"))),
                row(
                        "OUT-294",
                        PLAN,
                        List.of(slight, tested(Stage.DIAGNOSTIC, "0.17")),
                        List.of(slight, tested(Stage.FINAL, "0.17"))),
                row(
                        "OUT-294",
                        PLAN,
                        List.of(slight, tested(Stage.ARRIVAL, "0.17")),
                        List.of(
                                slight,
                                tested(Stage.ARRIVAL, "0.17"),
                                new StandingSymptom(
                                        SymptomCode.ONE_WHEEL_LOW, REAR_RIGHT, Strength.SLIGHT, "one wheel low"))),
                row(
                        "OUT-291",
                        "no-restriction-found",
                        wellTested(),
                        with(wellTested(), symptom(SymptomCode.PEDAL_PULSATING))));
    }

    static Stream<List<Object>> whatForbidsAClearAnswer() {
        return Stream.of(
                List.of(proposed(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR)),
                List.of(found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_LEFT)),
                List.of(found(Component.SHOE_LINING, Condition.WORN, REAR_LEFT)),
                List.of(deficiency(DeficiencyClass.MINOR)),
                List.of(suspected(CauseCode.LINING_GLAZED, REAR_LEFT)),
                List.of(compared("0.60", "0.40", false, false)));
    }

    @ParameterizedTest
    @MethodSource("whatForbidsAClearAnswer")
    void no_restriction_is_found_only_where_nothing_stands(List<Object> facts) {
        assertThat(levels(wellTested())).contains("OUT-291 no-restriction-found");
        assertThat(levels(with(wellTested(), facts.toArray()))).doesNotContain("OUT-291 no-restriction-found");
    }

    @Test
    void an_axle_that_was_not_tested_forbids_a_clear_answer() {
        List<Object> facts = wellTested().stream()
                .filter(fact ->
                        !(fact instanceof TestedAxle tested && tested.place().equals(FRONT)))
                .toList();

        assertThat(levels(facts)).doesNotContain("OUT-291 no-restriction-found");
    }

    static Stream<Row> verification() {
        Object allowed = clause(ClauseCode.IMBALANCE_TARGET_NOT_BEDDED, "0.20");
        Object first = new RetestRound(REAR, 1);
        Object second = new RetestRound(REAR, 2);
        Object shoesDone = new LineDone(SHOES);
        return Stream.of(
                row(
                        "OUT-101",
                        "cured",
                        List.of(compared("0.60", "0.12", true, true)),
                        List.of(compared("0.60", "0.18", true, false))),
                row(
                        "OUT-102",
                        "improved",
                        List.of(compared("0.60", "0.18", true, false), allowed, second, shoesDone),
                        List.of(compared("0.60", "0.18", true, false), allowed, first, shoesDone)),
                row(
                        "OUT-103",
                        "cured",
                        List.of(compared("0.60", "0.20", true, false), allowed, first, shoesDone),
                        List.of(compared("0.60", "0.201", true, false), allowed, first, shoesDone)),
                row(
                        "OUT-103",
                        "cured",
                        List.of(compared("0.60", "0.20", true, false), allowed, first, shoesDone),
                        List.of(compared("0.60", "0.20", true, false), allowed, first)),
                row(
                        "OUT-104",
                        "improved",
                        List.of(
                                compared("0.60", "0.20", true, false),
                                allowed,
                                first,
                                shoesDone,
                                figure(FigureKind.FLUCTUATION, REAR, "0.30", "0.18", true, false)),
                        List.of(compared("0.60", "0.20", true, false), allowed, first, shoesDone)),
                row(
                        "OUT-105",
                        "improved",
                        List.of(NOISE, compared("0.60", "0.53", false, false)),
                        List.of(NOISE, compared("0.60", "0.54", false, false))),
                row(
                        "OUT-106",
                        "not-cured",
                        List.of(NOISE, compared("0.60", "0.54", false, false)),
                        List.of(NOISE, compared("0.60", "0.53", false, false))),
                row(
                        "OUT-109",
                        "not-cured",
                        List.of(NOISE, compared("0.25", "0.23", true, false)),
                        List.of(NOISE, compared("0.25", "0.22", true, false))),
                row(
                        "OUT-109",
                        "not-cured",
                        List.of(NOISE, compared("0.20", "0.20", true, false)),
                        List.of(NOISE, compared("0.19", "0.19", true, false))),
                row(
                        "OUT-109",
                        "not-cured",
                        List.of(NOISE, compared("0.20", "0.20", true, false), allowed, first),
                        List.of(NOISE, compared("0.20", "0.20", true, false), allowed, first, shoesDone)),
                row(
                        "OUT-107",
                        "not-cured",
                        List.of(compared("0.60", "0.40", false, false)),
                        List.of(NOISE, compared("0.60", "0.40", false, false))),
                row(
                        "OUT-108",
                        "not-tested",
                        List.of(figure(FigureKind.IMBALANCE, REAR, "0.60", null, false, null)),
                        List.of(compared("0.60", "0.10", true, true))),
                row(
                        "OUT-111",
                        "still-open",
                        List.of(proposed(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR)),
                        List.of(proposed(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR), allDone())),
                row(
                        "OUT-112",
                        "still-open",
                        List.of(found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_LEFT)),
                        List.of(
                                found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_LEFT),
                                afterWork(Component.WHEEL_CYLINDER, Condition.SOUND, REAR_LEFT))),
                row(
                        "OUT-113",
                        "still-open",
                        List.of(afterWork(Component.DRUM, Condition.OVAL, REAR_LEFT)),
                        List.of(afterWork(Component.DRUM, Condition.DAMP, REAR_LEFT))),
                row(
                        "OUT-114",
                        "still-open",
                        List.of(symptom(SymptomCode.PEDAL_SPONGY)),
                        List.of(
                                symptom(SymptomCode.PEDAL_SPONGY),
                                afterWork(Component.PEDAL, Condition.SOUND, Place.VEHICLE))));
    }

    @ParameterizedTest
    @MethodSource({"partsByState", "leaksAndFluid", "testsAndWork", "verification"})
    void a_ground_stands_on_its_facts_and_falls_without_them(Row row) {
        assertThat(levels(row.given())).as(row.toString()).contains(row.toString());
        assertThat(levels(row.justNot())).as("just not: " + row).doesNotContain(row.toString());
    }

    @ParameterizedTest
    @MethodSource("partsByState")
    void a_mended_part_asks_for_nothing_more_but_a_fault_after_the_work_does(Row row) {
        List<Object> found = row.given();
        PartState state = (PartState) found.get(0);

        assertThat(levels(with(found, afterWork(state.component(), Condition.SOUND, state.place()))))
                .doesNotContain(row.toString());
    }

    @Test
    void a_load_sensing_valve_weighs_less_with_an_anti_lock_system_behind_it() {
        Object valve = found(Component.LOAD_SENSING_VALVE, Condition.SEIZED, REAR);

        assertThat(levels(List.of(valve, van())))
                .contains("OUT-248 repair-before-use")
                .doesNotContain("OUT-247 do-not-drive");
        assertThat(levels(List.of(valve, van(CircuitSplit.DIAGONAL, null, null, null))))
                .contains("OUT-247 do-not-drive");
    }

    @Test
    void a_required_line_stands_open_until_it_is_done_and_an_advised_one_never_does() {
        assertThat(rules(OpenLine.class, proposed(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR)))
                .contains("OUT-001");
        assertThat(rules(OpenLine.class, proposed(ScopeAction.RENEW, ScopeItem.PIPE_NUT, REAR, Necessity.RECOMMENDED)))
                .isEmpty();
        assertThat(rules(OpenLine.class, proposed(ScopeAction.MEASURE, ScopeItem.DRUM, REAR)))
                .isEmpty();
    }

    @Test
    void a_fault_stands_until_work_mends_it_or_a_look_after_the_work_finds_it_sound() {
        Object soaked = found(Component.SHOE_LINING, Condition.SOAKED, REAR_LEFT);
        Object springs = found(Component.RETURN_SPRING, Condition.BROKEN, REAR_LEFT);

        assertThat(rules(StandingFault.class, soaked)).containsExactly("OUT-002");
        assertThat(rules(StandingFault.class, soaked, new LineDone(SHOES))).isEmpty();
        assertThat(rules(StandingFault.class, springs, new LineDone(SHOES))).containsExactly("OUT-002");
        assertThat(rules(
                        StandingFault.class, afterWork(Component.DRUM, Condition.OVAL, REAR_LEFT), new LineDone(SHOES)))
                .containsExactly("OUT-003");
    }

    @Test
    void a_deficiency_is_in_force_until_a_test_or_its_work_ends_it() {
        Object soiled = new StandingDeficiency(
                DeficiencyCode.LINING_CONTAMINATED, REAR_LEFT, DeficiencyClass.MAJOR, null, "lining contaminated");
        Object leaking = new StandingDeficiency(
                DeficiencyCode.WHEEL_CYLINDER_LEAKING, REAR_LEFT, DeficiencyClass.MAJOR, null, "cylinder leaking");

        assertThat(rules(DeficiencyInForce.class, deficiency(DeficiencyClass.MAJOR)))
                .containsExactly("OUT-004");
        assertThat(rules(DeficiencyInForce.class, soiled)).containsExactly("OUT-005");
        assertThat(rules(DeficiencyInForce.class, soiled, new LineDone(SHOES))).isEmpty();
        assertThat(rules(DeficiencyInForce.class, leaking)).isEmpty();
        assertThat(rules(
                        DeficiencyInForce.class,
                        leaking,
                        found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_LEFT)))
                .containsExactly("OUT-006");
    }

    @Test
    void a_confirmed_cause_stands_while_required_work_is_open_where_it_is() {
        Object worn = proposed(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR);
        Object bleeding = proposed(ScopeAction.BLEED, ScopeItem.BRAKE_FLUID, Place.ofCircuit(1));

        assertThat(rules(StandingCause.class, confirmed(CauseCode.LINING_WORN_OUT, REAR_LEFT), worn))
                .containsExactly("OUT-007");
        assertThat(rules(StandingCause.class, confirmed(CauseCode.AIR_IN_CIRCUIT, Place.ofCircuit(1)), bleeding))
                .containsExactly("OUT-008");
        assertThat(rules(StandingCause.class, confirmed(CauseCode.LINING_GLAZED, REAR_LEFT), worn))
                .isEmpty();
    }

    @Test
    void required_work_that_was_refused_or_put_off_is_said_whatever_the_level() {
        Object line = proposed(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR);
        Object advised = proposed(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.RECOMMENDED);
        Object refused = decided(SHOES, Decision.REFUSED);

        assertThat(rules(RefusedWork.class, line, refused)).containsExactly("OUT-285");
        assertThat(rules(RefusedWork.class, line, decided(SHOES, Decision.LATER)))
                .containsExactly("OUT-286");
        assertThat(rules(RefusedWork.class, line, decided(SHOES, Decision.AGREED)))
                .isEmpty();
        assertThat(rules(RefusedWork.class, advised, refused)).isEmpty();
        assertThat(rules(RefusedWork.class, line, refused, new LineDone(SHOES))).isEmpty();
        assertThat(levels(List.of(line, refused))).contains("OUT-287 repair-before-use");
    }

    @Test
    void half_of_the_minimum_efficiency_stops_the_vehicle_whatever_the_regime_calls_it() {
        Object clause = clause(ClauseCode.EFFICIENCY_DANGER_SHARE, "0.5");

        assertThat(levels(List.of(clause, efficiency("0.49")))).contains("OUT-293 do-not-drive");
        assertThat(levels(List.of(clause, efficiency("0.50")))).doesNotContain("OUT-293 do-not-drive");
        assertThat(levels(List.of(efficiency("0.49")))).doesNotContain("OUT-293 do-not-drive");
        assertThat(levels(List.of(
                        clause,
                        new StandingDeficiency(
                                DeficiencyCode.SERVICE_EFFICIENCY,
                                Place.VEHICLE,
                                null,
                                new BigDecimal("0.49"),
                                "half of what the policy asks for",
                                true))))
                .doesNotContain("OUT-293 do-not-drive");
    }

    private static Object efficiency(String share) {
        return new StandingDeficiency(
                DeficiencyCode.SERVICE_EFFICIENCY, Place.VEHICLE, null, new BigDecimal(share), "efficiency");
    }

    @Test
    void low_fluid_and_a_pedal_fault_weigh_until_they_are_looked_at() {
        Object low = symptom(SymptomCode.FLUID_LOW);
        Object fluid = new StandingDeficiency(
                DeficiencyCode.BRAKE_FLUID_LOW, Place.VEHICLE, DeficiencyClass.MAJOR, null, "fluid low");
        Object steered = new StandingDeficiency(
                DeficiencyCode.SERVICE_IMBALANCE, FRONT, DeficiencyClass.MAJOR, null, "imbalance at axle 1");
        Object pedal = found(Component.PEDAL, Condition.SPONGY, Place.VEHICLE);

        assertThat(levels(List.of(low))).contains("OUT-215 repair-before-use");
        assertThat(levels(List.of(low, found(Component.BRAKE_FLUID, Condition.SOUND, Place.VEHICLE))))
                .doesNotContain("OUT-215 repair-before-use");
        assertThat(rules(DeficiencyInForce.class, fluid, found(Component.BRAKE_FLUID, Condition.LOW, Place.VEHICLE)))
                .containsExactly("OUT-010");
        assertThat(rules(DeficiencyInForce.class, fluid)).isEmpty();
        assertThat(levels(List.of(steered, pedal, discFront()))).contains("OUT-280 do-not-drive");
        assertThat(levels(List.of(deficiency(DeficiencyClass.MAJOR), pedal, discFront())))
                .doesNotContain("OUT-280 do-not-drive");
    }

    @Test
    void new_linings_are_allowed_for_once() {
        Object[] facts = {
            compared("0.60", "0.18", true, false),
            clause(ClauseCode.IMBALANCE_TARGET_NOT_BEDDED, "0.20"),
            new RetestRound(REAR, 1),
            new LineDone(SHOES)
        };

        assertThat(rules(BeddingAllowed.class, facts)).containsExactly("OUT-009");
        facts[2] = new RetestRound(REAR, 2);
        assertThat(rules(BeddingAllowed.class, facts)).isEmpty();
    }

    @Test
    void opened_hydraulics_without_a_look_after_the_work_are_a_question() {
        assertThat(rules(OpenQuestion.class, bled())).containsExactly("OUT-115");
        assertThat(rules(OpenQuestion.class, bled(), afterWork(Component.BRAKE_PIPE, Condition.SOUND, REAR_LEFT)))
                .isEmpty();
    }

    private static Object bled() {
        return new LineDone(new LineKey(ScopeAction.BLEED, ScopeItem.BRAKE_FLUID, Place.ofCircuit(1)));
    }

    /** Shoes and what rules of the scope make follow from them, all done. */
    private static LineDone allDone() {
        return new LineDone(SHOES);
    }

    private static Object effect(CauseCode code) {
        return new SettledCause(code, REAR_RIGHT, CauseStanding.CONFIRMED, false);
    }

    private static Object tested(Stage stage, String imbalance) {
        return new TestedAxle(REAR, BrakeSystem.SERVICE, stage, new BigDecimal(imbalance));
    }

    private static List<Object> wellTested() {
        return List.of(
                van(),
                discFront(),
                drumRear(),
                new TestedAxle(FRONT, BrakeSystem.SERVICE, Stage.ARRIVAL, null),
                new TestedAxle(REAR, BrakeSystem.SERVICE, Stage.FINAL, null),
                new TestedAxle(REAR, BrakeSystem.PARKING, Stage.FINAL, null));
    }

    private static Object deficiency(@Nullable DeficiencyClass severity) {
        return new StandingDeficiency(DeficiencyCode.SERVICE_IMBALANCE, REAR, severity, null, "imbalance at axle 2");
    }

    private static Object ofPolicy() {
        return new StandingDeficiency(DeficiencyCode.SERVICE_IMBALANCE, REAR, null, null, "imbalance at axle 2", true);
    }

    private static Object symptom(SymptomCode code) {
        return new StandingSymptom(code, Place.VEHICLE, Strength.CLEAR, code.toString());
    }

    private static Object wet(String share) {
        return measured(Component.BRAKE_FLUID, Place.VEHICLE, MeasuredQuantity.FLUID_WATER_CONTENT, share, null);
    }

    private static Object pad(String metres) {
        return measured(Component.PAD, FRONT_LEFT, MeasuredQuantity.PAD_THICKNESS, metres, null);
    }

    private static Object lining(String metres) {
        return measured(Component.SHOE_LINING, REAR_LEFT, MeasuredQuantity.LINING_THICKNESS, metres, null);
    }

    /** Service imbalance of the rear axle at arrival, conspicuous from 20 % on, and at the final test. */
    private static RetestComparison compared(
            String before, String after, boolean withinLimit, @Nullable Boolean withinTarget) {
        return figure(FigureKind.IMBALANCE, REAR, before, after, withinLimit, withinTarget);
    }

    private static RetestComparison figure(
            FigureKind kind,
            Place place,
            String before,
            @Nullable String after,
            boolean withinLimit,
            @Nullable Boolean withinTarget) {
        return new RetestComparison(
                kind,
                BrakeSystem.SERVICE,
                place,
                new BigDecimal(before),
                after == null ? null : new BigDecimal(after),
                new BigDecimal(before).compareTo(new BigDecimal("0.20")) >= 0,
                withinLimit,
                withinTarget,
                new BigDecimal("0.30"),
                new BigDecimal("0.15"));
    }

    private static Row part(
            String rule, String level, Component component, Condition condition, @Nullable Extent extent) {
        Object state = extent == null
                ? found(component, condition, REAR_LEFT)
                : found(component, condition, REAR_LEFT, extent);
        return row(rule, level, List.of(state), List.of(found(component, Condition.SOUND, REAR_LEFT)));
    }

    private static Row row(String rule, String concludes, List<Object> given, List<Object> justNot) {
        return new Row(rule, concludes, given, justNot);
    }

    private static List<Object> with(List<Object> facts, Object... more) {
        List<Object> all = new ArrayList<>(facts);
        all.addAll(List.of(more));
        return all;
    }

    private static List<String> levels(List<Object> facts) {
        Stream<String> fitness = RULES.given(facts.toArray()).concluded(FitnessGround.class).stream()
                .map(ground -> ground.because().rule() + " " + ground.level());
        Stream<String> signs = RULES.given(facts.toArray()).concluded(VerificationGround.class).stream()
                .map(ground -> ground.because().rule() + " " + ground.sign());
        return Stream.concat(fitness, signs).distinct().toList();
    }

    private static List<String> rules(Class<? extends Conclusion> type, Object... facts) {
        return RULES.given(facts).concluded(type).stream()
                .map(conclusion -> conclusion.because().rule())
                .distinct()
                .toList();
    }
}
