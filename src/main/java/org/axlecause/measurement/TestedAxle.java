package org.axlecause.measurement;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.facts.Axle;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Side;
import org.axlecause.facts.Surface;
import org.axlecause.facts.TestFigures;
import org.axlecause.facts.Tester;
import org.axlecause.facts.Trace;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.WheelReading;
import org.jspecify.annotations.Nullable;

/**
 * One axle in one roller test, with the mass it carries.
 *
 * @param test the test
 * @param reading what was recorded
 * @param figures figures that the test alone shows
 * @param tester the tester
 * @param wet whether rollers or tyres were wet
 * @param weighed axle load weighed during the test, kilograms
 * @param stated axle load by the vehicle's data, kilograms
 */
record TestedAxle(
        RegimeFigureSheet.Test test,
        AxleReading reading,
        TestFigures figures,
        @Nullable Tester tester,
        boolean wet,
        @Nullable BigDecimal weighed,
        @Nullable BigDecimal stated) {

    static List<TestedAxle> of(Recorded recorded, RollerTestRecorded test, Vehicle vehicle, RegimeTerms terms) {
        List<TestedAxle> axles = new ArrayList<>();
        TestFigures figures = recorded.figures();
        if (figures == null) {
            return axles;
        }
        for (AxleReading reading : test.axles()) {
            axles.add(new TestedAxle(
                    new RegimeFigureSheet.Test(recorded.id(), test.stage(), test.brake()),
                    reading,
                    figures,
                    test.tester(),
                    test.surface() == Surface.WET,
                    reading.load() == null || reading.load().signum() <= 0 ? null : reading.load(),
                    statedLoad(vehicle.axle(reading.number()), terms)));
        }
        return axles;
    }

    int number() {
        return reading.number();
    }

    Place place() {
        return Place.ofAxle(reading.number());
    }

    @Nullable
    BigDecimal left() {
        return valueOf(FigureKind.PEAK, Side.LEFT);
    }

    @Nullable
    BigDecimal right() {
        return valueOf(FigureKind.PEAK, Side.RIGHT);
    }

    /** Value of a figure that the test alone shows at one wheel. */
    @Nullable
    BigDecimal valueOf(FigureKind kind, Side side) {
        for (Figure figure : figures.figures()) {
            if (isAt(side, kind, figure)) {
                return figure.value();
            }
        }
        return null;
    }

    /** Standard uncertainty of such a figure; null where none is stated. */
    @Nullable
    BigDecimal uncertaintyOf(FigureKind kind, Side side) {
        for (Figure figure : figures.figures()) {
            if (isAt(side, kind, figure) && figure.uncertainty() != null) {
                return figure.uncertainty();
            }
        }
        return null;
    }

    private boolean isAt(Side side, FigureKind kind, Figure figure) {
        Place place = figure.place();
        return figure.kind() == kind
                && figure.observable()
                && place.side() == side
                && place.equals(Place.ofWheel(reading.number(), side));
    }

    /**
     * Uncertainty of a wheel's highest force as its figure states it, parted into what a scale error of the tester
     * makes and the rest; null where none is stated.
     */
    @Nullable
    ForceUncertainty uncertainty(Side side) {
        Place wheel = Place.ofWheel(reading.number(), side);
        for (Figure figure : figures.figures()) {
            BigDecimal stated = figure.uncertainty();
            BigDecimal force = figure.value();
            if (figure.kind() == FigureKind.PEAK && figure.place().equals(wheel) && stated != null && force != null) {
                ForceUncertainty byTester = ForceUncertainty.of(force, tester);
                double whole = stated.doubleValue();
                double scale = byTester == null ? 0 : Math.min(byTester.accuracy(), whole);
                return ForceUncertainty.ofParts(scale, Math.sqrt(whole * whole - scale * scale));
            }
        }
        return null;
    }

    /** Mass on the axle: weighed, or else by the vehicle's data. */
    @Nullable
    BigDecimal load() {
        return weighed != null ? weighed : stated;
    }

    String loadName() {
        return weighed != null ? "axle load weighed during the test" : "axle load by the vehicle's data";
    }

    /** Whether the wheel locked: as reported, or as its trace shows where nothing was reported. */
    boolean locked(Side side) {
        WheelReading wheel = side == Side.LEFT ? reading.left() : reading.right();
        Boolean reported = wheel == null ? null : wheel.locked();
        return reported == null ? valueOf(FigureKind.SLIP_FORCE, side) != null : reported;
    }

    int lockedWheels() {
        return (locked(Side.LEFT) ? 1 : 0) + (locked(Side.RIGHT) ? 1 : 0);
    }

    @Nullable
    Trace trace() {
        return reading.trace();
    }

    private static @Nullable BigDecimal statedLoad(@Nullable Axle axle, RegimeTerms terms) {
        if (axle == null) {
            return null;
        }
        BigDecimal load = axle.unladenLoad();
        BigDecimal addition = terms.frontAxleAddition();
        return load == null || addition == null || axle.number() != 1 ? load : load.add(addition);
    }
}
