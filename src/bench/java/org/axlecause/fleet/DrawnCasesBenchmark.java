package org.axlecause.fleet;

import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.LongStream;
import org.axlecause.bench.BenchedCase;
import org.axlecause.bench.WithJudge;
import org.axlecause.diagnosis.CauseWeights;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.History;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.SiteTerms;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Matter;
import org.axlecause.measurement.MeasureTest;
import org.axlecause.policy.PolicyFile;
import org.openjdk.jmh.annotations.Benchmark;

/**
 * Judging thousands of drawn vehicles in turn, each with the peaks of its first test: what the same case judged again and
 * again does not tell, since much is kept by layout, by regime and by what is known.
 */
public class DrawnCasesBenchmark extends WithJudge {

    private static final int VEHICLES = 4_000;
    private static final long SEED = 20_260_302L;
    private static final SiteTerms SITE = new SiteTerms("quay-street", ZoneId.of("Europe/London"), "GBP", "gb-annual");
    private static final OffsetDateTime ARRIVED = OffsetDateTime.parse("2026-03-02T08:00:00Z");

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
        return new Matter(new History("DC-1", entries), SITE, PolicyFile.baseline(), CauseWeights.BOOK, null, null);
    }
}
