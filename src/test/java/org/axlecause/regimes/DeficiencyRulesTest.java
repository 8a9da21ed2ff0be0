package org.axlecause.regimes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.inference.RuleBench.shownBy;
import static org.axlecause.regimes.BrakeTests.at;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import org.axlecause.facts.Bound;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Deficiency;
import org.axlecause.facts.DeficiencyClass;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.Deviation;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Exemption;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Finding;
import org.axlecause.facts.FindingLimit;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.InspectedItem;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitRisk;
import org.axlecause.facts.LimitStanding;
import org.axlecause.facts.LossShape;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Measurement;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.RegimeGap;
import org.axlecause.facts.RoadDeviation;
import org.axlecause.facts.ShapeOfLoss;
import org.axlecause.facts.Side;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.facts.Verified;
import org.axlecause.inference.RuleBench;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each rule of the deficiencies in both directions, with limits made for the test. */
class DeficiencyRulesTest {

    private static final RuleBench RULES = RuleBench.forFolder("deficiencies");
    private static final Place REAR = Place.ofAxle(2);
    private static final Place REAR_LEFT = Place.ofWheel(2, Side.LEFT);
    private static final Place REAR_RIGHT = Place.ofWheel(2, Side.RIGHT);
    private static final EntryId TEST = new EntryId("/sites/quay-street/lane-1", "rt-1");
    private static final EntryId LOOK = new EntryId("/sites/quay-street/bay-2", "f-1");

    /** A figure of a kind against a limit on it: broken, exactly at it, absent. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "DEF-010, service-imbalance,   imbalance,     service,   maximum, 0.30, 0.3001, 0.30",
        "DEF-020, service-efficiency,  efficiency,    service,   minimum, 0.50, 0.4999, 0.50",
        "DEF-030, no-effort-at-wheel,  peak,          service,   above,   0,    0,      1",
        "DEF-040, parking-efficiency,  efficiency,    parking,   minimum, 0.16, 0.1599, 0.16",
        "DEF-045, parking-one-sided,   parking-ratio, parking,   above,   0,    0,      0.0001",
        "DEF-048, parking-imbalance,   imbalance,     parking,   maximum, 0.30, 0.3001, 0.30",
        "DEF-050, secondary-efficiency, efficiency,   secondary, minimum, 0.25, 0.2499, 0.25",
        "DEF-055, secondary-imbalance, imbalance,     secondary, maximum, 0.30, 0.3001, 0.30",
        "DEF-060, binding,             drag,          service,   maximum, 200,  200.1,  200",
        "DEF-070, force-fluctuation,   fluctuation,   service,   maximum, 0.20, 0.2001, 0.20",
        "DEF-080, abnormal-lag,        rise-lag,      service,   maximum, 0.30, 0.3001, 0.30"
    })
    void a_figure_beyond_a_limit_is_deficient_and_one_at_the_limit_is_not(
            String rule,
            String deficiency,
            String kind,
            String brake,
            String bound,
            String limit,
            String beyond,
            String within) {
        DeficiencyCode code = constant(DeficiencyCode.class, deficiency);
        FigureKind figureKind = constant(FigureKind.class, kind);
        BrakeSystem system = constant(BrakeSystem.class, brake);
        Limit major = limit(code, figureKind, system, constant(Bound.class, bound), limit, DeficiencyClass.MAJOR);
        Figure broken = at(REAR, figureKind, system, beyond);
        Figure kept = at(REAR, figureKind, system, within);
        Figure elsewhere = at(Place.ofAxle(1), figureKind, system, beyond);
        Figure otherKind = at(REAR, FigureKind.RESIDUAL, system, beyond);

        assertThat(RULES.given(major, broken).concluded(Deficiency.class))
                .singleElement()
                .satisfies(shownBy(rule, broken.shown(), major.shown()))
                .returns(code, Deficiency::code)
                .returns(DeficiencyClass.MAJOR, Deficiency::severity)
                .returns(major, Deficiency::limit)
                .returns(new BigDecimal(beyond), Deficiency::value);
        assertThat(RULES.given(major, kept).concluded(Deficiency.class)).isEmpty();
        assertThat(RULES.given(major, elsewhere, otherKind).concluded(Deficiency.class))
                .isEmpty();
        assertThat(RULES.given(broken).concluded(Deficiency.class)).isEmpty();
        assertThat(RULES.given(major).concluded(Deficiency.class)).isEmpty();
    }

    @Test
    void of_two_broken_limits_only_the_worse_class_concludes() {
        Limit major = imbalance("0.30", DeficiencyClass.MAJOR);
        Limit dangerous = imbalance("0.50", DeficiencyClass.DANGEROUS);
        Figure beyondBoth = at(REAR, FigureKind.IMBALANCE, BrakeSystem.SERVICE, "0.51");
        Figure beyondOne = at(REAR, FigureKind.IMBALANCE, BrakeSystem.SERVICE, "0.50");

        assertThat(RULES.given(major, dangerous, beyondBoth).concluded(Deficiency.class))
                .singleElement()
                .returns(DeficiencyClass.DANGEROUS, Deficiency::severity);
        assertThat(RULES.given(major, dangerous, beyondOne).concluded(Deficiency.class))
                .singleElement()
                .returns(DeficiencyClass.MAJOR, Deficiency::severity);
    }

    @Test
    void a_figure_that_the_regime_does_not_hold_against_the_vehicle_is_not_deficient() {
        Limit major = imbalance("0.30", DeficiencyClass.MAJOR);
        Figure broken = at(REAR, FigureKind.IMBALANCE, BrakeSystem.SERVICE, "0.60");
        Exemption exempt = new Exemption(
                FigureKind.IMBALANCE, TEST, Stage.ARRIVAL, BrakeSystem.SERVICE, REAR, "the lower wheel locked");
        Exemption ofAnotherAxle = new Exemption(
                FigureKind.IMBALANCE,
                TEST,
                Stage.ARRIVAL,
                BrakeSystem.SERVICE,
                Place.ofAxle(1),
                "the lower wheel locked");

        assertThat(RULES.given(major, broken, exempt).concluded(Deficiency.class))
                .isEmpty();
        assertThat(RULES.given(major, broken, ofAnotherAxle).concluded(Deficiency.class))
                .hasSize(1);
    }

    @Test
    void a_value_that_no_text_confirms_warns_without_a_class() {
        Limit unconfirmed = new Limit(
                DeficiencyCode.SERVICE_IMBALANCE,
                FigureKind.IMBALANCE,
                BrakeSystem.SERVICE,
                REAR,
                Bound.MAXIMUM,
                new BigDecimal("0.25"),
                null,
                null,
                LimitStanding.WORKSHOP,
                Verified.MEMORY,
                "test regime");
        Figure beyond = at(REAR, FigureKind.IMBALANCE, BrakeSystem.SERVICE, "0.2501");
        Figure within = at(REAR, FigureKind.IMBALANCE, BrakeSystem.SERVICE, "0.25");
        Exemption exempt = new Exemption(
                FigureKind.IMBALANCE, TEST, Stage.ARRIVAL, BrakeSystem.SERVICE, REAR, "the lower wheel locked");

        assertThat(RULES.given(unconfirmed, beyond).concluded(Deficiency.class))
                .singleElement()
                .satisfies(shownBy("DEF-100", "maximum 25.00 % by test regime (value: memory)"))
                .satisfies(found -> assertThat(found.severity()).isNull());
        assertThat(RULES.given(unconfirmed, within).concluded(Deficiency.class)).isEmpty();
        assertThat(RULES.given(unconfirmed, beyond, exempt).concluded(Deficiency.class))
                .isEmpty();
        assertThat(RULES.given(beyond).concluded(Deficiency.class)).isEmpty();
    }

    @Test
    void an_unobservable_figure_breaks_no_limit() {
        Limit major = imbalance("0.30", DeficiencyClass.MAJOR);
        Figure unseen = new Figure(
                FigureKind.IMBALANCE, TEST, Stage.ARRIVAL, BrakeSystem.SERVICE, REAR, null, null, false, null);

        assertThat(RULES.given(major, unseen).concluded(Deficiency.class)).isEmpty();
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "DEF-015, service-imbalance, service",
        "DEF-046, parking-one-sided, parking",
    })
    void excessive_deviation_on_the_road_is_deficient_and_slight_deviation_is_not(
            String rule, String deficiency, String brake) {
        DeficiencyCode code = constant(DeficiencyCode.class, deficiency);
        BrakeSystem system = constant(BrakeSystem.class, brake);
        InspectedItem item = item(code, system, DeficiencyClass.MAJOR);
        RoadDeviation excessive = new RoadDeviation(TEST, Stage.ARRIVAL, system, Deviation.EXCESSIVE);
        RoadDeviation slight = new RoadDeviation(TEST, Stage.ARRIVAL, system, Deviation.SLIGHT);
        RoadDeviation otherBrake = new RoadDeviation(TEST, Stage.ARRIVAL, BrakeSystem.SECONDARY, Deviation.EXCESSIVE);

        assertThat(RULES.given(item, excessive).concluded(Deficiency.class))
                .singleElement()
                .satisfies(shownBy(rule, "excessive deviation", "item 9.9 of test regime"))
                .returns(DeficiencyClass.MAJOR, Deficiency::severity)
                .returns("9.9", Deficiency::item);
        assertThat(RULES.given(item, slight).concluded(Deficiency.class)).isEmpty();
        assertThat(RULES.given(item, otherBrake).concluded(Deficiency.class)).isEmpty();
        assertThat(RULES.given(excessive).concluded(Deficiency.class)).isEmpty();
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "DEF-065, binding,           drag,        drag-force,        150,  151",
        "DEF-075, force-fluctuation, fluctuation, fluctuation-fault, 0.30, 0.31",
        "DEF-085, abnormal-lag,      rise-lag,    lag,               0.3,  0.31"
    })
    void where_the_regime_gives_no_figure_the_workshop_warns_without_a_class(
            String rule, String deficiency, String kind, String code, String at, String beyond) {
        DeficiencyCode deficient = constant(DeficiencyCode.class, deficiency);
        FigureKind figureKind = constant(FigureKind.class, kind);
        InspectedItem item = item(deficient, BrakeSystem.SERVICE, DeficiencyClass.MAJOR);
        Threshold threshold = new Threshold(
                constant(ThresholdCode.class, code), new BigDecimal(at), Verified.JUDGEMENT, "workshop value");
        Figure broken = at(REAR_LEFT, figureKind, BrakeSystem.SERVICE, beyond);
        Figure kept = at(REAR_LEFT, figureKind, BrakeSystem.SERVICE, at);
        Limit ofRegime =
                limit(deficient, FigureKind.RESIDUAL, BrakeSystem.SERVICE, Bound.MAXIMUM, "1", DeficiencyClass.MAJOR);

        assertThat(RULES.given(item, threshold, broken).concluded(Deficiency.class))
                .singleElement()
                .satisfies(shownBy(rule, broken.shown(), threshold.shown(), "item 9.9 of test regime"))
                .satisfies(found -> {
                    assertThat(found.severity()).isNull();
                    assertThat(found.item()).isEqualTo("9.9");
                    assertThat(found.limit()).isNotNull().returns(LimitStanding.WORKSHOP, Limit::standing);
                });
        assertThat(RULES.given(item, threshold, kept).concluded(Deficiency.class))
                .isEmpty();
        assertThat(RULES.given(threshold, broken).concluded(Deficiency.class)).isEmpty();
        assertThat(RULES.given(item, broken).concluded(Deficiency.class)).isEmpty();
        assertThat(RULES.given(item, threshold, broken, ofRegime).concluded(Deficiency.class))
                .as("a figure of the regime stands, so the workshop's threshold is silent")
                .isEmpty();
    }

    @Test
    void a_refused_state_is_deficient_and_a_sound_part_is_not() {
        FindingLimit contaminated = state(DeficiencyCode.LINING_CONTAMINATED, false, DeficiencyClass.MAJOR);
        Finding soaked = finding(Component.SHOE_LINING, Condition.SOAKED, null, null);
        Finding sound = finding(Component.SHOE_LINING, Condition.SOUND, null, null);
        Finding pad = finding(Component.PAD, Condition.SOAKED, null, null);

        assertThat(RULES.given(contaminated, soaked).concluded(Deficiency.class))
                .singleElement()
                .satisfies(shownBy("DEF-090", "shoe-lining soaked at axle 2 left", "item 9.9 of test regime"))
                .returns(DeficiencyCode.LINING_CONTAMINATED, Deficiency::code)
                .returns(DeficiencyClass.MAJOR, Deficiency::severity)
                .returns(LOOK, Deficiency::test);
        assertThat(RULES.given(contaminated, sound).concluded(Deficiency.class)).isEmpty();
        assertThat(RULES.given(contaminated, pad).concluded(Deficiency.class)).isEmpty();
        assertThat(RULES.given(soaked).concluded(Deficiency.class)).isEmpty();
    }

    @ParameterizedTest(name = "{0} m measured, part marked {1} m: {2}")
    @CsvSource({
        "0.0014, 0.001, dangerous",
        "0.0015, 0.001, ",
        "0.0020, 0.002, major",
        "0.0021, 0.002, ",
        "0.0021, ,      ",
        "0.0014, ,      dangerous"
    })
    void a_lining_is_judged_by_the_figure_and_by_its_own_mark_exactly_at_both(
            String measured, @Nullable String mark, @Nullable String expected) {
        FindingLimit figure = thickness(Bound.MINIMUM, "0.0015", DeficiencyClass.DANGEROUS);
        FindingLimit ownMark = thickness(Bound.ABOVE, null, DeficiencyClass.MAJOR);
        Finding worn = finding(Component.SHOE_LINING, Condition.WORN, measured, mark);

        List<Deficiency> found = RULES.given(figure, ownMark, worn).concluded(Deficiency.class);

        assertThat(found.stream().map(deficiency -> deficiency.severity().toString()))
                .isEqualTo(expected == null ? List.of() : List.of(expected));
        assertThat(found).allSatisfy(shownBy("DEF-090", "lining-thickness " + measured));
    }

    @Test
    void a_leak_becomes_worse_where_a_figure_of_its_axle_breaks_a_limit() {
        FindingLimit leak = leak(false, DeficiencyClass.MAJOR);
        FindingLimit affecting = leak(true, DeficiencyClass.DANGEROUS);
        Finding leaking = finding(Component.WHEEL_CYLINDER, Condition.LEAKING, null, null);
        Limit imbalance = imbalance("0.30", DeficiencyClass.MAJOR);
        Figure broken = at(REAR, FigureKind.IMBALANCE, BrakeSystem.SERVICE, "0.31");
        Figure kept = at(REAR, FigureKind.IMBALANCE, BrakeSystem.SERVICE, "0.30");

        assertThat(ofLeak(leak, affecting, leaking, imbalance, broken))
                .singleElement()
                .satisfies(shownBy("DEF-095", "wheel-cylinder leaking at axle 2 left", broken.shown()))
                .returns(DeficiencyClass.DANGEROUS, Deficiency::severity);
        assertThat(ofLeak(leak, affecting, leaking, imbalance, kept))
                .singleElement()
                .satisfies(shownBy("DEF-090", "wheel-cylinder leaking at axle 2 left"))
                .returns(DeficiencyClass.MAJOR, Deficiency::severity);
        assertThat(ofLeak(leak, leaking, imbalance, broken))
                .singleElement()
                .returns(DeficiencyClass.MAJOR, Deficiency::severity);
        assertThat(ofLeak(affecting, leaking, imbalance)).isEmpty();
    }

    @Test
    void a_figure_that_the_regime_passes_over_does_not_make_a_leak_worse() {
        FindingLimit leak = leak(false, DeficiencyClass.MAJOR);
        FindingLimit affecting = leak(true, DeficiencyClass.DANGEROUS);
        Finding leaking = finding(Component.WHEEL_CYLINDER, Condition.LEAKING, null, null);
        Limit imbalance = imbalance("0.30", DeficiencyClass.MAJOR);
        Figure broken = at(REAR, FigureKind.IMBALANCE, BrakeSystem.SERVICE, "0.60");
        Exemption exempt = new Exemption(
                FigureKind.IMBALANCE, TEST, Stage.ARRIVAL, BrakeSystem.SERVICE, REAR, "the lower wheel locked");

        assertThat(ofLeak(leak, affecting, leaking, imbalance, broken, exempt))
                .singleElement()
                .satisfies(shownBy("DEF-090", "wheel-cylinder leaking at axle 2 left"))
                .returns(DeficiencyClass.MAJOR, Deficiency::severity);
    }

    private static final InspectedItem GRABBING = new InspectedItem(
            DeficiencyCode.GRABBING,
            BrakeSystem.SERVICE,
            DeficiencyClass.MAJOR,
            "1.2.1 (c)",
            Verified.READ,
            "Directive 2014/45/EU, Annex I, item 1.2.1 (c)");

    /** Workshop value (judgement): more than 1.5 times as steep as the partner; no class, the inspector judges. */
    @ParameterizedTest(name = "{0} against 10 N/N: {1}")
    @CsvSource({"15.01, 1", "15, 0", "7, 0"})
    void a_wheel_that_rises_much_more_steeply_than_its_partner_grabs(String steep, int expected) {
        Threshold ratio = new Threshold(
                ThresholdCode.GRAB_STEEPNESS_RATIO, new BigDecimal("1.5"), Verified.JUDGEMENT, "workshop value");
        Figure left = at(REAR_LEFT, FigureKind.STEEPNESS, BrakeSystem.SERVICE, steep);
        Figure right = at(REAR_RIGHT, FigureKind.STEEPNESS, BrakeSystem.SERVICE, "10");
        ShapeOfLoss weakPartner = new ShapeOfLoss(LossShape.PROPORTIONAL, REAR_RIGHT, TEST, "half of the other wheel");
        ShapeOfLoss cyclic = new ShapeOfLoss(LossShape.CYCLIC, REAR_RIGHT, TEST, "swings");

        assertThat(RULES.given(GRABBING, ratio, left, right, cyclic).concluded(Deficiency.class))
                .hasSize(expected)
                .allSatisfy(shownBy("DEF-086", "steepness axle 2 left", "steepness axle 2 right"))
                .allSatisfy(found -> assertThat(found)
                        .returns(DeficiencyCode.GRABBING, Deficiency::code)
                        .returns(REAR_LEFT, Deficiency::place)
                        .returns("1.2.1 (c)", Deficiency::item)
                        .returns(null, Deficiency::severity));
        assertThat(RULES.given(GRABBING, ratio, left, right, weakPartner).concluded(Deficiency.class))
                .as("a weak partner looks the same and explains it")
                .isEmpty();
        assertThat(RULES.given(GRABBING, left, right).concluded(Deficiency.class))
                .as("without a threshold")
                .isEmpty();
    }

    /** Workshop value (judgement): locked with the partner below 60 %. */
    @ParameterizedTest(name = "locked at 1500 N, partner {0} N: {1}")
    @CsvSource({"899, 1", "900, 0", "1400, 0"})
    void a_wheel_that_locks_long_before_its_partner_grabs(String partner, int expected) {
        Threshold share = new Threshold(
                ThresholdCode.GRAB_LOCK_SHARE, new BigDecimal("0.60"), Verified.JUDGEMENT, "workshop value");
        Figure locked = at(REAR_LEFT, FigureKind.SLIP_FORCE, BrakeSystem.SERVICE, "1500");
        Figure peak = at(REAR_LEFT, FigureKind.PEAK, BrakeSystem.SERVICE, "1500");
        Figure other = at(REAR_RIGHT, FigureKind.PEAK, BrakeSystem.SERVICE, partner);

        assertThat(RULES.given(GRABBING, share, locked, peak, other).concluded(Deficiency.class))
                .hasSize(expected)
                .allSatisfy(shownBy("DEF-087", "slip-force axle 2 left", "peak axle 2 right"))
                .allSatisfy(found -> assertThat(found.severity()).isNull());
        assertThat(RULES.given(GRABBING, share, peak, other).concluded(Deficiency.class))
                .as("not locked")
                .isEmpty();
    }

    /** JCGM 106:2012, 8: the verdict stands, a probability of its being wrong above the threshold is said. */
    @ParameterizedTest(name = "{0} with {1} beyond the limit")
    @CsvSource({"0.2999, 0.0501, true", "0.2999, 0.05, false", "0.3001, 0.9499, true", "0.3001, 0.95, false"})
    void a_verdict_that_may_well_be_wrong_is_too_close_to_call(String value, String beyond, boolean asked) {
        Limit limit = limit(
                DeficiencyCode.SERVICE_IMBALANCE,
                FigureKind.IMBALANCE,
                BrakeSystem.SERVICE,
                Bound.MAXIMUM,
                "0.30",
                DeficiencyClass.MAJOR);
        Figure figure = at(REAR, FigureKind.IMBALANCE, BrakeSystem.SERVICE, value);
        LimitRisk risk = new LimitRisk(figure, limit, new BigDecimal(beyond), new BigDecimal("0.25"));
        Threshold most = new Threshold(
                ThresholdCode.TOO_CLOSE_RISK, new BigDecimal("0.05"), Verified.JUDGEMENT, "workshop value");

        assertThat(RULES.given(risk, most, limit, figure).concluded(OpenQuestion.class))
                .hasSize(asked ? 1 : 0)
                .allSatisfy(question -> assertThat(question.code()).isEqualTo(QuestionCode.TOO_CLOSE_TO_CALL))
                .allSatisfy(shownBy("DEF-110", "imbalance axle 2", "maximum 30.00 %"));
        assertThat(RULES.given(risk, most, limit, figure).concluded(Deficiency.class))
                .as("the verdict follows the plain rule")
                .hasSize(value.equals("0.3001") ? 1 : 0);
        assertThat(RULES.given(risk, limit, figure).concluded(OpenQuestion.class))
                .as("without a threshold")
                .isEmpty();
    }

    @Test
    void what_the_regime_needs_and_nobody_said_is_asked() {
        RegimeGap gap = new RegimeGap(QuestionCode.MASS_MISSING, Place.VEHICLE, "The mass is not known", "Send it");

        assertThat(RULES.given(gap).concluded(OpenQuestion.class))
                .singleElement()
                .satisfies(shownBy("DEF-005", "The mass is not known"))
                .returns(QuestionCode.MASS_MISSING, OpenQuestion::code)
                .returns("Send it", OpenQuestion::resolve);
        assertThat(RULES.given(REAR).concluded(OpenQuestion.class)).isEmpty();
    }

    private static List<Deficiency> ofLeak(Object... facts) {
        return RULES.given(facts).concluded(Deficiency.class).stream()
                .filter(deficiency -> deficiency.code() == DeficiencyCode.WHEEL_CYLINDER_LEAKING)
                .toList();
    }

    private static Limit imbalance(String value, DeficiencyClass severity) {
        return limit(
                DeficiencyCode.SERVICE_IMBALANCE,
                FigureKind.IMBALANCE,
                BrakeSystem.SERVICE,
                Bound.MAXIMUM,
                value,
                severity);
    }

    private static Limit limit(
            DeficiencyCode code,
            FigureKind kind,
            BrakeSystem brake,
            Bound bound,
            String value,
            DeficiencyClass severity) {
        return new Limit(
                code,
                kind,
                brake,
                REAR,
                bound,
                new BigDecimal(value),
                severity,
                "9.9",
                LimitStanding.REGIME,
                Verified.READ,
                "test regime");
    }

    private static InspectedItem item(DeficiencyCode code, BrakeSystem brake, DeficiencyClass severity) {
        return new InspectedItem(code, brake, severity, "9.9", Verified.READ, "test regime");
    }

    private static FindingLimit state(DeficiencyCode code, boolean affecting, DeficiencyClass severity) {
        return new FindingLimit(
                code,
                List.of(Component.SHOE_LINING),
                List.of(Condition.SOAKED, Condition.CONTAMINATED),
                null,
                null,
                null,
                List.of(),
                affecting,
                severity,
                "9.9",
                Verified.READ,
                "test regime");
    }

    private static FindingLimit leak(boolean affecting, DeficiencyClass severity) {
        return new FindingLimit(
                DeficiencyCode.WHEEL_CYLINDER_LEAKING,
                List.of(Component.WHEEL_CYLINDER),
                List.of(Condition.LEAKING),
                null,
                null,
                null,
                List.of(),
                affecting,
                severity,
                "9.9",
                Verified.READ,
                "test regime");
    }

    private static FindingLimit thickness(Bound bound, @Nullable String value, DeficiencyClass severity) {
        return new FindingLimit(
                DeficiencyCode.LINING_BELOW_LIMIT,
                List.of(Component.SHOE_LINING),
                List.of(),
                MeasuredQuantity.LINING_THICKNESS,
                bound,
                value == null ? null : new BigDecimal(value),
                List.of(),
                false,
                severity,
                "9.9",
                Verified.READ,
                "test regime");
    }

    private static Finding finding(
            Component component, Condition condition, @Nullable String metres, @Nullable String mark) {
        Measurement measured = metres == null
                ? null
                : new Measurement(
                        MeasuredQuantity.LINING_THICKNESS,
                        new BigDecimal(metres),
                        mark == null ? null : new BigDecimal(mark),
                        metres + " m");
        return new Finding(LOOK, FindingStage.AS_FOUND, component, condition, REAR_LEFT, null, null, null, measured);
    }

    private static <E extends Enum<E>> E constant(Class<E> type, String code) {
        return Enum.valueOf(type, code.toUpperCase(Locale.ROOT).replace('-', '_'));
    }
}
