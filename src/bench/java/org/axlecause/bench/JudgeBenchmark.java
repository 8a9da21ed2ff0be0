package org.axlecause.bench;

import java.util.concurrent.TimeUnit;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.inference.RuleBench;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Matter;
import org.axlecause.regimes.Regimes;
import org.axlecause.repair.PlanRepair;
import org.axlecause.repair.RepairCatalogue;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Judging a whole case, ranking, next checks, plan and explanations included: the median on one core. */
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
public class JudgeBenchmark {

    private final Judge judge = new Judge(
            RuleBench.all(), Regimes.released(), CauseModel.load(), new PlanRepair(RepairCatalogue.onClassPath()));
    private final Matter tenFacts = BenchedCase.of(10);
    private final Matter thirtyFacts = BenchedCase.of(30);
    private final Matter sixtyFacts = BenchedCase.of(60);
    private final Matter wholeRepair = BenchedCase.wholeRepair();
    private final Matter traces = BenchedCase.traces();

    /** Says how large the cases are. */
    @Setup
    public void sizes() {
        System.out.printf(
                "facts told: %d, %d, %d; the whole repair %d, with traces %d%n",
                BenchedCase.facts(tenFacts),
                BenchedCase.facts(thirtyFacts),
                BenchedCase.facts(sixtyFacts),
                BenchedCase.facts(wholeRepair),
                BenchedCase.facts(traces));
    }

    /** A vehicle and the peaks of one test. */
    @Benchmark
    @Goal(0.5)
    public Judgement peakOnlyTenFacts() {
        return judge.judge(tenFacts);
    }

    /** Two tests and the first findings. */
    @Benchmark
    public Judgement thirtyFacts() {
        return judge.judge(thirtyFacts);
    }

    /** Two tests, all findings, decisions and the first work. */
    @Benchmark
    @Goal(5)
    public Judgement sixtyFacts() {
        return judge.judge(sixtyFacts);
    }

    /** From the presentation to the proof of the repair. */
    @Benchmark
    public Judgement wholeRepair() {
        return judge.judge(wholeRepair);
    }

    /** A test with traces, whose figures were made when it was accepted. */
    @Benchmark
    public Judgement traces() {
        return judge.judge(traces);
    }
}
