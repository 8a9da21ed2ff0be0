package org.axlecause.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.inference.RuleBench.shownBy;
import static org.axlecause.rules.Workshop.FRONT_LEFT;
import static org.axlecause.rules.Workshop.REAR;
import static org.axlecause.rules.Workshop.REAR_LEFT;
import static org.axlecause.rules.Workshop.REAR_RIGHT;
import static org.axlecause.rules.Workshop.clause;
import static org.axlecause.rules.Workshop.confirmed;
import static org.axlecause.rules.Workshop.decided;
import static org.axlecause.rules.Workshop.discFront;
import static org.axlecause.rules.Workshop.drumRear;
import static org.axlecause.rules.Workshop.found;
import static org.axlecause.rules.Workshop.measured;
import static org.axlecause.rules.Workshop.obstacle;
import static org.axlecause.rules.Workshop.openedDrumRear;
import static org.axlecause.rules.Workshop.suspected;
import static org.axlecause.rules.Workshop.van;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Stream;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Decision;
import org.axlecause.facts.DueLine;
import org.axlecause.facts.GaugeUncertainty;
import org.axlecause.facts.LatelyRenewed;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.UnlookedPart;
import org.axlecause.inference.RuleBench;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The scope rules that hold whatever else changes, and how scope follows decisions and looks. */
class ScopeThatMustHoldTest {

    private static final RuleBench RULES = RuleBench.forFolder("scope");
    private static final Object TWIN = clause(ClauseCode.TWIN_HYDRAULIC_PART, Necessity.RECOMMENDED);

    @Test
    void contaminated_linings_mean_a_full_axle_set_of_shoes_and_cleaned_drums() {
        List<ScopeProposal> scope = scope(found(Component.SHOE_LINING, Condition.SOAKED, REAR_LEFT), drumRear());

        assertThat(scope)
                .filteredOn(line -> line.item() == ScopeItem.SHOE_SET && line.action() == ScopeAction.RENEW)
                .singleElement()
                .returns(REAR, ScopeProposal::place)
                .returns(Necessity.REQUIRED, ScopeProposal::necessity)
                .satisfies(shownBy("SCO-161", "shoe-lining soaked at axle 2 left"));
        assertThat(words(scope)).contains("clean drum at axle 2 (required)");
    }

    @Test
    void a_policy_can_want_the_drums_of_contaminated_linings_renewed() {
        List<ScopeProposal> scope = scope(
                found(Component.SHOE_LINING, Condition.SOAKED, REAR_LEFT),
                drumRear(),
                clause(ClauseCode.CONTAMINATED_DRUM, Necessity.REQUIRED));

        assertThat(words(scope)).contains("renew drum at axle 2 (required)");
    }

    @Test
    void soiled_pads_mean_a_full_axle_set_of_pads() {
        List<ScopeProposal> scope = scope(found(Component.PAD, Condition.SOAKED, FRONT_LEFT), discFront());

        assertThat(scope)
                .filteredOn(line -> line.item() == ScopeItem.PAD_SET)
                .singleElement()
                .satisfies(shownBy("SCO-164", "pad soaked at axle 1 left"));
    }

    @Test
    void one_leaking_cylinder_is_renewed_and_its_twin_recommended() {
        List<ScopeProposal> scope =
                scope(confirmed(CauseCode.WHEEL_CYLINDER_LEAKING, REAR_LEFT), TWIN, drumRear(), van());

        assertThat(words(cylinders(scope)))
                .containsExactlyInAnyOrder(
                        "renew wheel-cylinder at axle 2 left (required)",
                        "renew wheel-cylinder at axle 2 right (recommended)");
        assertThat(cylinders(scope))
                .filteredOn(line -> line.place().equals(REAR_RIGHT))
                .singleElement()
                .returns(ClauseCode.TWIN_HYDRAULIC_PART, ScopeProposal::clause)
                .satisfies(shownBy(
                        "SCO-202",
                        "wheel-cylinder-leaking confirmed at axle 2 left",
                        "policy clause twin-hydraulic-part"));
    }

    @ParameterizedTest
    @EnumSource(
            value = Condition.class,
            names = {"TIGHT", "SEIZED", "PITTED", "LEAKING"})
    void the_twin_of_a_leaking_cylinder_becomes_required_when_it_is_found_bad_as_well(Condition condition) {
        List<ScopeProposal> scope = scope(
                confirmed(CauseCode.WHEEL_CYLINDER_LEAKING, REAR_LEFT),
                found(Component.WHEEL_CYLINDER, condition, REAR_RIGHT),
                TWIN,
                drumRear(),
                van());

        assertThat(words(cylinders(scope))).contains("renew wheel-cylinder at axle 2 right (required)");
    }

    @ParameterizedTest
    @EnumSource(
            value = Condition.class,
            names = {"TIGHT", "SEIZED", "PITTED", "LEAKING"})
    void a_leaking_pitted_or_seized_hydraulic_piston_is_never_just_freed(Condition condition) {
        for (Component component : List.of(Component.WHEEL_CYLINDER, Component.CALLIPER)) {
            Place wheel = component == Component.CALLIPER ? FRONT_LEFT : REAR_LEFT;
            List<ScopeProposal> scope = scope(found(component, condition, wheel), TWIN, drumRear(), discFront(), van());

            assertThat(scope)
                    .filteredOn(line -> line.item() == ScopeItem.WHEEL_CYLINDER || line.item() == ScopeItem.CALLIPER)
                    .isNotEmpty()
                    .allSatisfy(line -> assertThat(line.action()).isEqualTo(ScopeAction.RENEW));
        }
    }

    @Test
    void no_rule_of_the_scope_frees_or_cleans_a_hydraulic_part() {
        List<Object> everything = Stream.concat(
                        ScopeRulesTest.causes().flatMap(row -> row.given().stream()),
                        ScopeRulesTest.states().flatMap(row -> row.given().stream()))
                .distinct()
                .toList();

        assertThat(RULES.given(everything.toArray()).concluded(ScopeProposal.class))
                .filteredOn(line -> line.action() == ScopeAction.FREE || line.action() == ScopeAction.CLEAN)
                .extracting(ScopeProposal::item)
                .isNotEmpty()
                .isSubsetOf(
                        ScopeItem.ADJUSTER,
                        ScopeItem.PEDAL_LINKAGE,
                        ScopeItem.BLEED_NIPPLE,
                        ScopeItem.SLIDE_PIN_KIT,
                        ScopeItem.HARDWARE_KIT,
                        ScopeItem.PAD_SET,
                        ScopeItem.PARKING_EQUALISER,
                        ScopeItem.DRUM,
                        ScopeItem.DISC,
                        ScopeItem.SHOE_SET,
                        ScopeItem.HUB_FACE);
    }

    @Test
    void a_union_that_turns_its_pipe_means_a_new_pipe_on_that_side() {
        List<ScopeProposal> scope = scope(
                obstacle(Component.PIPE_UNION, Condition.TURNS_WITH_PIPE, REAR_LEFT),
                clause(ClauseCode.TWIN_BRAKE_PIPE, Necessity.RECOMMENDED));

        assertThat(scope)
                .filteredOn(line -> line.item() == ScopeItem.BRAKE_PIPE && line.necessity() == Necessity.REQUIRED)
                .singleElement()
                .returns(ScopeAction.FABRICATE, ScopeProposal::action)
                .returns(REAR_LEFT, ScopeProposal::place)
                .satisfies(shownBy("SCO-208", "pipe-union turns-with-pipe at axle 2 left"));
        assertThat(words(scope)).contains("fabricate brake-pipe at axle 2 right (recommended)");
    }

    @Test
    void opened_hydraulics_mean_bleeding_of_that_circuit() {
        List<ScopeProposal> scope = scope(found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_LEFT), van());

        assertThat(scope)
                .filteredOn(line -> line.action() == ScopeAction.BLEED)
                .singleElement()
                .returns(Place.ofCircuit(2), ScopeProposal::place)
                .satisfies(shownBy("SCO-301", "renew wheel-cylinder at axle 2 left"));
    }

    @Test
    void work_on_shoes_means_setting_the_shoes_then_the_parking_brake_then_the_re_test() {
        List<ScopeProposal> scope = scope(found(Component.SHOE_LINING, Condition.WORN, REAR_LEFT), drumRear());

        assertThat(words(scope))
                .contains(
                        "adjust shoe-set at axle 2 (required)",
                        "adjust parking-brake at vehicle (required)",
                        "measure roller-test at vehicle (required)");
    }

    static Stream<Object[]> failedParts() {
        return Stream.of(
                new Object[] {"SCO-201", ScopeItem.WHEEL_CYLINDER, Component.WHEEL_CYLINDER, Condition.TIGHT},
                new Object[] {"SCO-203", ScopeItem.CALLIPER, Component.CALLIPER, Condition.SEIZED},
                new Object[] {"SCO-205", ScopeItem.SLIDE_PIN_KIT, Component.SLIDE_PIN, Condition.SEIZED},
                new Object[] {"SCO-206", ScopeItem.FLEXIBLE_HOSE, Component.FLEXIBLE_HOSE, Condition.CRACKED},
                new Object[] {"SCO-208", ScopeItem.BRAKE_PIPE, Component.BRAKE_PIPE, Condition.LEAKING},
                new Object[] {"SCO-210", ScopeItem.PARKING_CABLE, Component.PARKING_CABLE, Condition.FRAYED},
                new Object[] {"SCO-212", ScopeItem.ADJUSTER, Component.ADJUSTER, Condition.WORN},
                new Object[] {"SCO-214", ScopeItem.HUB_SEAL, Component.HUB_SEAL, Condition.LEAKING},
                new Object[] {"SCO-215", ScopeItem.HUB_BEARING, Component.HUB_BEARING, Condition.WORN},
                new Object[] {"SCO-216", ScopeItem.BLEED_NIPPLE, Component.BLEED_NIPPLE, Condition.ROUNDED},
                new Object[] {"SCO-217", ScopeItem.BACK_PLATE, Component.BACK_PLATE, Condition.CRACKED},
                new Object[] {
                    "SCO-220", ScopeItem.PARKING_ACTUATOR, Component.ELECTRIC_PARKING_ACTUATOR, Condition.BROKEN
                });
    }

    @ParameterizedTest
    @MethodSource("failedParts")
    void a_failed_part_is_required_and_shows_the_finding_behind_it(
            String rule, ScopeItem item, Component component, Condition condition) {
        List<ScopeProposal> scope = scope(found(component, condition, REAR_LEFT));

        assertThat(scope).filteredOn(line -> line.item() == item).first().satisfies(line -> {
            assertThat(line.necessity()).isEqualTo(Necessity.REQUIRED);
            assertThat(line.place()).isEqualTo(REAR_LEFT);
            assertThat(line).satisfies(shownBy(rule, component + " " + condition + " at axle 2 left"));
        });
        assertThat(scope(found(component, Condition.SOUND, REAR_LEFT))).isEmpty();
    }

    @Test
    void an_equaliser_is_one_line_of_the_vehicle_wherever_it_was_named() {
        for (Place place : List.of(REAR, REAR_LEFT, Place.VEHICLE)) {
            assertThat(scope(found(Component.PARKING_EQUALISER, Condition.SEIZED, place)))
                    .filteredOn(line -> line.item() == ScopeItem.PARKING_EQUALISER)
                    .singleElement()
                    .returns(Place.VEHICLE, ScopeProposal::place)
                    .returns(Necessity.REQUIRED, ScopeProposal::necessity)
                    .satisfies(shownBy("SCO-221", "parking-equaliser seized at " + place));
        }
    }

    @Test
    void a_part_named_for_a_whole_axle_is_a_line_for_each_wheel() {
        assertThat(words(scope(found(Component.PARKING_CABLE, Condition.STRETCHED, REAR))))
                .contains(
                        "renew parking-cable at axle 2 left (required)",
                        "renew parking-cable at axle 2 right (required)")
                .noneMatch(line -> line.startsWith("renew parking-cable at axle 2 ("));
        assertThat(words(scope(found(Component.FLEXIBLE_HOSE, Condition.LEAKING, REAR))))
                .contains("renew flexible-hose at axle 2 (required)");
    }

    @Test
    void the_twin_of_a_failed_part_is_not_offered_when_it_was_renewed_lately() {
        Object cause = confirmed(CauseCode.WHEEL_CYLINDER_LEAKING, REAR_LEFT);

        assertThat(words(cylinders(scope(cause, TWIN, new LatelyRenewed(ScopeItem.WHEEL_CYLINDER, REAR_RIGHT)))))
                .containsExactly("renew wheel-cylinder at axle 2 left (required)");
        assertThat(words(cylinders(scope(cause, TWIN, new LatelyRenewed(ScopeItem.WHEEL_CYLINDER, REAR_LEFT)))))
                .contains("renew wheel-cylinder at axle 2 right (recommended)");
    }

    @Test
    void a_reading_that_the_gauge_can_not_tell_from_its_bound_is_asked_for_again() {
        Object gauge = new GaugeUncertainty(MeasuredQuantity.DRUM_DIAMETER, new BigDecimal("0.00003"));
        Object play = new GaugeUncertainty(MeasuredQuantity.HUB_PLAY, new BigDecimal("0.00002"));
        Object clause = clause(ClauseCode.HUB_PLAY, "0.0001");

        assertThat(asked(drum("0.23003", "0.230"), gauge)).containsExactly("SCO-831 axle 2 left");
        assertThat(asked(drum("0.23004", "0.230"), gauge)).isEmpty();
        assertThat(asked(bearing("0.00008"), clause, play)).containsExactly("SCO-832 axle 2 left");
        assertThat(asked(bearing("0.00007"), clause, play)).isEmpty();
        assertThat(asked(bearing("0.00008"), clause)).isEmpty();
    }

    private static Object drum(String value, String limit) {
        return measured(Component.DRUM, REAR_LEFT, MeasuredQuantity.DRUM_DIAMETER, value, limit);
    }

    private static Object bearing(String value) {
        return measured(Component.HUB_BEARING, REAR_LEFT, MeasuredQuantity.HUB_PLAY, value, null);
    }

    private static List<String> asked(Object... facts) {
        return RULES.given(facts).concluded(OpenQuestion.class).stream()
                .filter(question -> question.code() == QuestionCode.TOO_CLOSE_TO_CALL)
                .map(question -> question.because().rule() + " " + question.place())
                .toList();
    }

    @Test
    void a_rounded_nut_and_a_sheared_bolt_are_renewed() {
        assertThat(scope(obstacle(Component.PIPE_UNION, Condition.ROUNDED, REAR_LEFT)))
                .filteredOn(line -> line.item() == ScopeItem.PIPE_NUT)
                .singleElement()
                .satisfies(shownBy("SCO-218", "pipe-union rounded at axle 2 left"));
        assertThat(scope(obstacle(Component.WHEEL_BOLT, Condition.SHEARED, REAR_LEFT)))
                .filteredOn(line -> line.item() == ScopeItem.WHEEL_BOLT)
                .singleElement()
                .satisfies(shownBy("SCO-219", "wheel-bolt sheared at axle 2 left"));
    }

    @Test
    void an_adjuster_that_has_failed_is_not_freed_as_well() {
        List<ScopeProposal> scope = scope(
                confirmed(CauseCode.ADJUSTER_NOT_TAKEN_UP, REAR_LEFT),
                found(Component.ADJUSTER, Condition.SEIZED, REAR_LEFT));

        assertThat(words(scope))
                .contains("renew adjuster at axle 2 left (required)")
                .doesNotContain("free adjuster at axle 2 left (required)");
    }

    @Test
    void what_follows_from_a_recommended_line_is_recommended_until_the_line_is_agreed() {
        Object cause = confirmed(CauseCode.WHEEL_CYLINDER_LEAKING, REAR_LEFT);
        LineKey twin = new LineKey(ScopeAction.RENEW, ScopeItem.WHEEL_CYLINDER, REAR_RIGHT);

        assertThat(words(scope(cause, TWIN, van()))).contains("bleed brake-fluid at circuit 1 (recommended)");
        assertThat(scope(cause, TWIN, van(), decided(twin, Decision.AGREED)))
                .filteredOn(line -> line.place().equals(Place.ofCircuit(1)))
                .singleElement()
                .returns(Necessity.REQUIRED, ScopeProposal::necessity)
                .satisfies(shownBy("SCO-301", "renew wheel-cylinder at axle 2 right (required)"));
    }

    @ParameterizedTest
    @EnumSource(
            value = Decision.class,
            names = {"REFUSED", "LATER"})
    void a_refused_line_stays_proposed_but_takes_its_consequences_along(Decision decision) {
        LineKey cylinder = new LineKey(ScopeAction.RENEW, ScopeItem.WHEEL_CYLINDER, REAR_LEFT);

        List<ScopeProposal> scope =
                scope(found(Component.WHEEL_CYLINDER, Condition.TIGHT, REAR_LEFT), van(), decided(cylinder, decision));

        assertThat(words(scope)).containsExactly("renew wheel-cylinder at axle 2 left (required)");
    }

    @Test
    void both_wheels_of_an_opened_axle_are_looked_at_before_its_scope_is_final() {
        List<OpenQuestion> questions = RULES.given(
                        openedDrumRear(false),
                        found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_LEFT),
                        new UnlookedPart(REAR_RIGHT, Component.WHEEL_CYLINDER, "press the pedal slightly"))
                .concluded(OpenQuestion.class);

        assertThat(questions)
                .filteredOn(question -> question.code() == QuestionCode.PLACE_NOT_LOOKED_AT)
                .singleElement()
                .satisfies(shownBy("SCO-811", "wheel cylinder at axle 2 right not looked at"))
                .returns(REAR_RIGHT, OpenQuestion::place)
                .returns("The wheel cylinder was not looked at well enough to tell.", OpenQuestion::says)
                .returns(
                        "Make this check and record what you find, sound or not, or that it cannot be got at: press the pedal slightly.",
                        OpenQuestion::resolve);
        assertThat(questions)
                .filteredOn(question -> question.code() == QuestionCode.SCOPE_PROVISIONAL)
                .singleElement()
                .satisfies(shownBy("SCO-821", "axle 2 opened"));
    }

    @Test
    void an_axle_looked_at_on_both_sides_leaves_no_question() {
        assertThat(RULES.given(openedDrumRear(true), found(Component.SHOE_LINING, Condition.WORN, REAR_LEFT))
                        .concluded(OpenQuestion.class))
                .isEmpty();
    }

    @Test
    void a_suspected_root_cause_leaves_the_scope_provisional() {
        Object worn = found(Component.SHOE_LINING, Condition.WORN, REAR_LEFT);

        assertThat(RULES.given(suspected(CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT, REAR_LEFT), worn)
                        .concluded(OpenQuestion.class))
                .singleElement()
                .satisfies(shownBy("SCO-822", "wheel-cylinder-pistons-tight suspected at axle 2 left"));
        assertThat(RULES.given(confirmed(CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT, REAR_LEFT), worn)
                        .concluded(OpenQuestion.class))
                .isEmpty();
    }

    @Test
    void a_new_part_that_differs_from_the_old_one_stops_the_work_at_a_safe_point() {
        assertThat(RULES.given(obstacle(Component.WHEEL_CYLINDER, Condition.WRONG_PART, REAR_LEFT))
                        .concluded(OpenQuestion.class))
                .singleElement()
                .satisfies(shownBy("SCO-422", "wheel-cylinder wrong-part"));
        assertThat(RULES.given(obstacle(Component.ELECTRIC_PARKING_ACTUATOR, Condition.BLOCKED, REAR_LEFT))
                        .concluded(OpenQuestion.class))
                .singleElement()
                .satisfies(shownBy("SCO-423", "electric-parking-actuator blocked"));
        assertThat(RULES.given(obstacle(Component.WHEEL_CYLINDER, Condition.STRIPPED, REAR_LEFT))
                        .concluded(OpenQuestion.class))
                .isEmpty();
    }

    @Test
    void due_lines_follow_the_decisions_on_their_lines() {
        LineKey shoes = new LineKey(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR);
        Object worn = found(Component.SHOE_LINING, Condition.WORN, REAR_LEFT);

        assertThat(due(shoes, worn)).containsExactly("SCO-001");
        assertThat(due(shoes, worn, decided(shoes, Decision.AGREED))).containsExactly("SCO-002");
        assertThat(due(shoes, worn, decided(shoes, Decision.REFUSED))).isEmpty();
    }

    private static List<String> due(LineKey line, Object... facts) {
        return RULES.given(facts).concluded(DueLine.class).stream()
                .filter(due -> due.line().equals(line))
                .map(due -> due.because().rule())
                .toList();
    }

    private static List<ScopeProposal> scope(Object... facts) {
        return RULES.given(facts).concluded(ScopeProposal.class);
    }

    private static List<ScopeProposal> cylinders(List<ScopeProposal> scope) {
        return scope.stream()
                .filter(line -> line.item() == ScopeItem.WHEEL_CYLINDER)
                .toList();
    }

    private static List<String> words(List<ScopeProposal> scope) {
        return scope.stream().map(ScopeProposal::shown).distinct().toList();
    }
}
