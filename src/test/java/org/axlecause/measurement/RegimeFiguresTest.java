package org.axlecause.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.axlecause.regimes.BrakeTests.TWO_PERCENT;
import static org.axlecause.regimes.BrakeTests.axle;
import static org.axlecause.regimes.BrakeTests.parking;
import static org.axlecause.regimes.BrakeTests.rollers;
import static org.axlecause.regimes.Vehicles.TODAY;
import static org.axlecause.regimes.Vehicles.aSmallVan;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.axlecause.facts.Accuracy;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.Bound;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.DeficiencyClass;
import org.axlecause.facts.Deviation;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitRisk;
import org.axlecause.facts.Place;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RegimeSheet;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.RoadTestRecorded;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Surface;
import org.axlecause.facts.Tester;
import org.axlecause.facts.Vehicle;
import org.axlecause.regimes.BrakeTests;
import org.axlecause.regimes.Regimes;
import org.axlecause.regimes.Vehicles;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RegimeFiguresTest {

    private static final Regimes REGIMES = Regimes.released();
    private static final long SEED = 20260302L;

    /** Efficiency of 2600, 2500, 1500 and 1450 N on 1200 kg with g = 9.81: 68.3826 %. */
    private static final Vehicle OF_1200_KG = Vehicles.masses(aSmallVan(), "1200", "1200");

    private static final BigDecimal[] FORCES = {
        new BigDecimal("2600"), new BigDecimal("2500"), new BigDecimal("1500"), new BigDecimal("1450")
    };

    @Test
    void efficiency_is_the_sum_of_the_forces_over_the_weight() {
        RegimeSheet sheet = sheet("eu-periodic", OF_1200_KG, whole(Stage.ARRIVAL, "rt-1"));

        assertThat(ofVehicle(sheet).value()).isCloseTo(new BigDecimal("0.683826"), within(new BigDecimal("0.0000005")));
        assertThat(ofVehicle(sheet).basis())
                .isEqualTo("of 1200 kg, maximum authorised mass; 9.81 m/s2 (gravity: common-practice)");
    }

    /** JCGM 100:2008, 5.1: 1 % each and independent, 5 kg on the mass: 0.4544 points. */
    @Test
    void independent_errors_of_the_forces_partly_cancel_in_the_sum() {
        double squares = 0;
        double sum = 0;
        for (BigDecimal force : FORCES) {
            squares += Math.pow(0.01 * force.doubleValue(), 2);
            sum += force.doubleValue();
        }

        double uncertainty = UncertaintyOfRatio.ofRatio(sum, Math.sqrt(squares), 1200 * 9.81, 5 * 9.81);

        assertThat(100 * uncertainty).isCloseTo(0.4544, within(0.00005));
    }

    /** JCGM 100:2008, 5.2: the same with one common scale error: 0.7408 points. */
    @Test
    void a_common_scale_error_does_not_cancel_in_the_sum() {
        double sum = 8050;

        double uncertainty = UncertaintyOfRatio.ofRatio(sum, 0.01 * sum, 1200 * 9.81, 5 * 9.81);

        assertThat(100 * uncertainty).isCloseTo(0.7408, within(0.00005));
    }

    @Test
    void a_scale_error_of_the_tester_is_taken_as_common_in_efficiency() {
        Recorded test = rollers(
                BrakeSystem.SERVICE,
                Stage.ARRIVAL,
                Surface.DRY,
                TWO_PERCENT,
                "rt-1",
                axle(1, "2600", "2500"),
                axle(2, "1500", "1450"));

        Figure efficiency = ofVehicle(sheet("eu-periodic", OF_1200_KG, test));

        assertThat(efficiency.uncertainty().doubleValue() / efficiency.value().doubleValue())
                .isCloseTo(0.02 / Math.sqrt(3), within(1e-6));
    }

    /** JCGM 100:2008, 4.3.7 and 5.1: 2000 and 1400 N, 2 % rectangular each: 1.1431 points; a common error: none. */
    @Test
    void the_uncertainty_of_an_imbalance_follows_from_its_two_forces() {
        Recorded test =
                rollers(BrakeSystem.SERVICE, Stage.ARRIVAL, Surface.DRY, TWO_PERCENT, "rt-1", axle(2, "2000", "1400"));

        Figure imbalance = ofAxle(sheet("eu-periodic", aSmallVan(), test), FigureKind.IMBALANCE, 2);

        assertThat(imbalance.value()).isEqualByComparingTo("0.30");
        assertThat(imbalance.uncertainty().doubleValue()).isCloseTo(0.011431, within(0.0000005));
        assertThat(ImbalanceUncertainty.linear(2000, 1400, 20, 14, 0)).isCloseTo(0.0098995, within(0.00000005));
        assertThat(ImbalanceUncertainty.linear(2000, 1400, 20, 14, 1)).isCloseTo(0, within(1e-9));
    }

    @Test
    void without_the_accuracy_of_the_tester_no_uncertainty_is_stated() {
        RegimeSheet sheet = sheet("eu-periodic", OF_1200_KG, whole(Stage.ARRIVAL, "rt-1"));

        assertThat(ofVehicle(sheet).uncertainty()).isNull();
        assertThat(ofAxle(sheet, FigureKind.IMBALANCE, 1).uncertainty()).isNull();
    }

    /** JCGM 101:2008: two million draws, seeded; the linear path must agree within 2 %. */
    @Test
    void the_linear_uncertainty_agrees_with_drawing_the_forces() {
        Random random = new Random(SEED);
        int draws = 2_000_000;
        double ofImbalance = 0;
        double ofImbalanceSquared = 0;
        double ofEfficiency = 0;
        double ofEfficiencySquared = 0;
        for (int i = 0; i < draws; i++) {
            double high = 2000 * (1 + 0.01 * random.nextGaussian());
            double low = 1400 * (1 + 0.01 * random.nextGaussian());
            double imbalance = 1 - low / high;
            double efficiency = (high + low) / ((700 + 5 * random.nextGaussian()) * 9.81);
            ofImbalance += imbalance;
            ofImbalanceSquared += imbalance * imbalance;
            ofEfficiency += efficiency;
            ofEfficiencySquared += efficiency * efficiency;
        }
        double drawnImbalance = deviation(ofImbalance, ofImbalanceSquared, draws);
        double drawnEfficiency = deviation(ofEfficiency, ofEfficiencySquared, draws);

        assertThat(ImbalanceUncertainty.linear(2000, 1400, 20, 14, 0) / drawnImbalance)
                .as("seed %d", SEED)
                .isCloseTo(1, within(0.02));
        assertThat(UncertaintyOfRatio.ofRatio(3400, Math.hypot(20, 14), 700 * 9.81, 5 * 9.81) / drawnEfficiency)
                .as("seed %d", SEED)
                .isCloseTo(1, within(0.02));
    }

    /** JCGM 106:2012, normal distribution: probability of conforming. */
    @ParameterizedTest(name = "{0} {1}, y = {2}, u = {3}: {4}")
    @CsvSource({
        "MINIMUM, 50, 50,     1,    0.5",
        "MINIMUM, 50, 51.645, 1,    0.95002",
        "MINIMUM, 50, 52,     1,    0.97725",
        "MINIMUM, 50, 49,     1,    0.15866",
        "MINIMUM, 58, 58.5,   0.8,  0.73401",
        "MAXIMUM, 30, 28.6,   0.99, 0.92134",
        "MAXIMUM, -5.40, -5.47, 0.05, 0.91924"
    })
    void the_probability_of_conforming_follows_from_value_uncertainty_and_limit(
            Bound bound, double limit, double value, double uncertainty, double conforming) {
        assertThat(1 - Conformity.probabilityNonConforming(value, uncertainty, bound, limit))
                .isCloseTo(conforming, within(0.000005));
    }

    /** JCGM 106:2012: between 9.6 and 10.2 with y = 10 and u = 0.2: 0.81859. */
    @Test
    void between_two_limits_the_two_probabilities_add_up() {
        double below = Conformity.probabilityNonConforming(10, 0.2, Bound.MINIMUM, 9.6);
        double above = Conformity.probabilityNonConforming(10, 0.2, Bound.MAXIMUM, 10.2);

        assertThat(1 - below - above).isCloseTo(0.81859, within(0.000005));
    }

    @Test
    void a_figure_at_its_limit_is_as_likely_beyond_it_as_within_and_one_without_uncertainty_says_nothing() {
        Recorded uncertain =
                rollers(BrakeSystem.SERVICE, Stage.ARRIVAL, Surface.DRY, TWO_PERCENT, "rt-1", axle(2, "2000", "1400"));
        Limit limit = terms("eu-periodic", aSmallVan()).limits().stream()
                .filter(each -> each.kind() == FigureKind.IMBALANCE
                        && each.brake() == BrakeSystem.SERVICE
                        && each.place().equals(Place.ofAxle(2)))
                .findFirst()
                .orElseThrow();
        Figure known = ofAxle(sheet("eu-periodic", aSmallVan(), uncertain), FigureKind.IMBALANCE, 2);
        Figure unknown =
                ofAxle(sheet("eu-periodic", aSmallVan(), rollers(axle(2, "2000", "1400"))), FigureKind.IMBALANCE, 2);

        assertThat(Conformity.risk(known, limit, null).nonConforming()).isEqualByComparingTo("0.5");
        assertThat(Conformity.risk(unknown, limit, null)).isNull();
    }

    /**
     * JCGM 101:2008 against two million draws of this test's own: at 300 and 200 N a tester of 2 % of 6 kN range knows each
     * force to 69 N, and the ratio of the two is no normal distribution any more.
     */
    @ParameterizedTest(name = "{0} and {1} N")
    @CsvSource({"300, 200", "300, 290", "150, 100", "400, 120"})
    void small_forces_are_weighed_by_simulation(double high, double low) {
        Tester ofRange =
                new Tester(new BigDecimal("0.02"), Accuracy.RANGE, new BigDecimal("6000"), null, new BigDecimal("1.4"));
        Recorded test = rollers(
                BrakeSystem.SERVICE,
                Stage.ARRIVAL,
                Surface.DRY,
                ofRange,
                "rt-1",
                axle(2, String.valueOf(high), String.valueOf(low)));
        Random random = new Random(SEED);
        int draws = 2_000_000;
        int beyond = 0;
        for (int i = 0; i < draws; i++) {
            double left = Math.max(0, high + 120 * (2 * random.nextDouble() - 1));
            double right = Math.max(0, low + 120 * (2 * random.nextDouble() - 1));
            beyond += Math.abs(left - right) > 0.30 * Math.max(left, right) ? 1 : 0;
        }

        LimitRisk risk = risk(sheet("eu-periodic", aSmallVan(), test), DeficiencyClass.MAJOR);

        double drawn = (double) beyond / draws;
        assertThat(risk.nonConforming().doubleValue())
                .as("seed %d", SEED)
                .isCloseTo(drawn, within(0.02 * Math.max(drawn, 1 - drawn)));
        double linear = Conformity.probabilityNonConforming(
                risk.figure().value().doubleValue(),
                ImbalanceUncertainty.linear(high, low, 69.28, 69.28, 0),
                Bound.MAXIMUM,
                0.30);
        assertThat(Math.abs(linear - drawn)).as("the linear way fails here").isGreaterThan(0.01);
    }

    /** 28.6 % with 0.99 points conforms with 0.92134 (JCGM 106:2012, normal): too close at 5 %, and half the risk again. */
    @Test
    void a_close_verdict_says_how_a_repeat_would_fare_and_a_clear_one_does_not() {
        LimitRisk close = risk(
                sheet(
                        "eu-periodic",
                        aSmallVan(),
                        rollers(
                                BrakeSystem.SERVICE,
                                Stage.ARRIVAL,
                                Surface.DRY,
                                TWO_PERCENT,
                                "rt-1",
                                axle(2, "2000", "1428"))),
                DeficiencyClass.MAJOR);
        LimitRisk clear = risk(
                sheet(
                        "eu-periodic",
                        aSmallVan(),
                        rollers(
                                BrakeSystem.SERVICE,
                                Stage.ARRIVAL,
                                Surface.DRY,
                                TWO_PERCENT,
                                "rt-1",
                                axle(2, "2000", "1900"))),
                DeficiencyClass.MAJOR);

        assertThat(close.isTooClose(new BigDecimal("0.05"))).isTrue();
        assertThat(close.misreading().doubleValue()).isBetween(0.1, 0.25);
        assertThat(close.says())
                .startsWith(
                        "imbalance axle 2 = 28.60 % (arrival test, service brake) keeps the maximum of 30.00 % (major),"
                                + " but with a probability of 11 % the true value is beyond it: too close to call.");
        assertThat(clear.isTooClose(new BigDecimal("0.05"))).isFalse();
        assertThat(clear.misreading()).isNull();
    }

    /** At the limit itself and with equal errors a second reading errs in a quarter of the cases: arctan(1) / pi. */
    @Test
    void at_the_limit_a_second_reading_misjudges_in_a_quarter_of_the_cases() {
        assertThat(Conformity.misreading(30, 1.2, 30)).isCloseTo(0.25, within(1e-12));
    }

    /** The integrals of JCGM 106:2012, 9.5, where the first reading is all that is known. */
    @ParameterizedTest
    @CsvSource({"26, 1.2, 30", "29.5, 1.2, 30", "30, 1.2, 30", "31, 1.2, 30", "33.5, 1.2, 30", "0.48, 0.011, 0.5"})
    void a_second_reading_misjudges_as_often_as_the_integrals_say(double value, double uncertainty, double limit) {
        NormalDistribution known = new NormalDistribution(value, uncertainty);
        ConformanceRisk risk = ConformanceRisk.of(
                known::density, value - 9 * uncertainty, value + 9 * uncertainty, uncertainty, limit, limit);

        assertThat(Conformity.misreading(value, uncertainty, limit))
                .isCloseTo(risk.consumer() + risk.producer(), within(1e-8));
    }

    /** The ratio of two forces is known as well as their imbalance (1.1431 points at 2 %); drag over load as well as drag. */
    @Test
    void a_ratio_and_a_share_of_the_load_state_their_uncertainty_too() {
        Recorded test = rollers(
                BrakeSystem.PARKING,
                Stage.ARRIVAL,
                Surface.DRY,
                TWO_PERCENT,
                "rt-1",
                axle(2, "500", BrakeTests.dragging("2000", "100"), BrakeTests.dragging("1400", "100")));

        RegimeSheet sheet = sheet("eu-periodic", aSmallVan(), test);

        assertThat(ofAxle(sheet, FigureKind.PARKING_RATIO, 2).uncertainty().doubleValue())
                .isCloseTo(0.011431, within(0.0000005));
        assertThat(sheet.figures())
                .filteredOn(figure -> figure.kind() == FigureKind.DRAG_SHARE_OF_AXLE_LOAD)
                .hasSize(2)
                .allSatisfy(figure -> assertThat(figure.uncertainty().doubleValue())
                        .isCloseTo(100 * 0.02 / Math.sqrt(3) / (500 * 9.81), within(1e-8)));
    }

    /** Great Britain: the lower wheel locked, so no verdict on the imbalance can be too close. */
    @Test
    void an_exempt_figure_is_not_weighed() {
        Recorded locked = rollers(
                BrakeSystem.SERVICE,
                Stage.ARRIVAL,
                Surface.DRY,
                TWO_PERCENT,
                "rt-1",
                axle(2, null, BrakeTests.wheel("2000", false), BrakeTests.wheel("1400", true)));

        assertThat(sheet("gb-annual", aSmallVan(), locked).risks())
                .noneMatch(risk -> risk.figure().kind() == FigureKind.IMBALANCE);
        assertThat(sheet("eu-periodic", aSmallVan(), locked).risks())
                .anyMatch(risk -> risk.figure().kind() == FigureKind.IMBALANCE);
    }

    private static LimitRisk risk(RegimeSheet sheet, DeficiencyClass severity) {
        return sheet.risks().stream()
                .filter(risk -> risk.figure().kind() == FigureKind.IMBALANCE
                        && risk.limit().severity() == severity)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void efficiency_of_the_vehicle_needs_every_braked_axle_of_the_stage() {
        RegimeSheet rearOnly = sheet("eu-periodic", OF_1200_KG, rollers(axle(2, "1500", "1450")));

        assertThat(ofVehicle(rearOnly))
                .returns(false, Figure::observable)
                .returns("not tested in this stage: axle 1", Figure::basis);
    }

    @Test
    void axles_tested_one_after_the_other_in_a_stage_make_one_efficiency_from_the_latest_of_each() {
        Recorded front = stage(Stage.ARRIVAL, "rt-1", axle(1, "2600", "2500"));
        Recorded badRear = stage(Stage.ARRIVAL, "rt-2", axle(2, "100", "100"));
        Recorded rear = stage(Stage.ARRIVAL, "rt-3", axle(2, "1500", "1450"));
        Recorded otherStage = stage(Stage.FINAL, "rt-4", axle(2, "1600", "1600"));

        RegimeSheet sheet = sheet("eu-periodic", OF_1200_KG, otherStage, rear, badRear, front);

        Figure arrival = sheet.figures().stream()
                .filter(figure -> figure.place().equals(Place.VEHICLE) && figure.stage() == Stage.ARRIVAL)
                .findFirst()
                .orElseThrow();
        assertThat(arrival.value()).isCloseTo(new BigDecimal("0.683826"), within(new BigDecimal("0.0000005")));
        assertThat(arrival.test()).isEqualTo(rear.id());
        assertThat(sheet.figures())
                .filteredOn(figure -> figure.place().equals(Place.VEHICLE) && figure.stage() == Stage.FINAL)
                .singleElement()
                .returns(false, Figure::observable);
    }

    @Test
    void the_order_in_which_tests_arrive_changes_nothing() {
        List<Recorded> tests = new ArrayList<>(List.of(
                whole(Stage.ARRIVAL, "rt-1"),
                whole(Stage.FINAL, "rt-2"),
                stage(Stage.FINAL, "rt-3", axle(2, "9", "8"))));
        RegimeSheet once = RegimeFigures.of(tests, OF_1200_KG, terms("eu-periodic", OF_1200_KG));

        Collections.reverse(tests);

        assertThat(RegimeFigures.of(tests, OF_1200_KG, terms("eu-periodic", OF_1200_KG)))
                .isEqualTo(once);
    }

    @Test
    void the_parking_brake_is_measured_on_the_axles_that_it_acts_on() {
        RegimeSheet sheet = sheet("eu-periodic", OF_1200_KG, parking(axle(2, "1000", "883.52")));

        assertThat(ofVehicle(sheet).value()).isEqualByComparingTo("0.16");
        assertThat(ofAxle(sheet, FigureKind.PARKING_RATIO, 2).value()).isEqualByComparingTo("0.88352");
    }

    /** UN Regulation No. 13, Annex 4, 1.1.2: (vb2 - ve2) / (25.92 (se - sb)), speeds in km/h. */
    @ParameterizedTest(name = "from {0} km/h over {1} m")
    @CsvSource({"100, 37.80024, 6.43", "80, 26.81992, 5.8", "60, 17.5, 5.0"})
    void deceleration_follows_from_speeds_and_distances(String speed, String distance, String expected) {
        BigDecimal initial = new BigDecimal(speed).divide(new BigDecimal("3.6"), MathContext.DECIMAL128);

        RegimeSheet sheet = sheet(
                "eu-periodic",
                aSmallVan(),
                road(initial, null, BigDecimal.ONE, BigDecimal.ONE.add(new BigDecimal(distance)), null));

        Figure deceleration = sheet.figures().stream()
                .filter(figure -> figure.kind() == FigureKind.MEAN_FULLY_DEVELOPED_DECELERATION)
                .findFirst()
                .orElseThrow();
        assertThat(deceleration.value()).isCloseTo(new BigDecimal(expected), within(new BigDecimal("0.00001")));
    }

    /**
     * UN Regulation No. 13-H and No. 13, Annex 4, and 71/320/EEC: 0.1 v or 0.15 v and v2 / k, v in km/h (distances from
     * memory, secondary rows of No. 13 read); a divisor k stands for a deceleration of k / 25.92.
     */
    @ParameterizedTest(name = "from {0} km/h: {3} m")
    @CsvSource({
        "100, 0.36, 166.666666667, 70.0",
        "100, 0.36, 63.291139241,  168.0",
        "80,  0.36, 150,           50.667",
        "60,  0.54, 130,           36.692",
        "80,  0.36, 75,            93.333",
        "60,  0.54, 65,            64.385",
        "70,  0.54, 57.5,          95.717",
        "50,  0.54, 57.5,          50.978",
        "40,  0.54, 57.5,          33.826"
    })
    void a_stopping_distance_and_a_deceleration_follow_from_each_other(
            String speed, String buildUp, String divisor, String distance) {
        BigDecimal initial = new BigDecimal(speed).divide(new BigDecimal("3.6"), MathContext.DECIMAL128);
        BigDecimal deceleration = new BigDecimal(divisor).divide(new BigDecimal("25.92"), MathContext.DECIMAL128);

        BigDecimal stop = StoppingDistance.of(initial, new BigDecimal(buildUp), deceleration);

        assertThat(stop).isCloseTo(new BigDecimal(distance), within(new BigDecimal("0.0005")));
        assertThat(StoppingDistance.deceleration(initial, new BigDecimal(buildUp), stop))
                .isCloseTo(deceleration, within(new BigDecimal("1e-20")));
        assertThat(StoppingDistance.deceleration(initial, BigDecimal.TEN, stop)).isNull();
    }

    /** 50.667 m from 80 km/h are 5.787 m/s2 (71/320/EEC, old M1). */
    @Test
    void a_stopping_distance_alone_shows_a_deceleration_with_its_basis() {
        BigDecimal speed = new BigDecimal("80").divide(new BigDecimal("3.6"), MathContext.DECIMAL128);
        Recorded stop = BrakeTests.road(new RoadTestRecorded(
                Stage.ARRIVAL,
                BrakeSystem.SERVICE,
                speed,
                null,
                null,
                null,
                null,
                null,
                new BigDecimal("50.667"),
                null));

        assertThat(sheet("eu-periodic", aSmallVan(), stop).figures())
                .filteredOn(figure -> figure.kind() == FigureKind.MEAN_FULLY_DEVELOPED_DECELERATION)
                .singleElement()
                .returns("from the stopping distance, 0.36 s allowed for the build-up (time: memory)", Figure::basis)
                .satisfies(figure -> assertThat(figure.value())
                        .isCloseTo(new BigDecimal("5.787"), within(new BigDecimal("0.0005"))));
    }

    @Test
    void a_deceleration_over_gravity_is_an_efficiency_where_the_regime_reads_it_so() {
        Recorded road = road(null, new BigDecimal("4.905"), null, null, Deviation.EXCESSIVE);

        RegimeSheet inEurope = sheet("eu-periodic", aSmallVan(), road);
        RegimeSheet inChina = sheet("cn-inspection", aSmallVan(), road);

        assertThat(inEurope.figures())
                .filteredOn(figure -> figure.kind() == FigureKind.EFFICIENCY)
                .singleElement()
                .satisfies(figure -> assertThat(figure.value()).isEqualByComparingTo("0.5"));
        assertThat(inEurope.deviations()).hasSize(1);
        assertThat(inChina.figures())
                .extracting(Figure::kind)
                .containsExactly(FigureKind.MEAN_FULLY_DEVELOPED_DECELERATION);
    }

    @Test
    void a_road_test_without_deceleration_speeds_or_distances_shows_none() {
        RegimeSheet sheet = sheet("eu-periodic", aSmallVan(), road(new BigDecimal("20"), null, null, null, null));

        assertThat(sheet.figures()).singleElement().returns(false, Figure::observable);
    }

    private static double deviation(double sum, double squares, int n) {
        return Math.sqrt(squares / n - (sum / n) * (sum / n));
    }

    private static Recorded whole(Stage stage, String id) {
        return stage(stage, id, axle(1, "2600", "2500"), axle(2, "1500", "1450"));
    }

    private static Recorded stage(Stage stage, String id, AxleReading... axles) {
        return rollers(BrakeSystem.SERVICE, stage, Surface.DRY, null, id, axles);
    }

    private static Recorded road(
            @Nullable BigDecimal initial,
            @Nullable BigDecimal deceleration,
            @Nullable BigDecimal from,
            @Nullable BigDecimal to,
            @Nullable Deviation deviation) {
        return BrakeTests.road(new RoadTestRecorded(
                Stage.ARRIVAL, BrakeSystem.SERVICE, initial, deceleration, null, null, from, to, null, deviation));
    }

    private static RegimeSheet sheet(String regime, Vehicle vehicle, Recorded... tests) {
        return RegimeFigures.of(List.of(tests), vehicle, terms(regime, vehicle));
    }

    private static RegimeTerms terms(String regime, Vehicle vehicle) {
        return REGIMES.find(regime).termsFor(vehicle, TODAY);
    }

    private static Figure ofVehicle(RegimeSheet sheet) {
        return sheet.figures().stream()
                .filter(figure -> figure.place().equals(Place.VEHICLE))
                .findFirst()
                .orElseThrow();
    }

    private static Figure ofAxle(RegimeSheet sheet, FigureKind kind, int axle) {
        return sheet.figures().stream()
                .filter(figure -> figure.kind() == kind && figure.place().equals(Place.ofAxle(axle)))
                .findFirst()
                .orElseThrow();
    }
}
