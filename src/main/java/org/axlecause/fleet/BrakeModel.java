package org.axlecause.fleet;

import java.math.BigDecimal;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.axlecause.facts.Samples;
import org.axlecause.facts.Trace;

/** The physical forward model of an axle on the rollers; it knows nothing of rules or limits. */
public final class BrakeModel {

    /** Longest step of the integration, seconds. */
    private static final double STEP = 0.01;

    private BrakeModel() {}

    /** The forces that the tester records of an axle during an application. */
    public static Trace run(
            Pedal pedal,
            Proportioning valve,
            WheelBrake left,
            WheelBrake right,
            Application application,
            Recording recording) {
        double period = recording.samplePeriod().doubleValue();
        int count = (int) Math.floor(application.end() / period + 1e-9) + 1;
        SplittableRandom seeds = new SplittableRandom(recording.seed());
        double[] force = new double[count];
        for (int i = 0; i < count; i++) {
            force[i] = application.forceAt(i * period);
        }
        return new Trace(
                plain(recording.samplePeriod()),
                record(pedal, valve, left, application, recording, count, seeds.split()),
                record(pedal, valve, right, application, recording, count, seeds.split()),
                Samples.of(force));
    }

    /** Braking ratio of forces on a mass. */
    public static double brakingRatio(double forces, double mass, double gravity) {
        return forces / (mass * gravity);
    }

    private static Samples record(
            Pedal pedal,
            Proportioning valve,
            WheelBrake wheel,
            Application application,
            Recording recording,
            int count,
            RandomGenerator random) {
        double period = recording.samplePeriod().doubleValue();
        int stepsPerSample = Math.max(1, (int) Math.ceil(period / STEP - 1e-9));
        double step = period / stepsPerSample;
        double angleRate = recording.rollerSpeed() / wheel.tyreRadius();
        Hydraulics hydraulics = wheel.hydraulics();
        double[] forces = new double[count];
        double atWheel = 0;
        double atPiston = 0;
        for (int i = 0; i < count; i++) {
            for (int s = 0; i > 0 && s < stepsPerSample; s++) {
                double time = (i - 1) * period + (s + 1) * step;
                double line = valve.behind(pedal.pressure(application.forceAt(time)));
                atWheel = follow(atWheel, seen(line, time, application, hydraulics), step, hydraulics);
                double reached = Math.min(atWheel, hydraulics.travelLimit());
                atPiston = Math.max(
                        reached - hydraulics.pistonFriction(),
                        Math.min(atPiston, reached + hydraulics.pistonFriction()));
                atPiston = Math.max(0, atPiston);
            }
            double effective = Math.max(0, atPiston - hydraulics.springPressure());
            double braking =
                    effective * wheel.forcePerPressure() * wheel.swing().at(angleRate * i * period);
            double reading = Math.min(braking + wheel.rollingForce() + wheel.dragForce(), wheel.slipForce());
            forces[i] = reading
                    + recording.noiseShare() * Math.abs(reading) * random.nextGaussian()
                    + recording.noiseForce() * random.nextGaussian();
        }
        return Samples.of(forces);
    }

    /** Line pressure as the wheel sees it: until the linings touch, the springs hold it down. */
    private static double seen(double line, double time, Application application, Hydraulics hydraulics) {
        boolean touching = time - application.start() >= hydraulics.clearanceTime();
        return touching ? line : Math.min(line, hydraulics.springPressure() / 2);
    }

    private static double follow(double pressure, double line, double step, Hydraulics hydraulics) {
        if (line >= pressure) {
            return pressure + approach(step, hydraulics.riseTime()) * (line - pressure);
        }
        double floor = Math.max(line, Math.min(pressure, hydraulics.heldPressure()));
        return pressure + approach(step, hydraulics.fallTime()) * (floor - pressure);
    }

    private static double approach(double step, double timeConstant) {
        return timeConstant <= step ? 1 : step / timeConstant;
    }

    private static BigDecimal plain(BigDecimal period) {
        return period.stripTrailingZeros();
    }
}
