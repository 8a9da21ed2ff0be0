package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
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
    private final Clock clock;

    JudgeAgain(
            TenantTransaction transaction,
            CaseStore cases,
            MeasureTests measureTests,
            CaseJudge judge,
            ReadCases readCases,
            Clock clock) {
        this.transaction = transaction;
        this.cases = cases;
        this.measureTests = measureTests;
        this.judge = judge;
        this.readCases = readCases;
        this.clock = clock;
    }

    /** The document of the case, judged from its whole history. */
    ServedCase judge(String reference, Actor actor) {
        readCases.find(reference, actor);
        transaction.run(actor.tenant(), () -> {
            cases.lock(List.of(reference), OffsetDateTime.now(clock));
            measureTests.keepMissing(reference);
            judge.judgeAndKeep(reference);
        });
        return readCases.find(reference, actor);
    }
}
