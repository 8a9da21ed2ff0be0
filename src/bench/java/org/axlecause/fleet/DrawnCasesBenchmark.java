package org.axlecause.fleet;

import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.LongStream;
import org.axlecause.bench.BenchedCase;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.History;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.SiteTerms;
import org.axlecause.inference.RuleBench;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Matter;
import org.axlecause.measurement.MeasureTest;
import org.axlecause.policy.PolicyFile;
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
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Judging thousands of drawn vehicles in turn, each with the peaks of its first test: what the same case judged again and
 * again does not tell, since much is kept by layout, by regime and by what is known.
 */
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
public class DrawnCasesBenchmark {

    private static final int VEHICLES = 4_000;
    private static final long SEED = 20_260_302L;
    private static final SiteTerms SITE = new SiteTerms("quay-street", ZoneId.of("Europe/London"), "GBP", "gb-annual");
    private static final OffsetDateTime ARRIVED = OffsetDateTime.parse("2026-03-02T08:00:00Z");

    private final Judge judge = new Judge(
            RuleBench.all(), Regimes.released(), CauseModel.load(), new PlanRepair(RepairCatalogue.onClassPath()));
    private final CaseDraw draw = CaseDraw.at(SITE.site(), FaultTable.onClassPath());
    private final List<Matter> arrivals = LongStream.range(SEED, SEED + VEHICLES)
            .mapToObj(seed -> arrival(draw.of(seed)))
            .toList();
    private int next;

    /** A vehicle and the peaks of its first test. */
    @Benchmark
    public Judgement drawnArrivals() {
        return judge.judge(arrivals.get(next++ % VEHICLES));
    }

    private static Matter arrival(DrawnCase drawn) {
        EntryId id = new EntryId("/lane", "t-1");
        RollerTestRecorded first = BenchedCase.peaksAlone(drawn.tests().get(0));
        List<Recorded> entries = List.of(
                new Recorded(new EntryId("/desk", "p-1"), ARRIVED, drawn.presented(), null),
                new Recorded(id, ARRIVED.plusMinutes(1), first, MeasureTest.of(id, first)));
        return new Matter(new History("DC-1", entries), SITE, PolicyFile.baseline(), null, null);
    }
}
