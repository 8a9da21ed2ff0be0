package org.axlecause.judgement;

import java.util.List;
import java.util.Optional;
import org.axlecause.facts.InspectionResult;
import org.axlecause.facts.InspectionResulted;
import org.axlecause.facts.NoticedDeficiency;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.VerificationOutcome;
import org.axlecause.repair.LaterInspection;
import org.axlecause.repair.Verification;
import org.jspecify.annotations.Nullable;

/** What the official test said afterwards, beside what the verification says. */
final class Inspections {

    private Inspections() {}

    /** The last result on record; null where none is. */
    static @Nullable LaterInspection last(StandingHistory history) {
        List<Recorded> results = history.of(InspectionResulted.class);
        if (results.isEmpty()) {
            return null;
        }
        Recorded last = results.get(results.size() - 1);
        InspectionResulted resulted = (InspectionResulted) last.entry();
        return new LaterInspection(
                resulted.result(),
                resulted.items().stream().map(NoticedDeficiency::item).sorted().toList(),
                last.time());
    }

    /** A question where the inspector and the verification say different things. */
    static Optional<ShownQuestion> question(Verification verification) {
        LaterInspection later = verification.inspection();
        if (later == null) {
            return Optional.empty();
        }
        boolean verified = verification.outcome() == VerificationOutcome.VERIFIED;
        boolean passed = later.result() == InspectionResult.PASSED;
        if (verified == passed) {
            return Optional.empty();
        }
        return Optional.of(HistoryQuestions.question(
                QuestionCode.INSPECTION_DISAGREES,
                Place.VEHICLE,
                "The official test says " + later.result()
                        + (later.items().isEmpty() ? "" : " with items " + String.join(", ", later.items()))
                        + "; the verification of the repair says " + verification.outcome() + ".",
                passed
                        ? "Finish what is still open for the verification, or withdraw what is wrong on record."
                        : "Record a diagnostic test and see which axle and brake the noted items speak of."));
    }
}
