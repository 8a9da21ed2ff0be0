package org.axlecause.bench;

import java.util.concurrent.TimeUnit;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.inference.RuleBench;
import org.axlecause.judgement.Judge;
import org.axlecause.regimes.Regimes;
import org.axlecause.repair.PlanRepair;
import org.axlecause.repair.RepairCatalogue;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Measures with a judge on one core: the time of each call, unless a class says otherwise. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(
        value = 1,
        jvmArgsAppend = {
            "-XX:ActiveProcessorCount=1",
            "-Xmx1g",
            "-Djava.util.logging.manager=org.jboss.logmanager.LogManager"
        })
@Warmup(iterations = 5, time = 4)
@Measurement(iterations = 5, time = 3)
public abstract class WithJudge {

    protected final Judge judge = new Judge(
            RuleBench.all(), Regimes.released(), CauseModel.load(), new PlanRepair(RepairCatalogue.onClassPath()));
}
