package org.axlecause.fleet;

import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.diagnosis.CauseWeights;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.Decision;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.History;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.LineStanding;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Party;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.ScopeDecided;
import org.axlecause.facts.SiteTerms;
import org.axlecause.facts.Stage;
import org.axlecause.facts.WorkOutcome;
import org.axlecause.facts.WorkReported;
import org.axlecause.inference.RuleBase;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Matter;
import org.axlecause.measurement.MeasureTest;
import org.axlecause.policy.PolicyFile;
import org.axlecause.regimes.Regimes;
import org.axlecause.repair.PlanRepair;
import org.axlecause.repair.PlannedStep;
import org.axlecause.repair.RepairCatalogue;

/**
 * Drawn cases from the presentation to the end, judged at every step: looked over check by check, decided, worked and
 * tested again.
 */
public final class DrawnRepairs {

    private static final OffsetDateTime ARRIVED = OffsetDateTime.of(2026, 3, 2, 8, 0, 0, 0, ZoneOffset.UTC);
    private static final SiteTerms SITE = new SiteTerms(Exam.SITE, ZoneId.of("Europe/London"), "GBP", "gb-annual");

    private final Exam exam;
    private final Judge judge;
    private final CaseDraw draw;

    /** Cases that are judged by these rules. */
    public DrawnRepairs(RuleBase rules) {
        FaultTable faults = FaultTable.onClassPath();
        this.exam = new Exam(rules, faults);
        this.judge =
                new Judge(rules, Regimes.released(), CauseModel.load(), new PlanRepair(RepairCatalogue.onClassPath()));
        this.draw = CaseDraw.at(SITE.site(), faults);
    }

    /**
     * Goes through the case of a seed. What is required is agreed to, all else refused; at the end an odd one is cured
     * and an even one brakes as it did when it came.
     */
    public Judgement goThrough(long seed) {
        ExamCase examined = exam.take(draw.of(seed));
        List<Recorded> entries = new ArrayList<>();
        add(examined.drawn().presented(), entries);
        examined.drawn().tests().forEach(test -> add(test, entries));
        examined.asked().forEach(asked -> asked.answers().forEach(answer -> add(answer, entries)));
        Judgement now = judged(decided(examined.atStop()), entries);
        for (PlannedStep step : now.workPlan()) {
            if (!step.id().contains("roller-test")) {
                now = judged(new WorkReported(step.id(), WorkOutcome.DONE, List.of()), entries);
            }
        }
        for (RollerTestRecorded test : examined.drawn().tests()) {
            now = judged(again(test, seed % 2 != 0), entries);
        }
        return now;
    }

    private Judgement judged(Entry latest, List<Recorded> entries) {
        add(latest, entries);
        return judge.judge(
                new Matter(new History("DR-1", entries), SITE, PolicyFile.baseline(), CauseWeights.BOOK, null, null));
    }

    private static void add(Entry entry, List<Recorded> entries) {
        EntryId id = new EntryId("/lane", "e" + (1000 + entries.size()));
        entries.add(new Recorded(
                id,
                ARRIVED.plusMinutes(entries.size()),
                entry,
                entry instanceof RollerTestRecorded test ? MeasureTest.of(id, test) : null));
    }

    private static ScopeDecided decided(Judgement judged) {
        return new ScopeDecided(judged.scope().stream()
                .filter(line -> line.standing() == LineStanding.PROPOSED)
                .map(line -> new LineDecision(
                        line.id(),
                        line.necessity() == Necessity.REQUIRED ? Decision.AGREED : Decision.REFUSED,
                        Party.CUSTOMER,
                        null,
                        line.necessity(),
                        line.quantity().value(),
                        null,
                        null))
                .toList());
    }

    private static RollerTestRecorded again(RollerTestRecorded test, boolean cured) {
        return new RollerTestRecorded(
                Stage.FINAL,
                test.brake(),
                test.axles().stream().map(axle -> cured ? cured(axle) : axle).toList(),
                test.tester(),
                test.surface(),
                test.pedalForce(),
                test.conditions());
    }

    /** Both wheels as the right one. */
    private static AxleReading cured(AxleReading axle) {
        return new AxleReading(axle.number(), axle.load(), axle.right(), axle.right(), null);
    }
}
