package org.axlecause.measurement;

import java.math.BigDecimal;
import java.util.List;
import org.axlecause.facts.Accuracy;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Stage;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.TestFigures;
import org.axlecause.facts.Tester;
import org.axlecause.facts.Trace;
import org.axlecause.facts.WheelReading;

/** Roller tests of invented vehicles. */
final class RollerTests {

    static final EntryId TEST = new EntryId("/sites/quay-street/lane-1", "rt-5501");
    static final Tester TWO_PERCENT_OF_READING =
            new Tester(new BigDecimal("0.02"), Accuracy.READING, null, null, new BigDecimal("1.389"));

    private RollerTests() {}

    static WheelReading wheel(String peak, String drag, String fluctuation, Boolean locked) {
        return new WheelReading(
                peak == null ? null : new BigDecimal(peak),
                drag == null ? null : new BigDecimal(drag),
                fluctuation == null ? null : new BigDecimal(fluctuation),
                locked);
    }

    static AxleReading rearAxle(String load, WheelReading left, WheelReading right) {
        return new AxleReading(2, load == null ? null : new BigDecimal(load), left, right, null);
    }

    static AxleReading traced(WheelReading left, WheelReading right, Trace trace) {
        return new AxleReading(2, null, left, right, trace);
    }

    static Trace withoutPedal(Trace trace) {
        return new Trace(trace.samplePeriod(), trace.left(), trace.right(), null);
    }

    static RollerTestRecorded serviceTest(Tester tester, AxleReading... axles) {
        return new RollerTestRecorded(
                Stage.ARRIVAL, BrakeSystem.SERVICE, List.of(axles), tester, null, null, List.of());
    }

    static RollerTestRecorded with(RollerTestRecorded test, TestCondition... conditions) {
        return new RollerTestRecorded(
                test.stage(),
                test.brake(),
                test.axles(),
                test.tester(),
                test.surface(),
                test.pedalForce(),
                List.of(conditions));
    }

    static Figure figure(TestFigures figures, FigureKind kind, Place place) {
        List<Figure> found = figures.figures().stream()
                .filter(figure -> figure.kind() == kind && figure.place().equals(place))
                .toList();
        if (found.size() != 1) {
            throw new AssertionError(kind + " at " + place + " found " + found.size() + " times in " + figures);
        }
        return found.get(0);
    }
}
