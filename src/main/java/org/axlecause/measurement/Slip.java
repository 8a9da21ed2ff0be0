package org.axlecause.measurement;

import java.util.Locale;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.LossShape;
import org.axlecause.facts.Place;
import org.axlecause.facts.ShapeOfLoss;
import org.axlecause.facts.Side;
import org.axlecause.facts.Tester;
import org.axlecause.facts.WheelReading;
import org.jspecify.annotations.Nullable;

/**
 * A wheel that slips on the rollers, as the trace alone shows it: its force stands still and no longer swings while the
 * pedal goes on, or it breaks down first as the tester stops.
 */
final class Slip {

    /** Seconds by which a force must break down before the other. */
    private static final double FIRST = 0.05;

    private final AxleTrace trace;
    private final @Nullable Tester tester;
    private final FigureSheet sheet;

    Slip(AxleTrace trace, @Nullable Tester tester, FigureSheet sheet) {
        this.trace = trace;
        this.tester = tester;
        this.sheet = sheet;
    }

    void find() {
        boolean stopped = trace.stoppedOnSlip();
        double apart = trace.brokeDown(Side.RIGHT) - trace.brokeDown(Side.LEFT);
        boolean any = false;
        for (Side side : Side.values()) {
            boolean first = stopped && (side == Side.LEFT ? apart : -apart) > FIRST;
            if (first || isLocked(side) || standsStill(side)) {
                any = true;
                slipped(side);
            }
        }
        if (stopped && !any) {
            sheet.doubt(
                    DoubtCode.STOPPED_ON_SLIP,
                    Place.ofAxle(trace.axle().number()),
                    "the tester stopped on slip and the trace doesn't show which wheel locked: send it with the reading");
        }
    }

    private boolean standsStill(Side side) {
        Place wheel = Place.ofWheel(trace.axle().number(), side);
        return LossShapes.slips(trace.wheel(side), trace.wheel(LossShapes.opposite(side)))
                && sheet.shapes().stream()
                        .filter(shape -> shape.place().equals(wheel))
                        .map(ShapeOfLoss::shape)
                        .anyMatch(shape -> shape == LossShape.CAPPED);
    }

    private void slipped(Side side) {
        Place place = Place.ofWheel(trace.axle().number(), side);
        WheelReading reading = reading(side);
        if (reading != null && Boolean.FALSE.equals(reading.locked())) {
            sheet.doubt(
                    DoubtCode.FIGURE_AGAINST_TRACE,
                    place,
                    String.format(
                            Locale.ROOT,
                            "reported as not locked, the trace shows it slip at %.0f N",
                            trace.wheel(side).peak()));
        }
        double peak = trace.wheel(side).peak();
        if (!Double.isNaN(peak)) {
            PeakFigures.force(FigureKind.SLIP_FORCE, place, Rounded.force(peak), tester, sheet);
        }
    }

    private boolean isLocked(Side side) {
        WheelReading reading = reading(side);
        return reading != null && Boolean.TRUE.equals(reading.locked());
    }

    private @Nullable WheelReading reading(Side side) {
        return side == Side.LEFT ? trace.axle().left() : trace.axle().right();
    }
}
