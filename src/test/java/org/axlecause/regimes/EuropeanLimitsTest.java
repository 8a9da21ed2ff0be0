package org.axlecause.regimes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.inference.RuleBench.shownBy;
import static org.axlecause.regimes.BrakeTests.axle;
import static org.axlecause.regimes.BrakeTests.ofVehicle;
import static org.axlecause.regimes.BrakeTests.rollers;
import static org.axlecause.regimes.BrakeTests.wheel;
import static org.axlecause.regimes.Vehicles.TODAY;
import static org.axlecause.regimes.Vehicles.aSmallVan;
import static org.axlecause.regimes.Vehicles.anyVehicle;
import static org.axlecause.regimes.Vehicles.approved;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Deficiency;
import org.axlecause.facts.DeficiencyClass;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Limit;
import org.axlecause.facts.Place;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RegimeSheet;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.Trace;
import org.axlecause.facts.TrailerKind;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.WheelReading;
import org.axlecause.fleet.ReferenceAxle;
import org.axlecause.fleet.SignatureTable;
import org.axlecause.inference.RuleBench;
import org.axlecause.measurement.RegimeFigures;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The limits of Directive 2014/45/EU, Annex I, items 1.2.1, 1.2.2 and 1.4.2, and their counterparts in Great Britain
 * (MOT inspection manual 1.2.1, 1.2.2, 1.4.2), at and beside each limit.
 */
class EuropeanLimitsTest {

    private static final RuleBench RULES = RuleBench.forFolder("deficiencies");
    private static final Regimes REGIMES = Regimes.released();

    /** Lower and higher force, steered or not, and the class by the 70 % and 50 % steps of item 1.2.1 (b). */
    @ParameterizedTest(name = "{0}: {1} N beside {2} N, steered {3}")
    @CsvSource({
        "I1, 1820, 2600, true, 30.0000, ",
        "I2, 1819, 2600, true, 30.0385, major",
        "I3, 1300, 2600, true, 50.0000, major",
        "I4, 1299, 2600, true, 50.0385, dangerous",
        "I5, 1299, 2600, false, 50.0385, major",
        "I6,  700, 1500, false, 53.3333, major"
    })
    void an_axle_is_judged_by_the_force_of_its_weaker_wheel_exactly_at_the_limits(
            String id, String lower, String higher, boolean steered, String percent, @Nullable String expected) {
        for (String regime : List.of("eu-periodic", "gb-annual")) {
            int number = steered ? 1 : 2;
            RegimeSheet sheet = RegimeFigures.of(
                    List.of(rollers(axle(number, lower, higher))), aSmallVan(), terms(regime, aSmallVan()));
            assertThat(sheet.figures().stream()
                            .filter(figure -> figure.kind() == FigureKind.IMBALANCE)
                            .map(figure -> figure.value().movePointRight(2).setScale(4, RoundingMode.HALF_EVEN)))
                    .as("%s by %s", id, regime)
                    .containsExactly(new BigDecimal(percent));

            List<Deficiency> found = deficiencies(regime, aSmallVan(), rollers(axle(number, lower, higher)));
            List<Deficiency> mirrored = deficiencies(regime, aSmallVan(), rollers(axle(number, higher, lower)));

            assertThat(classesOf(found, DeficiencyCode.SERVICE_IMBALANCE))
                    .as("%s by %s", id, regime)
                    .isEqualTo(expected == null ? List.of() : List.of(expected));
            assertThat(classesOf(mirrored, DeficiencyCode.SERVICE_IMBALANCE))
                    .isEqualTo(classesOf(found, DeficiencyCode.SERVICE_IMBALANCE));
        }
    }

    @ParameterizedTest(name = "{0}: {1} N beside {2} N")
    @CsvSource({"I7, 0, 1400, 1, 1", "I8, 0, 0, 0, 2"})
    void a_wheel_without_effort_is_dangerous_and_two_of_them_have_no_ratio(
            String id, String lower, String higher, int ratios, int wheels) {
        for (String regime : List.of("eu-periodic", "gb-annual")) {
            RegimeTerms terms = terms(regime, aSmallVan());
            RegimeSheet sheet = RegimeFigures.of(List.of(rollers(axle(2, lower, higher))), aSmallVan(), terms);

            List<Deficiency> found = deficiencies(regime, aSmallVan(), rollers(axle(2, lower, higher)));

            assertThat(sheet.figures().stream()
                            .filter(figure -> figure.kind() == FigureKind.IMBALANCE && figure.observable()))
                    .as("%s by %s", id, regime)
                    .hasSize(ratios);
            assertThat(classesOf(found, DeficiencyCode.NO_EFFORT_AT_WHEEL))
                    .hasSize(wheels)
                    .containsOnly("dangerous");
        }
    }

    static Stream<Arguments> efficiencies() {
        Vehicle newCar = anyVehicle("M1", LocalDate.of(2016, 5, 1));
        Vehicle oldCar = approved(anyVehicle("M1", LocalDate.of(2005, 5, 1)), LocalDate.of(2004, 1, 1));
        Vehicle lorry = anyVehicle("N2", LocalDate.of(2000, 5, 1));
        LocalDate in2014 = LocalDate.of(2014, 5, 1);
        LocalDate in2013 = LocalDate.of(2013, 5, 1);
        Vehicle semi = Vehicles.aTrailer(TrailerKind.SEMI_TRAILER, in2014, LocalDate.of(2013, 1, 1));
        Vehicle drawbar = Vehicles.aTrailer(TrailerKind.DRAWBAR_TRAILER, in2014, LocalDate.of(2013, 1, 1));
        Vehicle approvedEarlier = Vehicles.aTrailer(TrailerKind.SEMI_TRAILER, in2013, LocalDate.of(2011, 6, 1));
        return Stream.of(
                Arguments.of("E1", newCar, BrakeSystem.SERVICE, "0.580", null),
                Arguments.of("E2", newCar, BrakeSystem.SERVICE, "0.579", "major"),
                Arguments.of("E3", newCar, BrakeSystem.SERVICE, "0.290", "major"),
                Arguments.of("E4", newCar, BrakeSystem.SERVICE, "0.289", "dangerous"),
                Arguments.of("E5", oldCar, BrakeSystem.SERVICE, "0.500", null),
                Arguments.of("E5 just below", oldCar, BrakeSystem.SERVICE, "0.499", "major"),
                Arguments.of("E6", lorry, BrakeSystem.SERVICE, "0.430", "major"),
                Arguments.of("E6 at 45 %", lorry, BrakeSystem.SERVICE, "0.450", null),
                Arguments.of("E7", semi, BrakeSystem.SERVICE, "0.450", null),
                Arguments.of("E8", drawbar, BrakeSystem.SERVICE, "0.450", "major"),
                Arguments.of("E9", newCar, BrakeSystem.PARKING, "0.160", null),
                Arguments.of("E9 just below", newCar, BrakeSystem.PARKING, "0.159", "major"),
                Arguments.of("E9 half", newCar, BrakeSystem.PARKING, "0.080", "major"),
                Arguments.of("E9 below half", newCar, BrakeSystem.PARKING, "0.079", "dangerous"),
                Arguments.of("E10", Vehicles.aLorryThatDrawsATrailer(), BrakeSystem.PARKING, "0.180", null),
                Arguments.of("E10 at 16 %", Vehicles.aLorryThatDrawsATrailer(), BrakeSystem.PARKING, "0.160", "major"),
                Arguments.of("E11", approvedEarlier, BrakeSystem.SERVICE, "0.430", null),
                Arguments.of("E11 just below", approvedEarlier, BrakeSystem.SERVICE, "0.429", "major"));
    }

    /** Directive 2014/45/EU, Annex I, items 1.2.2 and 1.4.2 with their footnotes. */
    @ParameterizedTest(name = "{0}: {3}")
    @MethodSource("efficiencies")
    void efficiency_is_judged_by_category_age_and_approval_exactly_at_the_limits(
            String id, Vehicle vehicle, BrakeSystem brake, String value, @Nullable String expected) {
        List<Deficiency> found = deficienciesOf("eu-periodic", vehicle, ofVehicle(FigureKind.EFFICIENCY, brake, value));

        assertThat(found.stream().map(deficiency -> String.valueOf(deficiency.severity())))
                .as(id)
                .isEqualTo(expected == null ? List.of() : List.of(expected));
    }

    /** S.I. 2013/271, S.I. 1986/1078 reg. 18 and the MOT inspection manual 1.2.2 and 1.4.2. */
    @ParameterizedTest(name = "{0} first used {1}, {2} brake at {3}")
    @CsvSource({
        "M1, 2010-09-01, service, 0.58, ",
        "M1, 2010-09-01, service, 0.5799, major",
        "M1, 2010-08-31, service, 0.50, ",
        "M1, 2010-08-31, service, 0.4999, major",
        "M1, 2016-05-01, service, 0.29, major",
        "M1, 2016-05-01, service, 0.2899, dangerous",
        "N1, 2016-05-01, service, 0.50, ",
        "N1, 2016-05-01, service, 0.2499, dangerous",
        "N1, 2016-05-01, parking, 0.16, ",
        "N1, 2016-05-01, parking, 0.1599, major",
        "N1, 2016-05-01, parking, 0.0799, dangerous",
        "M1, 2016-05-01, secondary, 0.29, ",
        "M1, 2016-05-01, secondary, 0.2899, major",
        "M1, 2005-05-01, secondary, 0.25, ",
        "M1, 2005-05-01, secondary, 0.1249, dangerous"
    })
    void in_great_britain_efficiency_is_judged_by_category_and_first_use(
            String category, LocalDate firstUsed, String brake, String value, @Nullable String expected) {
        Figure figure = ofVehicle(FigureKind.EFFICIENCY, BrakeSystem.valueOf(brake.toUpperCase(Locale.ROOT)), value);

        List<Deficiency> found = deficienciesOf("gb-annual", anyVehicle(category, firstUsed), figure);

        assertThat(found.stream().map(deficiency -> String.valueOf(deficiency.severity())))
                .isEqualTo(expected == null ? List.of() : List.of(expected));
    }

    /** MOT inspection manual of 1 Jan 2012, 3.8: 560 + 550 + 210 + 205 kgf on 1780 kg are 85.67 %. */
    @Test
    void the_worked_example_in_kilogram_force_comes_out() {
        Vehicle van = Vehicles.masses(aSmallVan(), "2020", "1780");
        Recorded test = rollers(axle(1, "5491.724", "5393.6575"), axle(2, "2059.3965", "2010.36325"));

        RegimeSheet sheet = RegimeFigures.of(List.of(test), van, terms("gb-annual", van));

        assertThat(vehicleFigure(sheet).value()).isCloseTo(new BigDecimal("0.8567"), within("0.00005"));
        assertThat(vehicleFigure(sheet).basis()).isEqualTo("of 1780 kg, reference weight");
    }

    @Test
    void the_figure_and_the_limit_stand_in_the_ground() {
        List<Deficiency> found = deficiencies("gb-annual", aSmallVan(), rollers(axle(2, "1610", "590")));

        assertThat(found)
                .singleElement()
                .satisfies(shownBy(
                        "DEF-010",
                        "imbalance axle 2 = 63.35 %",
                        "maximum 30.00 % (major) by MOT inspection manual, 1.2.1 (b) (i)"))
                .returns(DeficiencyCode.SERVICE_IMBALANCE, Deficiency::code)
                .returns("1.2.1 b(i)", Deficiency::item)
                .returns(DeficiencyClass.MAJOR, Deficiency::severity)
                .returns(Place.ofAxle(2), Deficiency::place);
    }

    @Test
    void without_a_limit_nothing_is_deficient() {
        Figure figure = ofVehicle(FigureKind.EFFICIENCY, BrakeSystem.SERVICE, "0.10");

        assertThat(RULES.given(figure).concluded(Deficiency.class)).isEmpty();
    }

    @Test
    void a_figure_that_the_test_could_not_show_breaks_no_limit() {
        Recorded onlyRear = rollers(axle(2, "400", "400"));

        assertThat(classesOf(deficiencies("gb-annual", aSmallVan(), onlyRear), DeficiencyCode.SERVICE_EFFICIENCY))
                .isEmpty();
    }

    @Test
    void in_great_britain_a_lower_wheel_that_locked_is_not_held_against_the_axle() {
        Recorded locked = rollers(axle(2, null, wheel("1610", false), wheel("590", true)));
        Recorded otherLocked = rollers(axle(2, null, wheel("1610", true), wheel("590", false)));

        assertThat(deficiencies("gb-annual", aSmallVan(), locked)).isEmpty();
        assertThat(deficiencies("gb-annual", aSmallVan(), otherLocked)).hasSize(1);
        assertThat(deficiencies("eu-periodic", aSmallVan(), locked)).hasSize(1);
    }

    /** The same notice: the tyre slips at 875 N in the trace alone, and nobody reported a lock. */
    @Test
    void in_great_britain_a_lock_that_only_the_trace_shows_counts_where_none_was_reported() {
        SignatureTable.Row slip = SignatureTable.named("first wheel slips, grip 0.35");
        Trace trace =
                ReferenceAxle.run(slip.first().withFriction(0.55), slip.second().withFriction(0.55));
        WheelReading turning = new WheelReading(null, null, null, false);

        Recorded untold = rollers(new AxleReading(2, null, null, null, trace));
        Recorded denied = rollers(new AxleReading(2, null, turning, turning, trace));

        assertThat(classesOf(deficiencies("gb-annual", aSmallVan(), untold), DeficiencyCode.SERVICE_IMBALANCE))
                .isEmpty();
        assertThat(classesOf(deficiencies("gb-annual", aSmallVan(), denied), DeficiencyCode.SERVICE_IMBALANCE))
                .containsExactly("major");
        assertThat(denied.figures().doubts()).extracting(TestDoubt::code).contains(DoubtCode.FIGURE_AGAINST_TRACE);
        assertThat(classesOf(deficiencies("eu-periodic", aSmallVan(), untold), DeficiencyCode.SERVICE_IMBALANCE))
                .containsExactly("major");
    }

    @Test
    void in_great_britain_two_wheels_of_low_effort_are_not_compared_and_the_source_of_the_rule_is_said() {
        Recorded low = rollers(axle(2, "392", "200"));
        Recorded enough = rollers(axle(2, "393", "200"));

        RegimeSheet sheet = RegimeFigures.of(List.of(low), aSmallVan(), terms("gb-annual", aSmallVan()));

        assertThat(sheet.exemptions())
                .singleElement()
                .satisfies(exemption -> assertThat(exemption.says())
                        .isEqualTo(
                                "both wheels give no more than 392.266 N; by MOT inspection manual, 1.2.1, both wheels at"
                                        + " about 40 kgf or less (rule: memory)"));
        assertThat(deficiencies("gb-annual", aSmallVan(), low)).isEmpty();
        assertThat(deficiencies("gb-annual", aSmallVan(), enough)).hasSize(1);
    }

    @Test
    void in_great_britain_efficiency_counts_as_met_when_more_than_half_of_the_wheels_lock() {
        Recorded three = rollers(
                axle(1, null, wheel("1500", true), wheel("1500", true)),
                axle(2, null, wheel("700", true), wheel("700", false)));
        Recorded two = rollers(
                axle(1, null, wheel("1500", true), wheel("1500", true)),
                axle(2, null, wheel("700", false), wheel("700", false)));

        assertThat(deficiencies("gb-annual", aSmallVan(), three)).isEmpty();
        assertThat(classesOf(deficiencies("gb-annual", aSmallVan(), two), DeficiencyCode.SERVICE_EFFICIENCY))
                .containsExactly("major");
    }

    static List<Deficiency> deficiencies(String regime, Vehicle vehicle, Recorded... tests) {
        RegimeTerms terms = terms(regime, vehicle);
        List<Object> facts = new ArrayList<>();
        terms.facts().forEach(facts::addAll);
        facts.addAll(RegimeFigures.of(List.of(tests), vehicle, terms).facts());
        for (Recorded test : tests) {
            if (test.figures() != null) {
                facts.addAll(test.figures().figures());
            }
        }
        return RULES.given(facts.toArray()).concluded(Deficiency.class);
    }

    static List<Deficiency> deficienciesOf(String regime, Vehicle vehicle, Figure figure) {
        List<Object> facts = new ArrayList<>();
        terms(regime, vehicle).facts().forEach(facts::addAll);
        facts.add(figure);
        return RULES.given(facts.toArray()).concluded(Deficiency.class);
    }

    static RegimeTerms terms(String regime, Vehicle vehicle) {
        return REGIMES.find(regime).termsFor(vehicle, TODAY);
    }

    static Figure vehicleFigure(RegimeSheet sheet) {
        return sheet.figures().stream()
                .filter(figure -> figure.place().equals(Place.VEHICLE))
                .findFirst()
                .orElseThrow();
    }

    static List<String> classesOf(List<Deficiency> found, DeficiencyCode code) {
        return found.stream()
                .filter(deficiency -> deficiency.code() == code)
                .map(deficiency -> String.valueOf(deficiency.severity()))
                .toList();
    }

    static List<Limit> limitsOf(RegimeTerms terms, DeficiencyCode code) {
        return terms.limits().stream()
                .filter(limit -> limit.deficiency() == code)
                .toList();
    }

    private static Offset<BigDecimal> within(String offset) {
        return Offset.offset(new BigDecimal(offset));
    }
}
