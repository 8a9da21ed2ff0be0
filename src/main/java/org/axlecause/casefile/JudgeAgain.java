package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import org.axlecause.access.Act;
import org.axlecause.access.ActStore;
import org.axlecause.access.Actor;
import org.axlecause.shared.TenantTransaction;

/** Judges a case again on command: after a fault, or by a newer rule base. */
@ApplicationScoped
class JudgeAgain {

    private final TenantTransaction transaction;
    private final CaseStore cases;
    private final MeasureTests measureTests;
    private final CaseJudge judge;
    private final ReadCases readCases;
    private final ActStore acts;
    private final Clock clock;

    JudgeAgain(
            TenantTransaction transaction,
            CaseStore cases,
            MeasureTests measureTests,
            CaseJudge judge,
            ReadCases readCases,
            ActStore acts,
            Clock clock) {
        this.transaction = transaction;
        this.cases = cases;
        this.measureTests = measureTests;
        this.judge = judge;
        this.readCases = readCases;
        this.acts = acts;
        this.clock = clock;
    }

    /** The document of the case, judged from its whole history. */
    ServedCase judge(String reference, Actor actor) {
        readCases.find(reference, actor);
        transaction.run(actor.tenant(), () -> {
            cases.lock(reference, List.of(), OffsetDateTime.now(clock));
            measureTests.keepMissing(reference);
            judge.judgeAndKeep(reference);
            acts.note(actor.name(), Act.CASE_JUDGED_AGAIN, reference, Map.of());
        });
        return readCases.find(reference, actor);
    }
}
