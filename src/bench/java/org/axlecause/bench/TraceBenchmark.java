package org.axlecause.bench;

import java.math.BigDecimal;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.axlecause.facts.Accuracy;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Surface;
import org.axlecause.facts.TestFigures;
import org.axlecause.facts.Tester;
import org.axlecause.facts.Trace;
import org.axlecause.fleet.Application;
import org.axlecause.fleet.Recording;
import org.axlecause.fleet.ReferenceAxle;
import org.axlecause.fleet.Swing;
import org.axlecause.fleet.WheelBrake;
import org.axlecause.measurement.MeasureTest;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Digesting the longest and finest trace that is accepted: one axle, 60 s at 1000 Hz, on one core. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgsAppend = "-XX:ActiveProcessorCount=1")
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 8, time = 1)
public class TraceBenchmark {

    private static final EntryId TEST = new EntryId("/sites/quay-street/lane-1", "rt-1");
    private static final Application LONG_HOLD = new Application(1.5, 2.0, 50.0, 0.3, 60.0, 100);

    /** What is wrong with the left wheel, and whether the pedal was recorded. */
    @Param({"healthy", "weak", "oval", "late", "late without pedal"})
    String left = "healthy";

    private RollerTestRecorded recorded = test();

    /** A trace with noise of 3 % and 20 N. */
    @Setup
    public void record() {
        recorded = test();
    }

    /** From samples to figures, shapes and doubts. */
    @Benchmark
    @Goal(25)
    public TestFigures aMinuteOfOneAxle() {
        return MeasureTest.of(TEST, recorded);
    }

    private RollerTestRecorded test() {
        WheelBrake healthy = ReferenceAxle.HEALTHY;
        WheelBrake faulty =
                switch (left) {
                    case "weak" -> healthy.withFriction(0.25);
                    case "oval" -> healthy.with(new Swing(0.01, 0, 0.25, 1.66));
                    case "late", "late without pedal" -> healthy.with(ReferenceAxle.HYDRAULICS.restricted(0.8, 1.5, 0));
                    default -> healthy;
                };
        Recording everyMillisecond =
                new Recording(new BigDecimal("0.001"), ReferenceAxle.ROLLER_SPEED, 0.03, 20, 20_260_302);
        Trace trace =
                ReferenceAxle.run(faulty, healthy.with(new Swing(0.01, 1.0, 0.01, 2.0)), LONG_HOLD, everyMillisecond);
        Trace shown = left.endsWith("without pedal")
                ? new Trace(trace.samplePeriod(), trace.left(), trace.right(), null)
                : trace;
        return new RollerTestRecorded(
                Stage.ARRIVAL,
                BrakeSystem.SERVICE,
                List.of(new AxleReading(2, null, null, null, shown)),
                new Tester(
                        new BigDecimal("0.02"),
                        Accuracy.READING,
                        null,
                        null,
                        BigDecimal.valueOf(ReferenceAxle.ROLLER_SPEED)),
                Surface.DRY,
                null,
                List.of());
    }
}
