package org.axlecause.fleet;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import org.axlecause.facts.Accuracy;
import org.axlecause.facts.Axle;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Samples;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Surface;
import org.axlecause.facts.Tester;
import org.axlecause.facts.Trace;
import org.axlecause.facts.WheelReading;
import org.jspecify.annotations.Nullable;

/** Runs an invented vehicle over the rollers and records what the tester shows. */
final class TestLane {

    private static final double GRAVITY = 9.81;
    private static final double LOCKED_FROM = 0.985;

    private final VehicleTable table;
    private final Lane lane;

    TestLane(VehicleTable table, Lane lane) {
        this.table = table;
        this.lane = lane;
    }

    Lane lane() {
        return lane;
    }

    /** A run of the service brake on these axles. */
    RollerTestRecorded service(
            VehicleState state, List<Axle> axles, Stage stage, boolean first, RandomGenerator random) {
        List<AxleReading> readings = new ArrayList<>();
        for (Axle axle : axles) {
            readings.add(service(state, axle, first, random));
        }
        return test(BrakeSystem.SERVICE, stage, readings);
    }

    /** A run of the parking brake. */
    RollerTestRecorded parking(VehicleState state, Stage stage, boolean first, RandomGenerator random) {
        List<AxleReading> readings = new ArrayList<>();
        for (Axle axle : parkingAxles(state)) {
            readings.add(parking(state, axle, first, random));
        }
        return test(BrakeSystem.PARKING, stage, readings);
    }

    static List<Axle> parkingAxles(VehicleState state) {
        return state.vehicle().axles().stream()
                .filter(axle ->
                        axle.parkingBrake() != ParkingLayout.NONE && axle.parkingBrake() != ParkingLayout.TRANSMISSION)
                .toList();
    }

    private RollerTestRecorded test(BrakeSystem brake, Stage stage, List<AxleReading> readings) {
        return new RollerTestRecorded(
                stage,
                brake,
                readings,
                new Tester(
                        new BigDecimal("0.02"),
                        Accuracy.READING,
                        null,
                        null,
                        decimal(table.value("recording.roller-speed"), 3)),
                Surface.DRY,
                null,
                List.of());
    }

    private AxleReading service(VehicleState state, Axle axle, boolean first, RandomGenerator random) {
        Application application = application(state, axle, random);
        double run = 1 + table.value("scatter.run") * random.nextGaussian();
        WheelState left = state.left(axle);
        WheelState right = state.right(axle);
        WheelBrake leftBrake =
                left.brake(first, run * (1 + table.value("scatter.wheel-in-run") * random.nextGaussian()));
        WheelBrake rightBrake =
                right.brake(first, run * (1 + table.value("scatter.wheel-in-run") * random.nextGaussian()));
        double gain = left.value(PhysicalQuantity.LINE_PRESSURE_TIMES, 1, first);
        Pedal sound = state.pedal();
        Pedal pedal = new Pedal(
                sound.ratio(),
                sound.servoGain() * gain,
                sound.servoRunOut() * Math.min(1, gain),
                sound.masterDiameter(),
                sound.efficiency());
        Trace trace = BrakeModel.run(
                pedal,
                new Proportioning(left.knee(first), left.slope(first)),
                leftBrake,
                rightBrake,
                application,
                recording(random));
        Run of = new Run(
                trace.samplePeriod().doubleValue(),
                application,
                surface(left, leftBrake, trace.left(), application, first, random),
                surface(right, rightBrake, trace.right(), application, first, random),
                leftBrake,
                rightBrake);
        return reading(axle, of, trace.pedal());
    }

    /** The pedal force at which a sound wheel of the axle brakes well but does not slip yet. */
    private Application application(VehicleState state, Axle axle, RandomGenerator random) {
        WheelBrake sound = state.left(axle).sound();
        double aim = sound.slipForce() * table.range("aim.share-of-grip").draw(random) - sound.rollingForce();
        double pressure = Math.min(
                aim / sound.forcePerPressure() + sound.hydraulics().springPressure(),
                table.value("aim.most-pressure") * WheelState.BAR);
        double force = state.pedal().forceFor(pressure) * (1 + table.value("scatter.pedal") * random.nextGaussian());
        double start = table.value("application.start");
        double rise = table.range("application.rise").draw(random);
        double hold = table.range("application.hold").draw(random);
        double release = table.value("application.release");
        return new Application(
                start, rise, hold, release, start + rise + hold + release + table.value("application.after"), force);
    }

    private Recording recording(RandomGenerator random) {
        return new Recording(
                decimal(table.value("recording.period"), 3).stripTrailingZeros(),
                table.value("recording.roller-speed"),
                table.value("recording.noise-share"),
                table.value("recording.noise-force"),
                random.nextLong());
    }

    /** What an irregular surface, a leak and a skewed test make of the force beyond that of the rolling wheel. */
    private Samples surface(
            WheelState wheel,
            WheelBrake brake,
            Samples forces,
            Application application,
            boolean first,
            RandomGenerator random) {
        double rough = wheel.value(PhysicalQuantity.ROUGHNESS, 0, first);
        double leak = wheel.value(PhysicalQuantity.LEAK_TIME, Double.POSITIVE_INFINITY, first);
        double skew = wheel.value(PhysicalQuantity.READING_TIMES, 1, first);
        double base = brake.rollingForce() + brake.dragForce();
        double period = table.value("recording.period");
        double keep = Math.exp(-period / table.value("irregular-time"));
        double irregular = random.nextGaussian();
        double[] changed = forces.toArray();
        for (int i = 0; i < changed.length; i++) {
            double since = Math.max(0, i * period - application.start());
            irregular = keep * irregular + Math.sqrt(1 - keep * keep) * random.nextGaussian();
            changed[i] = base + (changed[i] - base) * (1 + rough * irregular) * Math.exp(-since / leak) * skew;
        }
        return Samples.of(changed);
    }

    private AxleReading parking(VehicleState state, Axle axle, boolean first, RandomGenerator random) {
        double start = table.value("application.start");
        double rise = table.range("application.rise").draw(random);
        double hold = table.range("application.hold").draw(random) / 2;
        double release = table.value("application.release");
        Application application = new Application(
                start, rise, hold, release, start + rise + hold + release + table.value("application.after"), 1);
        double run = 1 + table.value("scatter.run") * random.nextGaussian();
        WheelState left = state.left(axle);
        WheelState right = state.right(axle);
        WheelBrake leftBrake = left.brake(first, 1);
        WheelBrake rightBrake = right.brake(first, 1);
        Run of = new Run(
                table.value("recording.period"),
                application,
                parkingForces(left, leftBrake, application, run, random),
                parkingForces(right, rightBrake, application, run, random),
                leftBrake,
                rightBrake);
        return reading(axle, of, null);
    }

    private Samples parkingForces(
            WheelState wheel, WheelBrake brake, Application application, double run, RandomGenerator random) {
        double period = table.value("recording.period");
        int count = (int) Math.floor(application.end() / period + 1e-9) + 1;
        double force =
                wheel.parkingForce(brake) * run * (1 + table.value("scatter.wheel-in-run") * random.nextGaussian());
        double turn = table.value("recording.roller-speed") / brake.tyreRadius();
        boolean swings = wheel.axle().parkingBrake() != ParkingLayout.SHOES_IN_DISC;
        double[] forces = new double[count];
        boolean applied = false;
        for (int i = 0; i < count; i++) {
            double share = application.forceAt(i * period);
            applied |= share >= 1;
            double braking = force * share;
            if (applied) {
                braking = Math.max(braking, Math.min(force, wheel.parkingRest()));
            }
            double reading = Math.min(
                    braking * (swings ? brake.swing().at(turn * i * period) : 1)
                            + brake.rollingForce()
                            + brake.dragForce(),
                    brake.slipForce());
            forces[i] = reading
                    + table.value("recording.noise-share") * reading * random.nextGaussian()
                    + table.value("recording.noise-force") * random.nextGaussian();
        }
        return Samples.of(forces);
    }

    private AxleReading reading(Axle axle, Run run, @Nullable Samples pedal) {
        BigDecimal load = lane.loadTold() ? decimal((run.leftBrake.load() + run.rightBrake.load()) / GRAVITY, 0) : null;
        if (lane.trace()) {
            Trace trace = new Trace(
                    decimal(table.value("recording.period"), 3).stripTrailingZeros(),
                    whole(run.left),
                    whole(run.right),
                    lane.pedalSensor() ? pedal : null);
            return new AxleReading(axle.number(), load, null, null, trace);
        }
        return new AxleReading(
                axle.number(),
                load,
                figures(run, run.left, run.leftBrake),
                figures(run, run.right, run.rightBrake),
                null);
    }

    private WheelReading figures(Run run, Samples recorded, WheelBrake brake) {
        double[] forces = recorded.toArray();
        double drag = mean(forces, 0, run.index(run.application.start()));
        double highest = 0;
        for (double force : forces) {
            highest = Math.max(highest, force);
        }
        int from = run.index(run.application.start() + run.application.rise());
        int turn = run.index(2 * Math.PI * brake.tyreRadius() / table.value("recording.roller-speed"));
        double top = 0;
        double bottom = Double.POSITIVE_INFINITY;
        for (int i = from; i < Math.min(forces.length, from + turn); i++) {
            double smooth = mean(forces, Math.max(0, i - 1), Math.min(forces.length, i + 2));
            top = Math.max(top, smooth);
            bottom = Math.min(bottom, smooth);
        }
        return new WheelReading(
                step(highest),
                step(drag),
                top <= 0 ? null : decimal((top - Math.max(0, bottom)) / top, 2),
                highest >= LOCKED_FROM * brake.slipForce());
    }

    private BigDecimal step(double force) {
        double step = table.value("figure-step");
        return decimal(Math.max(0, Math.round(force / step) * step), 0);
    }

    private static double mean(double[] forces, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += forces[i];
        }
        return sum / Math.max(1, to - from);
    }

    private static Samples whole(Samples forces) {
        double[] rounded = new double[forces.size()];
        for (int i = 0; i < rounded.length; i++) {
            rounded[i] = Math.rint(forces.at(i));
        }
        return Samples.of(rounded);
    }

    private static BigDecimal decimal(double value, int scale) {
        return BigDecimal.valueOf(value).setScale(scale, RoundingMode.HALF_EVEN);
    }

    /** The forces of both wheels in one run. */
    private record Run(
            double period,
            Application application,
            Samples left,
            Samples right,
            WheelBrake leftBrake,
            WheelBrake rightBrake) {

        int index(double time) {
            return (int) Math.round(time / period);
        }
    }
}
