package org.axlecause.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.inference.RuleBench.shownBy;
import static org.axlecause.rules.Workshop.REAR;
import static org.axlecause.rules.Workshop.REAR_LEFT;
import static org.axlecause.rules.Workshop.clause;
import static org.axlecause.rules.Workshop.found;
import static org.axlecause.rules.Workshop.measured;
import static org.axlecause.rules.Workshop.van;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.axlecause.facts.AwaitedEvidence;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Departure;
import org.axlecause.facts.DueLine;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.FluidRenewed;
import org.axlecause.facts.LineDone;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.NeededEvidence;
import org.axlecause.facts.OpenLine;
import org.axlecause.facts.PhotoTaken;
import org.axlecause.facts.Place;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.Verified;
import org.axlecause.inference.RuleBench;
import org.junit.jupiter.api.Test;

/** What a policy asks for beyond the trade, each rule in both directions. */
class AskedByPolicyRulesTest {

    private static final RuleBench RULES = RuleBench.forFolder("scope");
    private static final RuleBench WITH_OUTCOME = RuleBench.forFolder("scope", "outcome");
    private static final LineKey DRUMS = new LineKey(ScopeAction.RENEW, ScopeItem.DRUM, REAR);
    private static final LineKey OTHER_CYLINDER =
            new LineKey(ScopeAction.RENEW, ScopeItem.WHEEL_CYLINDER, Workshop.REAR_RIGHT);

    @Test
    void a_line_waits_for_the_measurement_that_the_policy_wants_first() {
        NeededEvidence needed = new NeededEvidence(ScopeAction.RENEW, ScopeItem.DRUM, MeasuredQuantity.DRUM_DIAMETER);
        Object cracked = found(Component.DRUM, Condition.CRACKED, REAR_LEFT);
        Object diameter = measured(Component.DRUM, REAR_LEFT, MeasuredQuantity.DRUM_DIAMETER, "0.2031", null);
        Object ofFront = measured(Component.DRUM, Workshop.FRONT_LEFT, MeasuredQuantity.DRUM_DIAMETER, "0.2031", null);

        assertThat(RULES.given(cracked, needed, ofFront, van()).concluded(AwaitedEvidence.class))
                .singleElement()
                .satisfies(shownBy("SCO-841"))
                .returns(DRUMS, AwaitedEvidence::line)
                .returns("the measured drum-diameter", AwaitedEvidence::what);
        assertThat(RULES.given(cracked, needed, diameter, van()).concluded(AwaitedEvidence.class))
                .isEmpty();
        assertThat(RULES.given(cracked, needed, new LineDone(DRUMS), van()).concluded(AwaitedEvidence.class))
                .isEmpty();
        assertThat(RULES.given(cracked, needed, new Departure(ClauseCode.NEEDED_MEASUREMENT, DRUMS), van())
                        .concluded(AwaitedEvidence.class))
                .isEmpty();
        assertThat(RULES.given(needed, van()).concluded(AwaitedEvidence.class)).isEmpty();
    }

    @Test
    void a_line_waits_for_the_photo_that_the_policy_wants_first() {
        NeededEvidence needed = new NeededEvidence(ScopeAction.RENEW, ScopeItem.DRUM, null);
        Object cracked = found(Component.DRUM, Condition.CRACKED, REAR_LEFT);
        EntryId look = new EntryId("/sites/quay-street", "f-1");

        assertThat(RULES.given(cracked, needed, new PhotoTaken(look, ScopeItem.SHOE_SET, REAR_LEFT), van())
                        .concluded(AwaitedEvidence.class))
                .singleElement()
                .satisfies(shownBy("SCO-842"))
                .returns("a photo of the drum", AwaitedEvidence::what);
        assertThat(RULES.given(cracked, needed, new PhotoTaken(look, ScopeItem.DRUM, REAR_LEFT), van())
                        .concluded(AwaitedEvidence.class))
                .isEmpty();
        assertThat(RULES.given(cracked, needed, new Departure(ClauseCode.NEEDED_PHOTO, null), van())
                        .concluded(AwaitedEvidence.class))
                .isEmpty();
    }

    @Test
    void a_twin_cylinder_is_required_from_the_age_of_the_policy_on() {
        Object leaking = found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_LEFT);
        PolicyClause fromTen = clause(ClauseCode.TWIN_HYDRAULIC_REQUIRED_AGE, "10");
        Object tenYearsOld = van(CircuitSplit.DIAGONAL, LocalDate.of(2016, 3, 2), null, true);
        Object younger = van(CircuitSplit.DIAGONAL, LocalDate.of(2016, 3, 3), null, true);
        Object ofUnknownAge = van(CircuitSplit.DIAGONAL, null, null, true);

        assertThat(lines(leaking, fromTen, tenYearsOld)).contains("renew wheel-cylinder at axle 2 right (required)");
        assertThat(lines(leaking, fromTen, younger)).doesNotContain("renew wheel-cylinder at axle 2 right (required)");
        assertThat(lines(leaking, fromTen, ofUnknownAge))
                .doesNotContain("renew wheel-cylinder at axle 2 right (required)");
        assertThat(RULES.given(leaking, fromTen, tenYearsOld).concluded(ScopeProposal.class))
                .filteredOn(line -> line.clause() == ClauseCode.TWIN_HYDRAULIC_REQUIRED_AGE)
                .singleElement()
                .satisfies(shownBy("SCO-851"));
    }

    @Test
    void pipes_are_renewed_as_far_as_the_policy_says() {
        Object corroded = found(Component.BRAKE_PIPE, Condition.LEAKING, REAR_LEFT);

        assertThat(pipes(corroded, extent(ScopeExtent.WHEEL))).containsExactly("SCO-208 axle 2 left");
        assertThat(pipes(corroded, extent(ScopeExtent.AXLE)))
                .containsExactlyInAnyOrder("SCO-208 axle 2 left", "SCO-852 axle 2");
        assertThat(pipes(corroded, extent(ScopeExtent.VEHICLE)))
                .containsExactlyInAnyOrder("SCO-208 axle 2 left", "SCO-853 vehicle");
        assertThat(pipes(extent(ScopeExtent.AXLE))).isEmpty();
    }

    @Test
    void fluid_is_renewed_by_the_calendar() {
        PolicyClause twoYears = clause(ClauseCode.FLUID_AGE, "2");
        PolicyClause recommended = clause(ClauseCode.FLUID_RENEWAL, Necessity.RECOMMENDED);
        FluidRenewed twoYearsAgo = new FluidRenewed(LocalDate.of(2024, 3, 2), new BigDecimal("2"));
        FluidRenewed later = new FluidRenewed(LocalDate.of(2024, 3, 3), new BigDecimal("1"));

        assertThat(RULES.given(twoYears, recommended, twoYearsAgo).concluded(ScopeProposal.class))
                .filteredOn(line -> line.item() == ScopeItem.BRAKE_FLUID)
                .singleElement()
                .satisfies(shownBy("SCO-854"))
                .returns(ScopeItem.BRAKE_FLUID, ScopeProposal::item)
                .returns(Necessity.RECOMMENDED, ScopeProposal::necessity);
        assertThat(lines(twoYears, recommended, later)).isEmpty();
        assertThat(lines(twoYears, recommended)).isEmpty();
        assertThat(lines(twoYears, twoYearsAgo)).isEmpty();
    }

    @Test
    void what_is_departed_from_is_not_due_and_not_open_and_what_the_trade_calls_for_stays() {
        Object leaking = found(Component.WHEEL_CYLINDER, Condition.LEAKING, REAR_LEFT);
        PolicyClause required = clause(ClauseCode.TWIN_HYDRAULIC_PART, Necessity.REQUIRED);
        Departure onTheTwin = new Departure(ClauseCode.TWIN_HYDRAULIC_PART, OTHER_CYLINDER);
        Departure onAnotherLine = new Departure(ClauseCode.TWIN_HYDRAULIC_PART, DRUMS);
        Departure everywhere = new Departure(ClauseCode.TWIN_HYDRAULIC_PART, null);
        Object twinTight = found(Component.WHEEL_CYLINDER, Condition.TIGHT, Workshop.REAR_RIGHT);

        assertThat(due(leaking, required)).contains(OTHER_CYLINDER);
        assertThat(due(leaking, required, onAnotherLine)).contains(OTHER_CYLINDER);
        assertThat(due(leaking, required, onTheTwin)).doesNotContain(OTHER_CYLINDER);
        assertThat(due(leaking, required, everywhere)).doesNotContain(OTHER_CYLINDER);
        assertThat(due(leaking, required, onTheTwin, twinTight)).contains(OTHER_CYLINDER);
        assertThat(open(leaking, required)).contains(OTHER_CYLINDER);
        assertThat(open(leaking, required, onTheTwin)).doesNotContain(OTHER_CYLINDER);
        assertThat(open(leaking, required, onTheTwin, twinTight)).contains(OTHER_CYLINDER);
    }

    private static PolicyClause extent(ScopeExtent extent) {
        return new PolicyClause(
                ClauseCode.PIPE_EXTENT, null, null, extent, "workshop habit", Verified.COMMON_PRACTICE, false);
    }

    private static List<String> pipes(Object... facts) {
        return RULES.given(facts).and(van()).concluded(ScopeProposal.class).stream()
                .filter(line -> line.item() == ScopeItem.BRAKE_PIPE)
                .map(line ->
                        line.because().rule() + " " + (line.place().equals(Place.VEHICLE) ? "vehicle" : line.place()))
                .toList();
    }

    private static List<String> lines(Object... facts) {
        return RULES.given(facts).concluded(ScopeProposal.class).stream()
                .map(ScopeProposal::shown)
                .toList();
    }

    private static List<LineKey> due(Object... facts) {
        return RULES.given(facts).and(van()).concluded(DueLine.class).stream()
                .map(DueLine::line)
                .toList();
    }

    private static List<LineKey> open(Object... facts) {
        return WITH_OUTCOME.given(facts).and(van()).concluded(OpenLine.class).stream()
                .map(OpenLine::line)
                .toList();
    }
}
