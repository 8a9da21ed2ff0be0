package org.axlecause.repair;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.axlecause.facts.Because;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.CautionProposal;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Decision;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.LineDone;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.LineStanding;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Party;
import org.axlecause.facts.Place;
import org.axlecause.facts.PriceList;
import org.axlecause.facts.Reason;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.Side;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.StepProposal;
import org.axlecause.facts.WorkOutcome;
import org.axlecause.facts.WorkReported;
import org.axlecause.shared.Json;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PlanRepairTest {

    private static final PlanRepair PLAN = new PlanRepair(RepairCatalogue.onClassPath());

    private static final Place REAR = Place.ofAxle(2);
    private static final Place LEFT = Place.ofWheel(2, Side.LEFT);
    private static final Place RIGHT = Place.ofWheel(2, Side.RIGHT);

    /** Invented prices of a workshop on the quay; hours are whole tenths. */
    private static final PriceList PRICES = new PriceList(
            "quay-street",
            3,
            "GBP",
            new BigDecimal("72.00"),
            new BigDecimal("0.20"),
            Map.of(
                    ScopeItem.SHOE_SET, new BigDecimal("48.55"),
                    ScopeItem.WHEEL_CYLINDER, new BigDecimal("19.99"),
                    ScopeItem.BRAKE_FLUID, new BigDecimal("11.25")),
            Map.of(
                    "renew shoe-set", new BigDecimal("1.5"),
                    "renew wheel-cylinder", new BigDecimal("0.5"),
                    "bleed brake-fluid", new BigDecimal("0.4"),
                    "renew drum", new BigDecimal("0.3")));

    @Test
    void proposals_for_one_line_become_one_line_with_the_strongest_necessity_and_all_grounds() {
        RepairPlan plan = plan(List.of(
                line(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.RECOMMENDED, "SCO-175"),
                line(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.REQUIRED, "SCO-161"),
                line(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.REQUIRED, "SCO-161")));

        assertThat(plan.lines()).singleElement().satisfies(only -> {
            assertThat(only.id()).isEqualTo("renew-shoe-set-axle-2");
            assertThat(only.necessity()).isEqualTo(Necessity.REQUIRED);
            assertThat(only.standing()).isEqualTo(LineStanding.PROPOSED);
            assertThat(only.quantity()).isEqualTo(new Measure(BigDecimal.ONE, "1", "axle set of four shoes"));
            assertThat(only.because()).extracting(Reason::rule).containsExactly("SCO-161", "SCO-175");
        });
    }

    @Test
    void a_clause_stands_on_a_line_only_while_it_decides_the_line() {
        ScopeProposal twin = new ScopeProposal(
                ScopeAction.RENEW,
                ScopeItem.WHEEL_CYLINDER,
                RIGHT,
                ScopeExtent.WHEEL,
                Necessity.RECOMMENDED,
                ClauseCode.TWIN_HYDRAULIC_PART,
                because("SCO-202"));
        ScopeProposal tight = line(ScopeAction.RENEW, ScopeItem.WHEEL_CYLINDER, RIGHT, Necessity.REQUIRED, "SCO-201");

        assertThat(plan(List.of(twin)).lines())
                .singleElement()
                .returns(ClauseCode.TWIN_HYDRAULIC_PART, ScopeLine::policyClause);
        assertThat(plan(List.of(twin, tight)).lines())
                .singleElement()
                .returns(null, ScopeLine::policyClause)
                .returns(Necessity.REQUIRED, ScopeLine::necessity);
    }

    @Test
    void a_renewed_cylinder_takes_its_nipple_along_and_shows_why() {
        RepairPlan plan = plan(List.of(
                line(ScopeAction.RENEW, ScopeItem.WHEEL_CYLINDER, LEFT, Necessity.REQUIRED, "SCO-201"),
                line(ScopeAction.RENEW, ScopeItem.BLEED_NIPPLE, LEFT, Necessity.REQUIRED, "SCO-216")));

        assertThat(plan.lines()).singleElement().satisfies(only -> {
            assertThat(only.item()).isEqualTo(ScopeItem.WHEEL_CYLINDER);
            assertThat(only.because()).extracting(Reason::rule).containsExactly("SCO-201", "SCO-216");
        });
    }

    @Test
    void a_cylinder_takes_no_nipple_of_the_other_side_along() {
        RepairPlan plan = plan(List.of(
                line(ScopeAction.RENEW, ScopeItem.WHEEL_CYLINDER, LEFT, Necessity.REQUIRED, "SCO-201"),
                line(ScopeAction.RENEW, ScopeItem.BLEED_NIPPLE, RIGHT, Necessity.REQUIRED, "SCO-216")));

        assertThat(ids(plan)).containsExactly("renew-wheel-cylinder-axle-2-left", "renew-bleed-nipple-axle-2-right");
    }

    @Test
    void a_required_job_never_hides_in_an_advised_one() {
        List<ScopeProposal> scope = List.of(
                line(ScopeAction.RENEW, ScopeItem.DRUM, REAR, Necessity.RECOMMENDED, "SCO-163"),
                line(ScopeAction.CLEAN, ScopeItem.DRUM, REAR, Necessity.REQUIRED, "SCO-162"));

        assertThat(ids(plan(scope))).containsExactlyInAnyOrder("renew-drum-axle-2", "clean-drum-axle-2");
        assertThat(ids(plan(scope, agreed("renew-drum-axle-2")))).containsExactly("renew-drum-axle-2");
    }

    @Test
    void a_decided_line_never_vanishes() {
        LineDecision clean = agreed("clean-drum-axle-2");
        LineDecision gone = decided("renew-hardware-kit-axle-2", Decision.REFUSED, Necessity.RECOMMENDED);
        RepairPlan plan = plan(
                List.of(
                        line(ScopeAction.RENEW, ScopeItem.DRUM, REAR, Necessity.REQUIRED, "SCO-183"),
                        line(ScopeAction.CLEAN, ScopeItem.DRUM, REAR, Necessity.REQUIRED, "SCO-162")),
                clean,
                gone);

        assertThat(plan.lines())
                .filteredOn(line -> line.id().equals("clean-drum-axle-2"))
                .singleElement()
                .returns(LineStanding.MERGED_INTO, ScopeLine::standing)
                .returns("renew-drum-axle-2", ScopeLine::mergedInto);
        assertThat(plan.lines())
                .filteredOn(line -> line.id().equals("renew-hardware-kit-axle-2"))
                .singleElement()
                .returns(LineStanding.NO_LONGER_NEEDED, ScopeLine::standing)
                .returns(Necessity.RECOMMENDED, ScopeLine::necessity);
    }

    @ParameterizedTest
    @EnumSource(Decision.class)
    void the_last_decision_on_a_line_stands(Decision last) {
        Decision first = last == Decision.AGREED ? Decision.REFUSED : Decision.AGREED;
        RepairPlan plan = plan(
                List.of(line(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.REQUIRED, "SCO-161")),
                decided("renew-shoe-set-axle-2", first, Necessity.REQUIRED),
                decided("renew-shoe-set-axle-2", last, Necessity.REQUIRED));

        assertThat(plan.lines())
                .singleElement()
                .satisfies(line -> assertThat(line.standing()).hasToString(last.toString()))
                .satisfies(line -> assertThat(line.isPlanned()).isEqualTo(last == Decision.AGREED));
    }

    @Test
    void what_changed_since_the_customer_last_agreed_is_marked() {
        List<ScopeProposal> scope = List.of(
                line(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.REQUIRED, "SCO-161"),
                line(ScopeAction.RENEW, ScopeItem.WHEEL_CYLINDER, RIGHT, Necessity.REQUIRED, "SCO-201"),
                line(ScopeAction.FABRICATE, ScopeItem.BRAKE_PIPE, LEFT, Necessity.REQUIRED, "SCO-208"));
        RepairPlan plan = plan(
                scope,
                agreed("renew-shoe-set-axle-2"),
                decided("renew-wheel-cylinder-axle-2-right", Decision.AGREED, Necessity.RECOMMENDED));

        assertThat(plan.lines())
                .extracting(line -> line.id() + " " + line.sinceAgreement())
                .containsExactlyInAnyOrder(
                        "renew-shoe-set-axle-2 null",
                        "renew-wheel-cylinder-axle-2-right changed",
                        "fabricate-brake-pipe-axle-2-left added");
        assertThat(plan(scope).lines()).extracting(ScopeLine::sinceAgreement).containsOnlyNulls();
    }

    @Test
    void a_line_for_an_axle_is_done_when_its_step_is_done_on_both_sides() {
        ReportedStep left = new ReportedStep(StepCode.FIT_SHOES, LEFT, WorkOutcome.DONE);
        ReportedStep right = new ReportedStep(StepCode.FIT_SHOES, RIGHT, WorkOutcome.DONE);
        ReportedStep impossible = new ReportedStep(StepCode.FIT_SHOES, RIGHT, WorkOutcome.NOT_POSSIBLE);
        LineKey shoes = new LineKey(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR);

        assertThat(PLAN.linesDone(List.of(left, right), Set.of())).contains(new LineDone(shoes));
        assertThat(PLAN.linesDone(List.of(left), Set.of())).isEmpty();
        assertThat(PLAN.linesDone(List.of(left, impossible), Set.of())).isEmpty();
    }

    @Test
    void work_that_includes_another_line_does_that_line_too() {
        ReportedStep drums = new ReportedStep(StepCode.RENEW_DRUM, REAR, WorkOutcome.DONE);

        assertThat(PLAN.linesDone(List.of(drums), Set.of()))
                .contains(
                        new LineDone(new LineKey(ScopeAction.RENEW, ScopeItem.DRUM, REAR)),
                        new LineDone(new LineKey(ScopeAction.CLEAN, ScopeItem.DRUM, REAR)));
    }

    @Test
    void a_line_costs_its_part_and_its_hours_with_tax() {
        RepairPlan plan =
                plan(List.of(line(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.REQUIRED, "SCO-161")));

        // 48.55 + 1.5 h x 72.00 = 156.55; 20 % of it = 31.31
        assertThat(plan.lines().get(0).estimate())
                .isEqualTo(estimate(
                        pounds("156.55"), pounds("31.31"), pounds("187.86"), new BigDecimal("1.5"), List.of(), null));
    }

    @Test
    void a_part_counts_by_its_quantity() {
        RepairPlan plan = plan(List.of(
                line(ScopeAction.BLEED, ScopeItem.BRAKE_FLUID, Place.ofCircuit(2), Necessity.REQUIRED, "SCO-301")));

        // 0.7 L x 11.25 = 7.875; + 0.4 h x 72.00 = 28.80; together 36.675, half a penny up; 20 % of 36.68 = 7.336
        assertThat(plan.lines().get(0).estimate())
                .isEqualTo(estimate(
                        pounds("36.68"), pounds("7.34"), pounds("44.02"), new BigDecimal("0.4"), List.of(), null));
    }

    @Test
    void a_missing_price_is_missing_and_never_nothing() {
        RepairPlan plan = plan(List.of(
                line(ScopeAction.RENEW, ScopeItem.DRUM, REAR, Necessity.REQUIRED, "SCO-183"),
                line(ScopeAction.FABRICATE, ScopeItem.BRAKE_PIPE, LEFT, Necessity.REQUIRED, "SCO-208")));

        assertThat(plan.lines())
                .extracting(ScopeLine::estimate)
                .containsExactlyInAnyOrder(
                        estimate(
                                pounds("21.60"),
                                pounds("4.32"),
                                pounds("25.92"),
                                new BigDecimal("0.3"),
                                List.of("part drum"),
                                null),
                        estimate(
                                null,
                                null,
                                null,
                                null,
                                List.of("part brake-pipe", "hours fabricate brake-pipe"),
                                null));
        assertThat(plan.estimate())
                .returns(List.of("hours fabricate brake-pipe", "part brake-pipe", "part drum"), Estimate::missing)
                .returns(pounds("25.92"), Estimate::gross);
    }

    @Test
    void totals_are_those_of_the_required_lines_and_with_the_recommended_ones() {
        RepairPlan plan = plan(List.of(
                line(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.REQUIRED, "SCO-161"),
                line(ScopeAction.RENEW, ScopeItem.WHEEL_CYLINDER, RIGHT, Necessity.RECOMMENDED, "SCO-202")));

        // the cylinder: 19.99 + 0.5 h x 72.00 = 55.99, tax 11.198
        assertThat(plan.estimate())
                .isEqualTo(total(
                        estimate(
                                pounds("156.55"),
                                pounds("31.31"),
                                pounds("187.86"),
                                new BigDecimal("1.5"),
                                List.of(),
                                null),
                        total(
                                estimate(
                                        pounds("212.54"),
                                        pounds("42.51"),
                                        pounds("255.05"),
                                        new BigDecimal("2"),
                                        List.of(),
                                        null),
                                null)));
    }

    @Test
    void refused_lines_cost_nothing_in_the_totals() {
        RepairPlan plan = plan(
                List.of(
                        line(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.REQUIRED, "SCO-161"),
                        line(ScopeAction.RENEW, ScopeItem.WHEEL_CYLINDER, RIGHT, Necessity.RECOMMENDED, "SCO-202")),
                decided("renew-wheel-cylinder-axle-2-right", Decision.REFUSED, Necessity.RECOMMENDED));

        assertThat(plan.estimate())
                .returns(pounds("187.86"), Estimate::gross)
                .satisfies(
                        estimate -> assertThat(estimate.withRecommended()).returns(pounds("187.86"), Estimate::gross));
    }

    @Test
    void without_a_price_list_there_is_no_estimate() {
        RepairPlan plan = PLAN.of(input(
                List.of(line(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.REQUIRED, "SCO-161")),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                null));

        assertThat(plan.estimate()).isNull();
        assertThat(plan.lines()).extracting(ScopeLine::estimate).containsOnlyNulls();
    }

    @Test
    void a_currency_without_minor_unit_has_no_decimals() {
        PriceList yen = new PriceList(
                "quay-street",
                1,
                "JPY",
                new BigDecimal("8000"),
                new BigDecimal("0.10"),
                Map.of(ScopeItem.SHOE_SET, new BigDecimal("7255")),
                Map.of("renew shoe-set", new BigDecimal("1.5")));
        RepairPlan plan = PLAN.of(input(
                List.of(line(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.REQUIRED, "SCO-161")),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                yen));

        assertThat(plan.estimate())
                .returns(new Amount("19255", "JPY"), Estimate::net)
                .returns(new Amount("1926", "JPY"), Estimate::tax);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        // net of 1.5 h and the part, tax of 10 %, rounded half up to the digits of the currency
        "JPY, 8000,   7255,     19255,   1926",
        "KWD, 8.125,  7.0005,   19.188,  1.919",
        "GBP, 72.00,  48.55,    156.55,  15.66",
        "EUR, 71.97,  48.555,   156.51,  15.65"
    })
    void tax_is_rounded_to_the_digits_of_its_currency(
            String currency, BigDecimal rate, BigDecimal part, String net, String tax) {
        PriceList list = new PriceList(
                "quay-street",
                1,
                currency,
                rate,
                new BigDecimal("0.10"),
                Map.of(ScopeItem.SHOE_SET, part),
                Map.of("renew shoe-set", new BigDecimal("1.5")));

        assertThat(shoesBy(list).estimate())
                .returns(new Amount(net, currency), Estimate::net)
                .returns(new Amount(tax, currency), Estimate::tax);
    }

    @Test
    void a_total_of_which_nothing_is_known_is_missing_and_not_nothing() {
        PriceList empty = new PriceList(
                "quay-street", 7, "GBP", new BigDecimal("72.00"), new BigDecimal("0.20"), Map.of(), Map.of());

        assertThat(shoesBy(empty).estimate())
                .returns(null, Estimate::net)
                .returns(null, Estimate::gross)
                .returns(List.of("hours renew shoe-set", "part shoe-set"), Estimate::missing)
                .returns(7, Estimate::priceList);
    }

    @Test
    void a_line_shows_what_it_costs_with_other_parts() {
        ScopeLine shoes = shoesBy(withOtherShoes()).lines().get(0);

        // usual: 48.55 + 108.00; maker's own: 91.20 + 108.00 = 199.20; abroad: 40.00 EUR beside 108.00 GBP of labour
        assertThat(shoes.estimate())
                .returns(pounds("187.86"), Estimate::gross)
                .satisfies(estimate -> assertThat(estimate.alternatives())
                        .containsExactly(
                                new Alternative(
                                        "maker's own",
                                        List.of(new Price(pounds("199.20"), pounds("39.84"), pounds("239.04")))),
                                new Alternative(
                                        "from abroad",
                                        List.of(
                                                new Price(pounds("108.00"), pounds("21.60"), pounds("129.60")),
                                                new Price(euros("40.00"), euros("8.00"), euros("48.00"))))));
    }

    @Test
    void the_part_that_was_chosen_is_the_one_that_counts() {
        RepairPlan plan = shoesBy(withOtherShoes(), chosen("maker's own"));

        assertThat(plan.lines().get(0).estimate())
                .returns("maker's own", Estimate::alternative)
                .returns(pounds("239.04"), Estimate::gross)
                .satisfies(estimate -> assertThat(estimate.alternatives())
                        .extracting(Alternative::name)
                        .containsExactly("from abroad"));
        assertThat(plan.estimate()).returns(pounds("239.04"), Estimate::gross);
    }

    @Test
    void currencies_stand_side_by_side_and_are_never_converted() {
        RepairPlan plan = shoesBy(withOtherShoes(), chosen("from abroad"));

        assertThat(plan.estimate())
                .returns(pounds("129.60"), Estimate::gross)
                .returns(List.of(new Price(euros("40.00"), euros("8.00"), euros("48.00"))), Estimate::otherCurrencies);
    }

    @Test
    void a_part_that_the_list_lacks_is_missing_though_the_usual_one_has_a_price() {
        assertThat(shoesBy(withOtherShoes(), chosen("gold plated")).estimate())
                .returns(List.of("part shoe-set (gold plated)"), Estimate::missing)
                .returns(pounds("129.60"), Estimate::gross);
    }

    @ParameterizedTest(name = "{0} {1} is {2}")
    @CsvSource({"187.86, GBP, ", "187.85, GBP, changed", "187.86, EUR, changed"})
    void a_price_has_changed_when_amount_or_currency_differs(BigDecimal shown, String currency, String change) {
        LineDecision decided = new LineDecision(
                "renew-shoe-set-axle-2",
                Decision.AGREED,
                Party.CUSTOMER,
                null,
                Necessity.REQUIRED,
                BigDecimal.ONE,
                shown,
                currency);

        Change found = shoesBy(PRICES, decided).lines().get(0).sinceAgreement();

        assertThat(found == null ? null : found.toString()).isEqualTo(change);
    }

    private static LineDecision chosen(String alternative) {
        return new LineDecision(
                "renew-shoe-set-axle-2",
                Decision.AGREED,
                Party.CUSTOMER,
                null,
                Necessity.REQUIRED,
                null,
                null,
                null,
                alternative);
    }

    private static PriceList withOtherShoes() {
        return new PriceList(
                PRICES.site(),
                PRICES.version(),
                PRICES.currency(),
                PRICES.hourlyRate(),
                PRICES.taxRate(),
                PRICES.parts(),
                PRICES.hours(),
                Map.of(
                        ScopeItem.SHOE_SET,
                        List.of(
                                new PriceList.Offer("maker's own", new BigDecimal("91.20"), null),
                                new PriceList.Offer("from abroad", new BigDecimal("40.00"), "EUR"))));
    }

    private static RepairPlan shoesBy(PriceList list, LineDecision... decisions) {
        return PLAN.of(input(
                List.of(line(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.REQUIRED, "SCO-161")),
                List.of(),
                List.of(),
                List.of(decisions),
                List.of(),
                list));
    }

    private static Amount euros(String amount) {
        return new Amount(amount, "EUR");
    }

    /** A line's estimate with nothing special about it. */
    private static Estimate estimate(
            @Nullable Amount net,
            @Nullable Amount tax,
            @Nullable Amount gross,
            @Nullable BigDecimal hours,
            List<String> missing,
            @Nullable Estimate withRecommended) {
        return new Estimate(net, tax, gross, hours, missing, null, null, null, null, withRecommended);
    }

    private static Estimate total(Estimate line, @Nullable Estimate withRecommended) {
        return new Estimate(
                line.net(),
                line.tax(),
                line.gross(),
                line.hours(),
                line.missing(),
                null,
                null,
                null,
                PRICES.version(),
                withRecommended);
    }

    @Test
    void steps_of_lines_that_are_neither_required_nor_agreed_are_not_planned() {
        LineKey twin = new LineKey(ScopeAction.RENEW, ScopeItem.WHEEL_CYLINDER, RIGHT);
        List<ScopeProposal> scope =
                List.of(line(ScopeAction.RENEW, ScopeItem.WHEEL_CYLINDER, RIGHT, Necessity.RECOMMENDED, "SCO-202"));
        List<StepProposal> steps =
                List.of(new StepProposal(StepCode.RENEW_WHEEL_CYLINDER, RIGHT, twin, because("WRK-211")));

        assertThat(PLAN.of(input(scope, steps, List.of(), List.of(), List.of(), PRICES))
                        .steps())
                .isEmpty();
        assertThat(PLAN.of(input(scope, steps, List.of(), List.of(agreed(twin.id())), List.of(), PRICES))
                        .steps())
                .singleElement()
                .returns("renew-wheel-cylinder-axle-2-right", PlannedStep::id)
                .returns(List.of(twin.id()), PlannedStep::lines);
    }

    @Test
    void needs_hold_across_steps_that_the_plan_lacks() {
        RepairPlan plan = PLAN.of(input(
                List.of(line(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.REQUIRED, "SCO-161")),
                List.of(
                        step(StepCode.FINAL_ROLLER_TEST, Place.VEHICLE),
                        step(StepCode.FIT_SHOES, LEFT),
                        step(StepCode.REFIT_WHEELS, Place.VEHICLE)),
                List.of(),
                List.of(),
                List.of(),
                PRICES));

        assertThat(plan.steps())
                .extracting(step -> step.id() + " after " + step.after())
                .containsExactly(
                        "fit-shoes-axle-2-left after []",
                        "refit-wheels-vehicle after [fit-shoes-axle-2-left]",
                        "final-roller-test-vehicle after [refit-wheels-vehicle]");
    }

    @Test
    void one_side_is_built_again_before_the_other_is_stripped() {
        RepairPlan plan = PLAN.of(input(
                List.of(line(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.REQUIRED, "SCO-161")),
                List.of(
                        step(StepCode.STRIP_SHOES, RIGHT),
                        step(StepCode.FIT_SHOES, RIGHT),
                        step(StepCode.FIT_SHOES, LEFT),
                        step(StepCode.STRIP_SHOES, LEFT)),
                List.of(),
                List.of(),
                List.of(),
                PRICES));

        assertThat(plan.steps())
                .extracting(PlannedStep::id)
                .containsExactly(
                        "strip-shoes-axle-2-left",
                        "fit-shoes-axle-2-left",
                        "strip-shoes-axle-2-right",
                        "fit-shoes-axle-2-right");
    }

    @Test
    void each_caution_is_read_once_before_the_first_of_its_steps() {
        RepairPlan plan = PLAN.of(input(
                List.of(line(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.REQUIRED, "SCO-161")),
                List.of(step(StepCode.STRIP_SHOES, LEFT), step(StepCode.FIT_SHOES, LEFT)),
                List.of(
                        new CautionProposal(CautionCode.SPRING_TENSION, because("WRK-909")),
                        new CautionProposal(CautionCode.ROLLER_BED, because("WRK-908"))),
                List.of(),
                List.of(),
                PRICES));

        assertThat(plan.cautions())
                .singleElement()
                .returns(CautionCode.SPRING_TENSION, PlannedCaution::code)
                .returns(List.of("strip-shoes-axle-2-left", "fit-shoes-axle-2-left"), PlannedCaution::before);
        assertThat(plan.steps())
                .extracting(PlannedStep::cautions)
                .containsExactly(List.of(CautionCode.SPRING_TENSION), List.of());
    }

    @Test
    void reported_steps_are_ticked_and_what_was_reported_never_vanishes() {
        RepairPlan plan = PLAN.of(input(
                List.of(line(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR, Necessity.REQUIRED, "SCO-161")),
                List.of(step(StepCode.FIT_SHOES, LEFT)),
                List.of(),
                List.of(),
                List.of(
                        new WorkReported("fit-shoes-axle-2-left", WorkOutcome.NOT_POSSIBLE, List.of()),
                        new WorkReported("fit-shoes-axle-2-left", WorkOutcome.DONE, List.of()),
                        new WorkReported("renew-servo-vehicle", WorkOutcome.DONE, List.of()),
                        new WorkReported("polish-hubcaps", WorkOutcome.DONE, List.of())),
                PRICES));

        assertThat(plan.steps())
                .extracting(step -> step.id() + " " + step.outcome())
                .containsExactlyInAnyOrder("fit-shoes-axle-2-left done", "renew-servo-vehicle done");
        assertThat(plan.unknownSteps()).containsExactly("polish-hubcaps");
    }

    @Test
    void a_decision_on_what_is_no_line_is_named() {
        assertThat(plan(List.of(), agreed("paint-the-van")).unknownLines()).containsExactly("paint-the-van");
    }

    @Test
    void a_scope_line_is_written_in_the_words_of_the_contract() throws Exception {
        RepairPlan plan = plan(List.of(
                line(ScopeAction.BLEED, ScopeItem.BRAKE_FLUID, Place.ofCircuit(2), Necessity.REQUIRED, "SCO-301")));

        assertThat(Json.mapper()
                        .readTree(Json.mapper().writeValueAsString(plan.lines().get(0))))
                .isEqualTo(Json.mapper().readTree("""
                        {"id": "bleed-brake-fluid-circuit-2", "action": "bleed", "item": "brake-fluid",
                         "place": {"circuit": 2}, "extent": "axle",
                         "quantity": {"value": 0.7, "unit": "L", "of": "new brake fluid DOT 4"},
                         "necessity": "required", "standing": "proposed",
                         "estimate": {"net": {"amount": "36.68", "currency": "GBP"},
                                      "tax": {"amount": "7.34", "currency": "GBP"},
                                      "gross": {"amount": "44.02", "currency": "GBP"},
                                      "hours": 0.4, "missing": []},
                         "agreementBy": "customer",
                         "because": [{"rule": "SCO-301", "says": "It holds.", "source": "test", "facts": ["given"]}]}
                        """));
    }

    private static StepProposal step(StepCode code, Place place) {
        return new StepProposal(
                code, place, new LineKey(ScopeAction.RENEW, ScopeItem.SHOE_SET, REAR), because("WRK-206"));
    }

    private static ScopeProposal line(
            ScopeAction action, ScopeItem item, Place place, Necessity necessity, String rule) {
        return new ScopeProposal(action, item, place, ScopeExtent.AXLE, necessity, null, because(rule));
    }

    private static Because because(String rule) {
        return new Because(rule, List.of("given"));
    }

    private static LineDecision agreed(String line) {
        return decided(line, Decision.AGREED, Necessity.REQUIRED);
    }

    private static LineDecision decided(String line, Decision decision, Necessity necessity) {
        return new LineDecision(line, decision, Party.CUSTOMER, null, necessity, null, null, null);
    }

    private static Amount pounds(String amount) {
        return new Amount(amount, "GBP");
    }

    private static List<String> ids(RepairPlan plan) {
        return plan.lines().stream().map(ScopeLine::id).toList();
    }

    private static RepairPlan plan(List<ScopeProposal> scope, LineDecision... decisions) {
        List<ScopeProposal> shuffled = new ArrayList<>(scope);
        Collections.reverse(shuffled);
        RepairPlan plan = PLAN.of(input(scope, List.of(), List.of(), List.of(decisions), List.of(), PRICES));
        assertThat(PLAN.of(input(shuffled, List.of(), List.of(), List.of(decisions), List.of(), PRICES)))
                .as("the same plan whatever the order of the proposals")
                .isEqualTo(plan);
        return plan;
    }

    private static RepairInput input(
            List<ScopeProposal> scope,
            List<StepProposal> steps,
            List<CautionProposal> cautions,
            List<LineDecision> decisions,
            List<WorkReported> reports,
            @Nullable PriceList prices) {
        return new RepairInput(
                scope,
                steps,
                cautions,
                List.of(),
                decisions,
                reports,
                0,
                false,
                Set.of(),
                "DOT 4",
                prices,
                because -> new Reason(because.rule(), "It holds.", "test", because.facts()));
    }
}
