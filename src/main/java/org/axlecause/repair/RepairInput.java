package org.axlecause.repair;

import java.util.List;
import java.util.function.Function;
import org.axlecause.facts.Because;
import org.axlecause.facts.CautionProposal;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.PriceList;
import org.axlecause.facts.Reason;
import org.axlecause.facts.RetestComparison;
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
 * @param comparisons figures of the final tests beside those at arrival
 * @param prices price list that the case is priced by; null where the site has none
 * @param explain turns a ground into what is shown of it
 */
public record RepairInput(
        List<ScopeProposal> scope,
        List<StepProposal> steps,
        List<CautionProposal> cautions,
        List<UnaskedLine> unasked,
        List<LineDecision> decisions,
        List<WorkReported> reports,
        List<RetestComparison> comparisons,
        @Nullable PriceList prices,
        Function<Because, Reason> explain) {

    public RepairInput {
        scope = List.copyOf(scope);
        steps = List.copyOf(steps);
        cautions = List.copyOf(cautions);
        unasked = List.copyOf(unasked);
        decisions = List.copyOf(decisions);
        reports = List.copyOf(reports);
        comparisons = List.copyOf(comparisons);
    }
}
