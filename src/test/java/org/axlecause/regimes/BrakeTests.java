package org.axlecause.regimes;

import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import org.axlecause.facts.Accuracy;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RoadTestRecorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Surface;
import org.axlecause.facts.Tester;
import org.axlecause.facts.WheelReading;
import org.axlecause.measurement.MeasureTest;
import org.jspecify.annotations.Nullable;

/** Tests on rollers and on the road, as recorded. */
public final class BrakeTests {

    /** A tester that errs by at most 2 % of the reading. */
    public static final Tester TWO_PERCENT =
            new Tester(new BigDecimal("0.02"), Accuracy.READING, null, null, new BigDecimal("1.4"));

    private static final EntryId ID = new EntryId("/sites/quay-street/lane-1", "rt-1");

    private BrakeTests() {}

    /** A roller test of the service brake on arrival. */
    public static Recorded rollers(AxleReading... axles) {
        return rollers(BrakeSystem.SERVICE, Stage.ARRIVAL, Surface.DRY, null, "rt-1", axles);
    }

    /** A roller test of the parking brake on arrival. */
    public static Recorded parking(AxleReading... axles) {
        return rollers(BrakeSystem.PARKING, Stage.ARRIVAL, Surface.DRY, null, "rt-1", axles);
    }

    /** A roller test said in full; its figures are those that the service makes of it. */
    public static Recorded rollers(
            BrakeSystem brake, Stage stage, Surface surface, @Nullable Tester tester, String id, AxleReading... axles) {
        RollerTestRecorded test =
                new RollerTestRecorded(stage, brake, Arrays.asList(axles), tester, surface, null, List.of());
        EntryId entry = new EntryId(ID.source(), id);
        return new Recorded(
                entry,
                OffsetDateTime.parse("2026-03-02T08:31:00Z").plusMinutes(Integer.parseInt(id.substring(3))),
                test,
                MeasureTest.of(entry, test));
    }

    /** A road test on arrival. */
    public static Recorded road(RoadTestRecorded test) {
        return new Recorded(ID, OffsetDateTime.parse("2026-03-02T08:31:00Z"), test, null);
    }

    /** An axle with its two peaks. */
    public static AxleReading axle(int number, String left, String right) {
        return axle(number, null, wheel(left, false), wheel(right, false));
    }

    /** An axle with its load and two peaks. */
    public static AxleReading axle(int number, String load, String left, String right) {
        return axle(number, load, wheel(left, false), wheel(right, false));
    }

    /** An axle with its load and wheels. */
    public static AxleReading axle(int number, @Nullable String load, WheelReading left, WheelReading right) {
        return new AxleReading(number, load == null ? null : new BigDecimal(load), left, right, null);
    }

    /** A wheel with its peak. */
    public static WheelReading wheel(String peak, boolean locked) {
        return new WheelReading(new BigDecimal(peak), null, null, locked);
    }

    /** A wheel with its peak and drag. */
    public static WheelReading dragging(String peak, String drag) {
        return new WheelReading(new BigDecimal(peak), new BigDecimal(drag), null, false);
    }

    /** A figure of the vehicle as a whole on arrival. */
    public static Figure ofVehicle(FigureKind kind, BrakeSystem brake, String value) {
        return new Figure(kind, ID, Stage.ARRIVAL, brake, Place.VEHICLE, new BigDecimal(value), null, true, null);
    }

    /** A figure at a place on arrival. */
    public static Figure at(Place place, FigureKind kind, BrakeSystem brake, String value) {
        return new Figure(kind, ID, Stage.ARRIVAL, brake, place, new BigDecimal(value), null, true, null);
    }
}
