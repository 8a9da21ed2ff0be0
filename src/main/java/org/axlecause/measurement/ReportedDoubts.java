package org.axlecause.measurement;

import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.Place;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Surface;
import org.axlecause.facts.TestCondition;

/** Doubts that the sender itself reports with a test. */
final class ReportedDoubts {

    private ReportedDoubts() {}

    static void raise(RollerTestRecorded recorded, FigureSheet sheet) {
        if (recorded.surface() == Surface.WET) {
            sheet.doubt(
                    DoubtCode.WET_SURFACE,
                    Place.VEHICLE,
                    "rollers or tyres were wet: friction is unstable, repeat the test dry");
        }
        recorded.conditions().stream()
                .distinct()
                .forEach(condition -> sheet.doubt(DoubtCode.REPORTED_CONDITION, Place.VEHICLE, words(condition)));
    }

    private static String words(TestCondition condition) {
        return switch (condition) {
            case TYRE_WET -> "a tyre was wet: repeat the test with dry tyres";
            case TYRE_UNDER_INFLATED -> "a tyre was under-inflated: set the pressures and repeat the test";
            case TYRE_DAMAGED -> "a tyre was damaged: repeat the test on sound tyres";
            case TYRES_UNEQUAL -> "the tyres of an axle were unequal: grip and radius differ from side to side";
            case ROLLERS_WET -> "the rollers were wet: dry them and repeat the test";
            case ROLLERS_WORN -> "the rollers were worn: the wheels may slip before the brakes are at their best";
            case NOT_CENTRED -> "the axle was not centred in the rollers: place it square and repeat the test";
            case ENGINE_NOT_IDLING -> "the engine was not idling: the servo may not have assisted";
            case GEARBOX_IN_PARK -> "the gearbox was in park: the driven wheels were held by the transmission";
            case PERMANENTLY_ENGAGED_DRIVE ->
                "the drive is permanently engaged: force passes from wheel to wheel through the transmission";
            case LOAD_SHIFTED -> "the load lay to one side: wheel loads differ, and with them the grip";
            case PARKING_BRAKE_LEFT_ON ->
                "the parking brake was left on: rolling force and effort are not the service brake's";
            case REGENERATIVE_BRAKING_ACTIVE ->
                "regenerative braking was active: the motor braked with the wheel brakes";
            case BRAKES_COLD -> "the brakes were cold: apply them a few times and repeat the test";
            case STOOD_FOR_LONG ->
                "the vehicle had stood for long: rust film and damp linings read false, bed in and repeat";
            case TYRE_STUDDED -> "a tyre was studded: its grip is not that of a tyre, repeat the test without studs";
            case ROLLERS_DIRTY -> "the rollers were dirty: clean them and repeat the test";
            case ROLLER_SPEEDS_DIFFER ->
                "the two sets of rollers ran at different speeds: the sides can't be compared, have the tester looked at";
            case LIMITED_SLIP_DIFFERENTIAL ->
                "the differential limits slip: force passes from wheel to wheel, test each wheel as the maker says or on"
                        + " the road";
            case SERVO_ONLY_WHEN_MOVING ->
                "the servo assists only while the vehicle moves: test on the road by deceleration";
        };
    }
}
