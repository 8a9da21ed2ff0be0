package org.axlecause.repair;

import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.axlecause.facts.Because;
import org.axlecause.facts.CautionProposal;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.PriceList;
import org.axlecause.facts.Reason;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.StepProposal;
import org.axlecause.facts.UnaskedLine;
import org.axlecause.facts.WorkReported;
import org.jspecify.annotations.Nullable;

/**
 * What a repair is planned from.
 *
 * @param scope lines that the rules propose
 * @param steps steps that the rules propose
 * @param cautions cautions that the rules propose
 * @param unasked lines that stay on the list without a proposal, with the ground
 * @param decisions all decisions on lines, in the order that counts
 * @param reports all reports of steps, in the order that counts
 * @param reportsBeforeTest how many of the reports the latest final test has followed
 * @param tested whether there is a final test
 * @param neededAgain lines done before the latest final test that are to be done once more
 * @param fluid class of fluid that the vehicle takes; null where unknown
 * @param prices price list that the case is priced by; null where the site has none
 * @param terms what the policy says about lines beside their necessity
 * @param explain turns a ground into what is shown of it
 */
public record RepairInput(
        List<ScopeProposal> scope,
        List<StepProposal> steps,
        List<CautionProposal> cautions,
        List<UnaskedLine> unasked,
        List<LineDecision> decisions,
        List<WorkReported> reports,
        int reportsBeforeTest,
        boolean tested,
        Set<LineKey> neededAgain,
        @Nullable String fluid,
        @Nullable PriceList prices,
        LineTerms terms,
        Function<Because, Reason> explain) {

    public RepairInput {
        scope = List.copyOf(scope);
        steps = List.copyOf(steps);
        cautions = List.copyOf(cautions);
        unasked = List.copyOf(unasked);
        decisions = List.copyOf(decisions);
        reports = List.copyOf(reports);
        neededAgain = Set.copyOf(neededAgain);
    }

    /** An input under a policy that says nothing about lines. */
    public RepairInput(
            List<ScopeProposal> scope,
            List<StepProposal> steps,
            List<CautionProposal> cautions,
            List<UnaskedLine> unasked,
            List<LineDecision> decisions,
            List<WorkReported> reports,
            int reportsBeforeTest,
            boolean tested,
            Set<LineKey> neededAgain,
            @Nullable String fluid,
            @Nullable PriceList prices,
            Function<Because, Reason> explain) {
        this(
                scope,
                steps,
                cautions,
                unasked,
                decisions,
                reports,
                reportsBeforeTest,
                tested,
                neededAgain,
                fluid,
                prices,
                LineTerms.NONE,
                explain);
    }
}
