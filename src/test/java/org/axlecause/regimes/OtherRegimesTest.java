package org.axlecause.regimes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.axlecause.inference.RuleBench.shownBy;
import static org.axlecause.regimes.BrakeTests.axle;
import static org.axlecause.regimes.BrakeTests.dragging;
import static org.axlecause.regimes.BrakeTests.rollers;
import static org.axlecause.regimes.BrakeTests.wheel;
import static org.axlecause.regimes.EuropeanLimitsTest.classesOf;
import static org.axlecause.regimes.EuropeanLimitsTest.deficiencies;
import static org.axlecause.regimes.EuropeanLimitsTest.terms;
import static org.axlecause.regimes.Vehicles.aSmallVan;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.axlecause.facts.Axle;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.Deficiency;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RegimeGap;
import org.axlecause.facts.RegimeSheet;
import org.axlecause.facts.RoadTestRecorded;
import org.axlecause.facts.Samples;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Surface;
import org.axlecause.facts.Trace;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.WheelReading;
import org.axlecause.measurement.RegimeFigures;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Regimes with formulas of their own: Japan, Korea, China, the Eurasian Union and the United States. */
class OtherRegimesTest {

    /** NALTEC inspector examination 2018 no. 2, question 8: masses 1340 and 1030 kg, 2370 kg together. */
    private static final Vehicle OF_THE_EXAMINATION = Vehicles.vehicle(
            "M1",
            LocalDate.of(2012, 4, 1),
            null,
            true,
            CircuitSplit.DIAGONAL,
            null,
            null,
            "2370",
            null,
            null,
            List.of(
                    new Axle(1, true, BrakeLayout.DISC_FLOATING, ParkingLayout.NONE, new BigDecimal("1340")),
                    new Axle(
                            2,
                            false,
                            BrakeLayout.DRUM_SIMPLEX,
                            ParkingLayout.CABLE_ON_SERVICE_SHOES,
                            new BigDecimal("1030"))));

    /** The same question: front 4880 and 5970 N, rear 910 and 110 N, dry, axle loads not measured. */
    private static final Recorded EXAMINATION = rollers(axle(1, "4880", "5970"), axle(2, "910", "110"));

    @Test
    void the_japanese_examination_comes_out_at_its_four_narrow_verdicts() {
        RegimeSheet sheet =
                RegimeFigures.of(List.of(EXAMINATION), OF_THE_EXAMINATION, terms("jp-inspection", OF_THE_EXAMINATION));

        assertThat(value(sheet, FigureKind.IMBALANCE_PER_AXLE_MASS, Place.ofAxle(1)))
                .isEqualTo(new BigDecimal("0.781"));
        assertThat(value(sheet, FigureKind.IMBALANCE_PER_AXLE_MASS, Place.ofAxle(2)))
                .isEqualTo(new BigDecimal("0.776"));
        assertThat(value(sheet, FigureKind.EFFORT_PER_MASS, Place.ofAxle(2))).isEqualTo(new BigDecimal("0.990"));
        assertThat(value(sheet, FigureKind.EFFORT_PER_MASS, Place.VEHICLE)).isEqualTo(new BigDecimal("4.894"));

        assertThat(deficiencies("jp-inspection", OF_THE_EXAMINATION, EXAMINATION))
                .extracting(Deficiency::code, Deficiency::place)
                .containsExactlyInAnyOrder(
                        tuple(DeficiencyCode.SERVICE_IMBALANCE, Place.ofAxle(1)),
                        tuple(DeficiencyCode.SERVICE_EFFICIENCY, Place.VEHICLE));
    }

    @Test
    void in_japan_the_driver_sits_on_the_front_axle_only_where_the_axles_were_not_weighed() {
        Recorded weighed = rollers(axle(1, "1340", "4880", "5970"), axle(2, "1030", "910", "110"));

        RegimeSheet sheet =
                RegimeFigures.of(List.of(weighed), OF_THE_EXAMINATION, terms("jp-inspection", OF_THE_EXAMINATION));

        assertThat(value(sheet, FigureKind.IMBALANCE_PER_AXLE_MASS, Place.ofAxle(1)))
                .isEqualTo(new BigDecimal("0.813"));
        assertThat(figure(sheet, FigureKind.EFFORT_PER_MASS, Place.VEHICLE).basis())
                .isEqualTo("of 2370 kg, mass in test state, axle loads weighed during the test (secondary)");
    }

    /** Japan, inspection procedure: on wet rollers 3.92 N/kg is accepted. */
    @ParameterizedTest(name = "{0} N in all on {1} rollers")
    @CsvSource({"9506, WET, 0", "9505, WET, 1", "9506, DRY, 1", "11882.5, DRY, 0", "11882, DRY, 1"})
    void in_japan_wet_rollers_ask_for_less(String sum, Surface surface, int expected) {
        String front = new BigDecimal(sum)
                .subtract(new BigDecimal("1100"))
                .divide(BigDecimal.valueOf(2))
                .toPlainString();
        Recorded test = rollers(
                BrakeSystem.SERVICE,
                Stage.ARRIVAL,
                surface,
                null,
                "rt-1",
                axle(1, front, front),
                axle(2, "550", "550"));

        assertThat(classesOf(
                        deficiencies("jp-inspection", OF_THE_EXAMINATION, test), DeficiencyCode.SERVICE_EFFICIENCY))
                .hasSize(expected);
    }

    @Test
    void in_japan_a_locked_front_axle_counts_as_enough() {
        Recorded locked = rollers(axle(1, null, wheel("3000", true), wheel("3000", true)), axle(2, "600", "600"));
        Recorded oneWheel = rollers(axle(1, null, wheel("3000", true), wheel("3000", false)), axle(2, "600", "600"));

        assertThat(deficiencies("jp-inspection", OF_THE_EXAMINATION, locked)).isEmpty();
        assertThat(deficiencies("jp-inspection", OF_THE_EXAMINATION, oneWheel)).hasSize(1);
    }

    @Test
    void without_an_axle_load_the_load_is_asked_for_and_nothing_is_guessed() {
        RegimeSheet sheet = RegimeFigures.of(
                List.of(rollers(axle(2, "900", "300"))), aSmallVan(), terms("kr-inspection", aSmallVan()));

        assertThat(figure(sheet, FigureKind.IMBALANCE_OVER_AXLE_LOAD, Place.ofAxle(2)))
                .returns(false, Figure::observable)
                .returns("the axle load is not known", Figure::basis);
        assertThat(sheet.gaps()).singleElement().returns(QuestionCode.MASS_MISSING, RegimeGap::code);
    }

    /** Korea Transportation Safety Authority: difference over 8 % and a rear axle below 20 % of its load; g = 9.8. */
    @ParameterizedTest(name = "{0} and {1} N on 500 kg")
    @CsvSource({"800, 408, ", "800, 407.9, service-imbalance", "686, 294, ", "685.9, 294, service-efficiency"})
    void in_korea_both_figures_are_related_to_the_axle_load(String left, String right, @Nullable String expected) {
        Recorded test = rollers(axle(2, "500", left, right));

        assertThat(deficiencies("kr-inspection", aSmallVan(), test).stream()
                        .map(deficiency -> deficiency.code().toString()))
                .isEqualTo(expected == null ? List.of() : List.of(expected));
    }

    /**
     * GB 7258-2017: a rear axle of at least 60 % of its load (here 2940 N of 4900 N) is compared by the higher wheel
     * with 30 %, a weaker one by its load with 10 % (490 N).
     */
    @ParameterizedTest(name = "{0} and {1} N on 500 kg: {2}")
    @CsvSource({
        "1740, 1218, imbalance, ",
        "1740, 1217, imbalance, fails",
        "1700, 1239, imbalance-over-axle-load, ",
        "1700, 1210, imbalance-over-axle-load, ",
        "1700, 1209, imbalance-over-axle-load, fails"
    })
    void in_china_the_force_of_a_rear_axle_chooses_the_formula(
            String left, String right, String kind, @Nullable String verdict) {
        Recorded test = rollers(axle(2, "500", left, right));
        boolean branch = new BigDecimal(left).add(new BigDecimal(right)).compareTo(new BigDecimal("2940")) >= 0;

        List<Deficiency> found = deficiencies("cn-inspection", aSmallVan(), test);

        assertThat(branch).isEqualTo(kind.equals("imbalance"));
        RegimeSheet sheet = RegimeFigures.of(List.of(test), aSmallVan(), terms("cn-inspection", aSmallVan()));
        assertThat(sheet.figures().stream()
                        .filter(figure -> figure.place().equals(Place.ofAxle(2))
                                && figure.observable()
                                && figure.kind() != FigureKind.EFFICIENCY)
                        .map(figure -> figure.kind().toString()))
                .containsExactly(kind);
        assertThat(classesOf(found, DeficiencyCode.SERVICE_IMBALANCE)).hasSize(verdict == null ? 0 : 1);
    }

    @Test
    void in_china_the_largest_difference_at_one_instant_counts_not_that_of_the_peaks() {
        AxleReading reading = new AxleReading(
                1,
                new BigDecimal("700"),
                new WheelReading(new BigDecimal("2500"), null, null, false),
                new WheelReading(new BigDecimal("2500"), null, null, false),
                new Trace(
                        new BigDecimal("0.1"),
                        Samples.of(0, 900, 1500, 2000, 2500, 2500),
                        Samples.of(0, 300, 800, 1350, 2300, 2500),
                        null));
        Recorded test = recordedWithPeaks(reading);

        RegimeSheet sheet = RegimeFigures.of(List.of(test), aSmallVan(), terms("cn-inspection", aSmallVan()));

        assertThat(figure(sheet, FigureKind.IMBALANCE, Place.ofAxle(1)))
                .satisfies(figure -> assertThat(figure.value()).isEqualByComparingTo("0.28"))
                .satisfies(figure -> assertThat(figure.basis()).endsWith("difference at one instant of the trace"));
    }

    /** GB 7258: each wheel with the brake released at most 5 % of its axle load; 245 N of 4900 N. */
    @ParameterizedTest(name = "{0} N")
    @CsvSource({"245, 0", "245.1, 1"})
    void in_china_drag_has_a_limit_of_its_own(String drag, int expected) {
        Recorded test = rollers(axle(2, "500", dragging("1700", drag), dragging("1700", "60")));

        assertThat(deficiencies("cn-inspection", aSmallVan(), test))
                .hasSize(expected)
                .allSatisfy(shownBy("DEF-060", "drag-share-of-axle-load axle 2 left", "maximum 5.00 %"));
    }

    /** GB 7258-2017: 60 % unladen, 50 % laden. */
    @Test
    void in_china_the_state_of_load_chooses_the_efficiency() {
        Vehicle laden = Vehicles.masses(aSmallVan(), "2020", "2000");
        Vehicle unknown = Vehicles.masses(aSmallVan(), "2020", null);

        assertThat(minimum("cn-inspection", aSmallVan())).isEqualByComparingTo("0.60");
        assertThat(minimum("cn-inspection", laden)).isEqualByComparingTo("0.50");
        assertThat(minimum("cn-inspection", unknown)).isEqualByComparingTo("0.50");
        assertThat(terms("cn-inspection", unknown).gaps())
                .extracting(RegimeGap::code)
                .contains(QuestionCode.LIMIT_MISSING);
    }

    /** GOST 33997-2016, Annex A.2: the forces as the leading wheel slips, here 2000 and 1500 N. */
    @Test
    void in_the_eurasian_union_the_forces_are_taken_as_the_first_wheel_slips() {
        AxleReading reading = new AxleReading(
                1,
                new BigDecimal("700"),
                new WheelReading(new BigDecimal("2000"), null, null, true),
                new WheelReading(new BigDecimal("1900"), null, null, false),
                new Trace(
                        new BigDecimal("0.1"),
                        Samples.of(0, 1000, 2000, 1200, 1100),
                        Samples.of(0, 700, 1500, 1800, 1900),
                        null));

        RegimeSheet slipping = RegimeFigures.of(
                List.of(recordedWithPeaks(reading)), aSmallVan(), terms("eaeu-inspection", aSmallVan()));
        RegimeSheet peaks = RegimeFigures.of(
                List.of(rollers(axle(1, "2000", "1900"))), aSmallVan(), terms("eaeu-inspection", aSmallVan()));

        assertThat(value(slipping, FigureKind.IMBALANCE, Place.ofAxle(1))).isEqualByComparingTo("0.25");
        assertThat(value(peaks, FigureKind.IMBALANCE, Place.ofAxle(1))).isEqualByComparingTo("0.05");
        assertThat(figure(peaks, FigureKind.IMBALANCE, Place.ofAxle(1)).basis())
                .endsWith("highest forces, no instant of slip was recorded");
    }

    /** The value is from memory and unconfirmed: 20 % for disc brakes, 25 % for drum brakes. */
    @ParameterizedTest(name = "axle {0}: {1} and {2} N")
    @CsvSource({"1, 2000, 1600, 0", "1, 2000, 1599, 1", "2, 2000, 1500, 0", "2, 2000, 1499, 1"})
    void in_the_eurasian_union_an_unconfirmed_value_only_warns(int number, String left, String right, int expected) {
        assertThat(deficiencies("eaeu-inspection", aSmallVan(), rollers(axle(number, left, right))))
                .hasSize(expected)
                .allSatisfy(shownBy("DEF-100", "(value: memory)"))
                .allSatisfy(found -> assertThat(found.severity()).isNull());
    }

    /** 49 CFR 570.5 (d): 25 %, and 25 ft (7.62 m) from 20 mph (8.9408 m/s); a class is not known there. */
    @Test
    void in_the_united_states_the_sides_and_the_stop_have_limits_without_a_class() {
        assertThat(deficiencies("us-in-use", aSmallVan(), rollers(axle(1, "2000", "1500"))))
                .isEmpty();
        assertThat(deficiencies("us-in-use", aSmallVan(), rollers(axle(1, "2000", "1499"))))
                .singleElement()
                .returns("570.5 (d) (1)", Deficiency::item)
                .satisfies(found -> assertThat(found.severity()).isNull());
        assertThat(deficiencies("us-in-use", aSmallVan(), stop("8.9408", "7.62")))
                .isEmpty();
        assertThat(deficiencies("us-in-use", aSmallVan(), stop("8.9408", "7.63")))
                .singleElement()
                .returns(DeficiencyCode.SERVICE_EFFICIENCY, Deficiency::code);
        assertThat(deficiencies("us-in-use", aSmallVan(), stop("13.4", "17")))
                .as("a stop from another speed says nothing")
                .isEmpty();
    }

    /** 49 CFR 393.52 (d): 52.8 % for property vehicles up to 10 000 lb, 43.5 % above; g = 9.80665. */
    @Test
    void a_commercial_vehicle_in_the_united_states_is_judged_by_its_group() {
        Vehicle heavy = Vehicles.masses(Vehicles.anyVehicle("N2", LocalDate.of(2016, 5, 1)), "4536", "1000");
        Vehicle light = Vehicles.masses(Vehicles.anyVehicle("N2", LocalDate.of(2016, 5, 1)), "4535", "1000");
        Recorded test = rollers(axle(1, "1500", "1500"), axle(2, "1000", "1000"));

        assertThat(deficiencies("us-commercial", heavy, test)).isEmpty();
        assertThat(deficiencies("us-commercial", light, test))
                .singleElement()
                .satisfies(shownBy("DEF-020", "efficiency vehicle = 50.99 %", "minimum 52.80 %"));
    }

    /** Czech decree 211/2018: above 30 % is dangerous on every axle; 10 % about the mean is 18.18 % of the highest force. */
    @ParameterizedTest(name = "{0} and {1} N, swing {2}")
    @CsvSource({"2000, 1400, 0.1818, ", "2000, 1399, 0.05, dangerous", "2000, 1900, 0.1819, major"})
    void in_the_czech_republic_sides_and_fluctuation_have_figures(
            String left, String right, String swing, @Nullable String expected) {
        WheelReading swinging = new WheelReading(new BigDecimal(left), null, new BigDecimal(swing), false);
        Recorded test = rollers(axle(2, null, swinging, wheel(right, false)));

        assertThat(deficiencies("cz-periodic", aSmallVan(), test).stream()
                        .map(deficiency -> String.valueOf(deficiency.severity())))
                .isEqualTo(expected == null ? List.of() : List.of(expected));
    }

    /** The same decree: efficiency below the minimum is dangerous at once, here 50 % of a van of 2015. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"0.50, ", "0.4999, dangerous"})
    void in_the_czech_republic_a_low_efficiency_is_dangerous_at_once(String value, @Nullable String expected) {
        assertThat(EuropeanLimitsTest.deficienciesOf(
                                "cz-periodic",
                                aSmallVan(),
                                BrakeTests.ofVehicle(FigureKind.EFFICIENCY, BrakeSystem.SERVICE, value))
                        .stream()
                        .map(deficiency -> String.valueOf(deficiency.severity())))
                .isEqualTo(expected == null ? List.of() : List.of(expected));
    }

    /** Polish order Dz.U. 2015 item 776: 1 kN as 100 kg, so 16 % of 2020 kg are 3232 N; locked wheels count as enough. */
    @Test
    void in_poland_a_kilonewton_is_a_hundred_kilograms_and_locked_wheels_are_enough() {
        assertThat(deficiencies("pl-periodic", aSmallVan(), BrakeTests.parking(axle(2, "1616", "1616"))))
                .isEmpty();
        assertThat(deficiencies("pl-periodic", aSmallVan(), BrakeTests.parking(axle(2, "1616", "1615"))))
                .extracting(Deficiency::code)
                .containsExactly(DeficiencyCode.PARKING_EFFICIENCY);
        assertThat(deficiencies(
                        "pl-periodic",
                        aSmallVan(),
                        BrakeTests.parking(axle(2, null, wheel("900", true), wheel("900", true)))))
                .isEmpty();
    }

    /** National Heavy Vehicle Regulator, 2018: 45 % of gravity are 4.4 kN for each tonne, to the figure's two digits. */
    @Test
    void in_australia_a_heavy_vehicle_needs_4_4_kilonewtons_a_tonne() {
        Vehicle lorry = Vehicles.masses(Vehicles.anyVehicle("N3", LocalDate.of(2016, 5, 1)), "16000", "10000");

        assertThat(deficiencies("au-heavy", lorry, rollers(axle(1, "12000", "12000"), axle(2, "10050", "10050"))))
                .isEmpty();
        assertThat(deficiencies("au-heavy", lorry, rollers(axle(1, "12000", "12000"), axle(2, "10049", "10050"))))
                .extracting(Deficiency::code)
                .containsExactly(DeficiencyCode.SERVICE_EFFICIENCY);
    }

    private static Recorded stop(String speed, String distance) {
        return BrakeTests.road(new RoadTestRecorded(
                Stage.ARRIVAL,
                BrakeSystem.SERVICE,
                new BigDecimal(speed),
                null,
                null,
                null,
                null,
                null,
                new BigDecimal(distance),
                null));
    }

    /** A test whose peaks are those recorded, whatever the shape of its trace. */
    private static Recorded recordedWithPeaks(AxleReading reading) {
        Recorded withTrace = rollers(reading);
        Recorded peaksOnly =
                rollers(new AxleReading(reading.number(), reading.load(), reading.left(), reading.right(), null));
        return new Recorded(withTrace.id(), withTrace.time(), withTrace.entry(), peaksOnly.figures());
    }

    private static BigDecimal minimum(String regime, Vehicle vehicle) {
        return EuropeanLimitsTest.limitsOf(terms(regime, vehicle), DeficiencyCode.SERVICE_EFFICIENCY).stream()
                .filter(limit -> limit.place().equals(Place.VEHICLE) && limit.kind() == FigureKind.EFFICIENCY)
                .findFirst()
                .orElseThrow()
                .value();
    }

    private static BigDecimal value(RegimeSheet sheet, FigureKind kind, Place place) {
        return figure(sheet, kind, place).value();
    }

    private static Figure figure(RegimeSheet sheet, FigureKind kind, Place place) {
        return sheet.figures().stream()
                .filter(figure -> figure.kind() == kind && figure.place().equals(place))
                .findFirst()
                .orElseThrow();
    }
}
