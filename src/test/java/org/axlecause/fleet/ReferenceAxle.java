package org.axlecause.fleet;

import java.math.BigDecimal;
import org.axlecause.facts.Trace;

/**
 * The reference run: a rear simplex axle, 50 bar, 2 s ramp from 1.5 s, 4 s hold, 0.3 s release, 10 ms steps. Source:
 * forward model of the brake handbooks as worked through for the trade's signature table (derived); parts of a small
 * hatchback (common practice), shoe constants and friction levels (judgement).
 */
public final class ReferenceAxle {

    public static final double BAR = 1e5;
    public static final double PEDAL_FORCE = 100;
    public static final double TYRE_RADIUS = 0.29;
    public static final double ROLLER_SPEED = 5 / 3.6;

    /** Shoe constants m 2.20 and q 1.05 (judgement), chosen so that the factor at 0.38 is about 2 as in textbooks. */
    public static final ShoeFactor SHOE = new ShoeFactor(2.20, 1.05);

    /** Duo-servo arms in drum radii (judgement). */
    public static final FrictionPair.DuoServoGeometry DUO_SERVO =
            new FrictionPair.DuoServoGeometry(0.75, 0.75, 0.90, 1.0);

    public static final FrictionPair.Simplex SIMPLEX = new FrictionPair.Simplex(0.38, SHOE, 1, 1);
    public static final Hydraulics HYDRAULICS =
            new Hydraulics(0.03, 0.03, 0, 0.3 * BAR, 1.5 * BAR, 0, Double.POSITIVE_INFINITY);
    public static final WheelBrake HEALTHY = new WheelBrake(
            SIMPLEX, 2.85e-4, 0.1015, TYRE_RADIUS, HYDRAULICS, new Swing(0.01, 0, 0.01, 0), 60, 0, 0.75, 2500);

    public static final Application APPLICATION = new Application(1.5, 2.0, 4.0, 0.3, 10.5, PEDAL_FORCE);
    public static final Recording RECORDING = new Recording(new BigDecimal("0.01"), ROLLER_SPEED, 0, 0, 1);

    private ReferenceAxle() {}

    /** A pedal without servo run-out that makes 50 bar at the reference pedal force. */
    public static Pedal pedal() {
        Pedal plain = new Pedal(4, 1, Double.POSITIVE_INFINITY, 0.02222, 0.95);
        double gain = 50 * BAR / plain.pressure(PEDAL_FORCE);
        return new Pedal(4, gain, Double.POSITIVE_INFINITY, 0.02222, 0.95);
    }

    public static Trace run(WheelBrake left, WheelBrake right) {
        return run(left, right, APPLICATION, RECORDING);
    }

    public static Trace run(WheelBrake left, WheelBrake right, Application application, Recording recording) {
        return BrakeModel.run(pedal(), Proportioning.NONE, left, right, application, recording);
    }
}
