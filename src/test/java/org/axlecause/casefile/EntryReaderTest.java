package org.axlecause.casefile;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.axlecause.facts.Accuracy;
import org.axlecause.facts.Agent;
import org.axlecause.facts.Axle;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CaseClosed;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.CloseOutcome;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Decision;
import org.axlecause.facts.DepartureRecorded;
import org.axlecause.facts.Deviation;
import org.axlecause.facts.Drive;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.EntryType;
import org.axlecause.facts.EntryWithdrawn;
import org.axlecause.facts.Extent;
import org.axlecause.facts.FindingRecorded;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.FittedPart;
import org.axlecause.facts.Gearbox;
import org.axlecause.facts.InspectionResult;
import org.axlecause.facts.InspectionResulted;
import org.axlecause.facts.JudgedCause;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Measurement;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.NoticedDeficiency;
import org.axlecause.facts.ObstacleMet;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Party;
import org.axlecause.facts.Place;
import org.axlecause.facts.PolicyAdopted;
import org.axlecause.facts.PresentationReason;
import org.axlecause.facts.RecentWork;
import org.axlecause.facts.RoadTestRecorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Samples;
import org.axlecause.facts.ScopeDecided;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Side;
import org.axlecause.facts.Spot;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Surface;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.Tester;
import org.axlecause.facts.Trace;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.VehicleHandedOver;
import org.axlecause.facts.VehiclePresented;
import org.axlecause.facts.WheelReading;
import org.axlecause.facts.WorkOutcome;
import org.axlecause.facts.WorkReported;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.Test;

class EntryReaderTest {

    @Test
    void a_presentation_keeps_every_member_in_base_units() {
        Entry entry = read(EntryType.VEHICLE_PRESENTED, """
                {"site": "quay-street", "reason": "failed-inspection", "previousCase": "QS-9", "regime": "gb-annual",
                 "vehicle": {"category": "N1", "make": "Corvane", "model": "Portal", "firstUsed": "2015-09-14",
                  "firstRegistered": "2015-09-15", "typeApproved": "2013-02-01",
                  "odometer": {"value": 148200, "unit": "km"}, "maximumMass": {"value": 2.02, "unit": "t"},
                  "unladenMass": {"value": 1310, "unit": "kg"}, "testMass": {"value": 1430.50, "unit": "kg"},
                  "seats": 3, "drive": "front", "gearbox": "manual", "regenerative": false, "airSuspension": true,
                  "circuitSplit": "diagonal", "antilock": true, "serviceFluid": "DOT 4", "registration": "token-2", "vin": "token-1",
                  "axles": [{"number": 1, "steered": true, "brake": "disc-floating"},
                            {"number": 2, "brake": "drum-simplex", "parkingBrake": "cable-on-service-shoes"}]},
                 "notice": [{"item": "1.2.1", "text": "rear left weak"}], "complaints": ["pulls", "hot-wheel"],
                 "recentWork": [{"item": "shoe-set", "axle": 2, "date": "2025-11-03",
                                 "distanceSince": {"value": 5, "unit": "km"}}]}""");

        assertThat(entry)
                .isEqualTo(new VehiclePresented(
                        "quay-street",
                        PresentationReason.FAILED_INSPECTION,
                        "QS-9",
                        "gb-annual",
                        new Vehicle(
                                "N1",
                                "Corvane",
                                "Portal",
                                LocalDate.of(2015, 9, 14),
                                LocalDate.of(2015, 9, 15),
                                LocalDate.of(2013, 2, 1),
                                new BigDecimal("148200000"),
                                new BigDecimal("2020"),
                                new BigDecimal("1310"),
                                new BigDecimal("1430.5"),
                                3,
                                Drive.FRONT,
                                Gearbox.MANUAL,
                                false,
                                true,
                                CircuitSplit.DIAGONAL,
                                true,
                                "DOT 4",
                                List.of(
                                        new Axle(1, true, BrakeLayout.DISC_FLOATING, ParkingLayout.NONE),
                                        new Axle(
                                                2,
                                                false,
                                                BrakeLayout.DRUM_SIMPLEX,
                                                ParkingLayout.CABLE_ON_SERVICE_SHOES)),
                                "token-1"),
                        List.of(new NoticedDeficiency("1.2.1", "rear left weak")),
                        List.of(ComplaintCode.PULLS, ComplaintCode.HOT_WHEEL),
                        List.of(new RecentWork(
                                ScopeItem.SHOE_SET,
                                Place.ofAxle(2),
                                LocalDate.of(2025, 11, 3),
                                new BigDecimal("5000")))));
    }

    @Test
    void what_a_presentation_leaves_out_is_unknown_and_never_guessed() {
        Entry entry = read(EntryType.VEHICLE_PRESENTED, """
                {"site": "quay-street", "reason": "routine", "vehicle": {"category": "M1", "axles": [{"number": 1}]}}""");

        assertThat(entry)
                .isEqualTo(new VehiclePresented(
                        "quay-street",
                        PresentationReason.ROUTINE,
                        null,
                        null,
                        new Vehicle(
                                "M1",
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                List.of(new Axle(1, false, null, ParkingLayout.NONE)),
                                null),
                        List.of(),
                        List.of(),
                        List.of()));
    }

    @Test
    void a_roller_test_is_read_with_its_tester_and_its_trace() {
        Entry entry = read(EntryType.ROLLER_TEST_RECORDED, """
                {"stage": "arrival", "brake": "service", "surface": "dry", "pedalForce": {"value": 30, "unit": "kgf"},
                 "conditions": ["tyre-wet"],
                 "tester": {"accuracy": {"value": 2, "unit": "%", "of": "reading"}, "range": {"value": 6, "unit": "kN"},
                            "resolution": {"value": 10, "unit": "N"}, "speed": {"value": 5.4, "unit": "km/h"}},
                 "axles": [{"number": 2, "load": {"value": 560, "unit": "kg"},
                   "left": {"peak": {"value": 161, "unit": "daN"}, "drag": {"value": 62, "unit": "N"},
                            "fluctuation": {"value": 8, "unit": "%"}, "locked": false},
                   "trace": {"samplePeriod": {"value": 20, "unit": "ms"}, "unit": "kN", "left": [-0.002, null, 1.5],
                             "right": [0, 1, 2], "pedal": {"unit": "daN", "force": [0, 10, null]}}}]}""");

        assertThat(entry)
                .isEqualTo(new RollerTestRecorded(
                        Stage.ARRIVAL,
                        BrakeSystem.SERVICE,
                        List.of(new AxleReading(
                                2,
                                new BigDecimal("560"),
                                new WheelReading(
                                        new BigDecimal("1610"), new BigDecimal("62"), new BigDecimal("0.08"), false),
                                null,
                                new Trace(
                                        new BigDecimal("0.02"),
                                        Samples.of(-2, Double.NaN, 1500),
                                        Samples.of(0, 1000, 2000),
                                        Samples.of(0, 100, Double.NaN)))),
                        new Tester(
                                new BigDecimal("0.02"),
                                Accuracy.READING,
                                new BigDecimal("6000"),
                                new BigDecimal("10"),
                                new BigDecimal("1.5")),
                        Surface.DRY,
                        new BigDecimal("294.1995"),
                        List.of(TestCondition.TYRE_WET)));
    }

    @Test
    void a_road_test_is_read_with_its_speeds_and_distances() {
        Entry entry = read(EntryType.ROAD_TEST_RECORDED, """
                {"stage": "final", "brake": "service", "initialSpeed": {"value": 54, "unit": "km/h"},
                 "meanFullyDevelopedDeceleration": {"value": 6.1, "unit": "m/s2"},
                 "beginSpeed": {"value": 12, "unit": "m/s"}, "endSpeed": {"value": 1.5, "unit": "m/s"},
                 "beginDistance": {"value": 3, "unit": "m"}, "endDistance": {"value": 18, "unit": "m"},
                 "stoppingDistance": {"value": 20, "unit": "m"}, "deviation": "slight"}""");

        assertThat(entry)
                .isEqualTo(new RoadTestRecorded(
                        Stage.FINAL,
                        BrakeSystem.SERVICE,
                        new BigDecimal("15"),
                        new BigDecimal("6.1"),
                        new BigDecimal("12"),
                        new BigDecimal("1.5"),
                        new BigDecimal("3"),
                        new BigDecimal("18"),
                        new BigDecimal("20"),
                        Deviation.SLIGHT));
    }

    @Test
    void a_finding_keeps_the_measured_value_as_it_was_sent() {
        Entry entry = read(EntryType.FINDING_RECORDED, """
                {"stage": "during-work", "component": "shoe-lining", "condition": "soaked", "axle": 2, "side": "right",
                 "spot": "trailing", "check": "lining-look", "extent": "severe", "agent": "gear-oil",
                 "measurement": {"quantity": "lining-thickness", "value": 1.50, "unit": "mm",
                                 "limit": {"value": 0.0625, "unit": "[in_i]"}},
                 "note": "whole face", "evidence": ["https://photos.example/1"]}""");

        assertThat(entry)
                .isEqualTo(new FindingRecorded(
                        FindingStage.DURING_WORK,
                        Component.SHOE_LINING,
                        Condition.SOAKED,
                        Place.ofSpot(2, Side.RIGHT, Spot.TRAILING),
                        CheckCode.LINING_LOOK,
                        Extent.SEVERE,
                        Agent.GEAR_OIL,
                        new Measurement(
                                MeasuredQuantity.LINING_THICKNESS,
                                new BigDecimal("0.0015"),
                                new BigDecimal("0.0015875"),
                                "1.50 mm"),
                        "whole face",
                        List.of("https://photos.example/1")));
    }

    @Test
    void a_boiling_point_stays_in_degrees_celsius() {
        FindingRecorded finding = (FindingRecorded) read(EntryType.FINDING_RECORDED, """
                {"stage": "as-found", "component": "brake-fluid", "condition": "worn",
                 "measurement": {"quantity": "fluid-boiling-point", "value": 311, "unit": "[degF]"}}""");

        assertThat(finding.measurement())
                .isEqualTo(new Measurement(
                        MeasuredQuantity.FLUID_BOILING_POINT, new BigDecimal("155"), null, "311 [degF]"));
        assertThat(finding.place()).isSameAs(Place.VEHICLE);
    }

    @Test
    void decisions_and_work_are_read_line_by_line() {
        assertThat(read(EntryType.SCOPE_DECIDED, """
                        {"decisions": [{"id": "renew-drum-2", "decision": "later", "by": "customer", "reason": "money",
                          "necessity": "recommended", "quantity": 2, "estimate": {"amount": "84.50", "currency": "GBP"}},
                          {"id": "renew-shoe-set-2", "decision": "agreed", "by": "workshop"}]}"""))
                .isEqualTo(new ScopeDecided(List.of(
                        new LineDecision(
                                "renew-drum-2",
                                Decision.LATER,
                                Party.CUSTOMER,
                                "money",
                                Necessity.RECOMMENDED,
                                new BigDecimal("2"),
                                new BigDecimal("84.50"),
                                "GBP"),
                        new LineDecision(
                                "renew-shoe-set-2", Decision.AGREED, Party.WORKSHOP, null, null, null, null, null))));
        assertThat(read(EntryType.WORK_REPORTED, """
                        {"step": "bleed", "outcome": "done", "parts": [{"item": "bleed-nipple", "axle": 2, "side": "left",
                          "quantity": 1, "number": "BN-7", "matchedOld": true}]}"""))
                .isEqualTo(new WorkReported(
                        "bleed",
                        WorkOutcome.DONE,
                        List.of(new FittedPart(
                                ScopeItem.BLEED_NIPPLE,
                                Place.ofWheel(2, Side.LEFT),
                                new BigDecimal("1"),
                                "BN-7",
                                true))));
    }

    @Test
    void the_short_events_are_read_whole() {
        assertThat(read(
                        EntryType.OBSTACLE_MET,
                        "{\"component\": \"bleed-nipple\", \"condition\": \"sheared\", \"axle\": 2, \"side\": \"left\","
                                + " \"note\": \"flush\"}"))
                .isEqualTo(new ObstacleMet(
                        Component.BLEED_NIPPLE, Condition.SHEARED, Place.ofWheel(2, Side.LEFT), "flush"));
        assertThat(read(
                        EntryType.DEPARTURE_RECORDED,
                        "{\"clause\": \"twin-hydraulic-part\", \"line\": \"l-1\", \"reason\": \"renewed last month\","
                                + " \"by\": \"token-2\"}"))
                .isEqualTo(
                        new DepartureRecorded(ClauseCode.TWIN_HYDRAULIC_PART, "l-1", "renewed last month", "token-2"));
        assertThat(read(
                        EntryType.POLICY_ADOPTED,
                        "{\"policy\": \"house\", \"version\": 3, \"reason\": \"pilot\", \"by\": \"token-2\"}"))
                .isEqualTo(new PolicyAdopted("house", 3, "pilot", "token-2"));
        assertThat(read(
                        EntryType.ENTRY_WITHDRAWN,
                        "{\"source\": \"/sites/quay-street\", \"id\": \"7\", \"reason\": \"wrong vehicle\"}"))
                .isEqualTo(new EntryWithdrawn(new EntryId("/sites/quay-street", "7"), "wrong vehicle"));
        assertThat(read(EntryType.VEHICLE_HANDED_OVER, "{\"advised\": [\"tyres\"], \"refusalNoted\": true}"))
                .isEqualTo(new VehicleHandedOver(List.of("tyres"), true));
        assertThat(read(EntryType.INSPECTION_RESULTED, "{\"result\": \"failed\", \"items\": [{\"item\": \"1.2.1\"}]}"))
                .isEqualTo(
                        new InspectionResulted(InspectionResult.FAILED, List.of(new NoticedDeficiency("1.2.1", null))));
        assertThat(
                        read(
                                EntryType.CASE_CLOSED,
                                "{\"outcome\": \"cured\", \"confirmedCauses\": [{\"code\": \"air-in-circuit\", \"circuit\": 1}]}"))
                .isEqualTo(new CaseClosed(
                        CloseOutcome.CURED, List.of(new JudgedCause(CauseCode.AIR_IN_CIRCUIT, Place.ofCircuit(1)))));
    }

    private static Entry read(EntryType type, String data) {
        try {
            return EntryReader.read(type, Json.mapper().readTree(data));
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException(data, e);
        }
    }
}
