package org.axlecause.bench;

import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Matter;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Setup;

/** Judging a whole case, ranking, next checks, plan and explanations included: the median on one core. */
public class JudgeBenchmark extends WithJudge {

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
    @Goal(0.25)
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
    @Goal(3)
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
