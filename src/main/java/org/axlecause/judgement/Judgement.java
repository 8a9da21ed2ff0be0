package org.axlecause.judgement;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import org.axlecause.diagnosis.CauseWeights;
import org.axlecause.facts.CaseStatus;
import org.axlecause.facts.EntryId;
import org.axlecause.repair.Estimate;
import org.axlecause.repair.Fitness;
import org.axlecause.repair.PlannedCaution;
import org.axlecause.repair.PlannedStep;
import org.axlecause.repair.ScopeLine;
import org.axlecause.repair.Verification;
import org.jspecify.annotations.Nullable;

/**
 * What follows from a case's history, in the words of the case document.
 *
 * @param reference case reference
 * @param presentation entry of the presentation it is judged by; null while no vehicle was presented
 * @param site code of the site
 * @param opened when the vehicle was presented; until then when the first entry happened
 * @param openedDay that day in the site's time zone
 * @param version number of distinct entries judged
 * @param status highest status that holds
 * @param regime regime it was judged by
 * @param policy policy it was judged by
 * @param causeWeights published weights by which the causes were weighed; null where it was those of the book alone
 * @param departures departures from its clauses; null where there are none
 * @param figures figures of all tests
 * @param deficiencies deficiencies, by class
 * @param symptoms symptoms that show
 * @param causes causes, the most settled first
 * @param nextChecks checks worth making
 * @param scope scope lines
 * @param estimate totals; null where there is no scope
 * @param workPlan steps in a valid order
 * @param cautions cautions before the steps they belong to
 * @param fitness advice on use
 * @param verification proof of the repair
 * @param questions what is open
 * @param timeline every entry in the order that counts
 */
public record Judgement(
        String reference,
        @Nullable EntryId presentation,
        @Nullable String site,
        OffsetDateTime opened,
        LocalDate openedDay,
        int version,
        CaseStatus status,
        @Nullable JudgedBy regime,
        JudgedBy policy,
        @Nullable WeighedBy causeWeights,
        @Nullable List<ShownDeparture> departures,
        List<ShownFigure> figures,
        List<ShownDeficiency> deficiencies,
        List<ShownSymptom> symptoms,
        List<ShownCause> causes,
        List<ShownCheck> nextChecks,
        List<ScopeLine> scope,
        @Nullable Estimate estimate,
        List<PlannedStep> workPlan,
        List<PlannedCaution> cautions,
        Fitness fitness,
        Verification verification,
        List<ShownQuestion> questions,
        List<TimelineEntry> timeline) {

    /**
     * A document that a case was judged by.
     *
     * @param code code of the regime or name of the policy
     * @param version its version
     */
    public record JudgedBy(String code, String version) {}

    /**
     * Published weights that causes were weighed by.
     *
     * @param version number of their version
     */
    public record WeighedBy(int version) {

        static @Nullable WeighedBy of(CauseWeights weights) {
            Integer version = weights.version();
            return version == null ? null : new WeighedBy(version);
        }
    }
}
