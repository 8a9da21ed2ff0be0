package org.axlecause.policy;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.axlecause.bench.BenchedCase;
import org.axlecause.bench.Goal;
import org.axlecause.bench.WithJudge;
import org.axlecause.facts.Policy;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Matter;
import org.axlecause.judgement.PastCases.Past;
import org.axlecause.shared.Json;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Trying a draft over cases that were recalled, beside judging the same cases, by what the draft sets: a clause of the
 * repair alone, an aim of the re-test, or a threshold that what shows is held against. Reading cases from the database is
 * told by {@code TrialOfManyCasesTest}.
 */
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 4, time = 4)
@Measurement(iterations = 4, time = 3)
public class TrialBenchmark extends WithJudge {

    private final TryCase tryCase = new TryCase(judge);
    private final List<Matter> cases = List.of(BenchedCase.of(30), BenchedCase.of(60), BenchedCase.wholeRepair());
    private final Policy baseline = PolicyFile.baseline();
    private final List<String> documents =
            cases.stream().map(judge::judge).map(Json::text).toList();
    private int next;

    /** What the draft sets. */
    @Param({
        "{\"clause\": \"hardware-kit-with-shoes\", \"necessity\": \"required\"}",
        "{\"clause\": \"retest-imbalance\", \"value\": 12, \"unit\": \"%\"}",
        "{\"clause\": \"one-wheel-low-imbalance\", \"value\": 15, \"unit\": \"%\"}"
    })
    public String draft;

    /** A case judged by the policy that holds. */
    @Benchmark
    public Judgement judged() {
        return judge.judge(cases.get(next++ % cases.size()));
    }

    /** A case judged by the draft and compared with the document it has. */
    @Benchmark
    @Goal(value = 0.8, of = "judged")
    public TrialResult tried() {
        int number = next++ % cases.size();
        return tryCase.tried(new Past(cases.get(number), null, null), drafted(), documents.get(number));
    }

    private Policy drafted() {
        return MergedPolicy.of(PolicyDocument.of("{\"means\": \"a draft\", \"chain\": [" + draft + "]}"), null, null)
                .toPolicy("draft", 0, baseline);
    }
}
