package org.axlecause.judgement;

import java.util.List;
import org.axlecause.facts.CaseClosed;
import org.axlecause.facts.CaseStatus;
import org.axlecause.facts.LineStanding;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.VerificationOutcome;
import org.axlecause.facts.WorkReported;
import org.axlecause.repair.ScopeLine;

/** The highest status of a case that holds; it falls back when entries are taken back. */
final class Statuses {

    private Statuses() {}

    static CaseStatus of(StandingHistory history, List<ScopeLine> lines, VerificationOutcome outcome) {
        if (!history.of(CaseClosed.class).isEmpty()) {
            return CaseStatus.CLOSED;
        }
        if (outcome == VerificationOutcome.VERIFIED) {
            return CaseStatus.VERIFIED;
        }
        boolean agreed = lines.stream()
                .filter(line -> line.item() != ScopeItem.ROLLER_TEST)
                .anyMatch(line -> line.standing() == LineStanding.AGREED);
        boolean done = any(lines, LineStanding.DONE);
        if (done && !agreed) {
            return CaseStatus.TO_VERIFY;
        }
        if (agreed
                || done
                || any(lines, LineStanding.AGREED)
                || !history.of(WorkReported.class).isEmpty()) {
            return CaseStatus.IN_WORK;
        }
        return any(lines, LineStanding.PROPOSED) || any(lines, LineStanding.REFUSED) || any(lines, LineStanding.LATER)
                ? CaseStatus.SCOPED
                : CaseStatus.OPEN;
    }

    private static boolean any(List<ScopeLine> lines, LineStanding standing) {
        return lines.stream().anyMatch(line -> line.standing() == standing);
    }
}
