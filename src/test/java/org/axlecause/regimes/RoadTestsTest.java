package org.axlecause.regimes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.regimes.EuropeanLimitsTest.deficiencies;
import static org.axlecause.regimes.Vehicles.aSmallVan;
import static org.axlecause.regimes.Vehicles.anyVehicle;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Deficiency;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.Deviation;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RoadTestRecorded;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Vehicle;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Decelerometer and road tests, each regime by its own rules, at and just below its figures. */
class RoadTestsTest {

    private static final LocalDate IN_2016 = LocalDate.of(2016, 5, 1);

    /** GB 7258-2004, table 4 (secondary): a car 6.2 unladen and 5.9 laden, others up to 3.5 t 5.8 and 5.4 m/s2. */
    @ParameterizedTest(name = "{0} of {1} kg tested at {2} kg: {3} m/s2")
    @CsvSource({
        "M1, 2000, 1400, 6.2,  0",
        "M1, 2000, 1400, 6.19, 1",
        "M1, 2000, 1900, 5.9,  0",
        "M1, 2000, 1900, 5.89, 1",
        "N1, 2000, 1400, 5.8,  0",
        "N1, 2000, 1400, 5.79, 1",
        "N1, 2000, 1900, 5.4,  0",
        "N1, 2000, 1900, 5.39, 1",
        "N3, 16000, 15000, 5.0, 0",
        "N3, 16000, 15000, 4.99, 1"
    })
    void in_china_the_mean_fully_developed_deceleration_has_minima(
            String category, String maximum, String tested, String deceleration, int expected) {
        Vehicle vehicle = Vehicles.masses(anyVehicle(category, IN_2016), maximum, tested);

        assertThat(deficiencies("cn-inspection", vehicle, decelerated(BrakeSystem.SERVICE, deceleration)))
                .hasSize(expected)
                .allSatisfy(found -> assertThat(found.code()).isEqualTo(DeficiencyCode.SERVICE_EFFICIENCY));
    }

    /** Technical regulation, table 2.8 (read): secondary brake 2.60, 2.25 and 2.20 m/s2. */
    @ParameterizedTest(name = "{0}: {1} m/s2")
    @CsvSource({"M1, 2.60, 0", "M1, 2.59, 1", "M3, 2.25, 0", "M3, 2.24, 1", "N1, 2.20, 0", "N1, 2.19, 1"})
    void in_the_eurasian_union_the_secondary_brake_has_minima(String category, String deceleration, int expected) {
        assertThat(deficiencies(
                        "eaeu-inspection",
                        anyVehicle(category, IN_2016),
                        decelerated(BrakeSystem.SECONDARY, deceleration)))
                .hasSize(expected)
                .allSatisfy(found -> assertThat(found.code()).isEqualTo(DeficiencyCode.SECONDARY_EFFICIENCY));
    }

    /**
     * Europe reads a deceleration as a share of gravity: 58 % of 9.81 m/s2 are 5.6898 (Directive 2014/45/EU, 1.2.2), 50 % of
     * 9.80665 are 4.903325 (MOT inspection manual, 1.2.2; a van).
     */
    @ParameterizedTest(name = "{0} {1}: {2} m/s2")
    @CsvSource({
        "eu-periodic, M1, 5.6898, ",
        "eu-periodic, M1, 5.6897, major",
        "eu-periodic, M1, 2.8449, major",
        "eu-periodic, M1, 2.8448, dangerous",
        "gb-annual,   N1, 4.903325, ",
        "gb-annual,   N1, 4.9033, major"
    })
    void in_europe_a_decelerometer_shows_the_efficiency(
            String regime, String category, String deceleration, @Nullable String expected) {
        assertThat(
                        deficiencies(
                                        regime,
                                        anyVehicle(category, IN_2016),
                                        decelerated(BrakeSystem.SERVICE, deceleration))
                                .stream()
                                .map(found -> String.valueOf(found.severity())))
                .isEqualTo(expected == null ? List.of() : List.of(expected));
    }

    /** Directive 2014/45/EU, 1.2.1 (b) and 1.4.1: excessive deviation from a straight line, major. */
    @ParameterizedTest(name = "{0} brake, {1}")
    @CsvSource({
        "SERVICE, EXCESSIVE, SERVICE_IMBALANCE",
        "SERVICE, SLIGHT, ",
        "SERVICE, NONE, ",
        "PARKING, EXCESSIVE, PARKING_ONE_SIDED",
        "PARKING, SLIGHT, "
    })
    void leaving_the_straight_line_too_far_is_a_deficiency(
            BrakeSystem brake, Deviation deviation, @Nullable DeficiencyCode expected) {
        Recorded test = BrakeTests.road(new RoadTestRecorded(
                Stage.ARRIVAL, brake, null, new BigDecimal("7"), null, null, null, null, null, deviation));

        assertThat(deficiencies("eu-periodic", aSmallVan(), test))
                .extracting(Deficiency::code)
                .isEqualTo(expected == null ? List.of() : List.of(expected));
    }

    /** Japan states a force for each kilogram and no deceleration: a road test decides nothing there. */
    @Test
    void where_a_regime_reads_no_deceleration_a_road_test_decides_nothing() {
        assertThat(deficiencies("jp-inspection", aSmallVan(), decelerated(BrakeSystem.SERVICE, "1")))
                .isEmpty();
    }

    private static Recorded decelerated(BrakeSystem brake, String deceleration) {
        return BrakeTests.road(new RoadTestRecorded(
                Stage.ARRIVAL, brake, null, new BigDecimal(deceleration), null, null, null, null, null, null));
    }
}
