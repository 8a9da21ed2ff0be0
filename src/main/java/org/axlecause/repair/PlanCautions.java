package org.axlecause.repair;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.CautionProposal;
import org.axlecause.facts.StepCode;

/** Puts each caution before the steps that it precedes, and once into the plan, at the first of them. */
final class PlanCautions {

    private final RepairCatalogue catalogue;

    PlanCautions(RepairCatalogue catalogue) {
        this.catalogue = catalogue;
    }

    /** The cautions that precede a step of the plan, by the first of their steps. */
    List<PlannedCaution> of(List<CautionProposal> proposed, List<PlannedStep> steps) {
        Map<String, Integer> positions = new TreeMap<>();
        steps.forEach(step -> positions.put(step.id(), positions.size()));
        return proposed.stream()
                .map(CautionProposal::caution)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(CautionCode.class)))
                .stream()
                .map(code -> planned(code, steps))
                .filter(caution -> !caution.before().isEmpty())
                .sorted(Comparator.comparing((PlannedCaution caution) ->
                                positions.getOrDefault(caution.before().get(0), 0))
                        .thenComparing(PlannedCaution::code))
                .toList();
    }

    private PlannedCaution planned(CautionCode code, List<PlannedStep> steps) {
        CatalogueCaution caution = catalogue.caution(code);
        Set<StepCode> precedes = Set.copyOf(caution.precedes());
        return new PlannedCaution(
                code,
                caution.text(),
                steps.stream()
                        .filter(step -> precedes.contains(step.step()))
                        .map(PlannedStep::id)
                        .toList(),
                caution.source());
    }

    /** The steps, each caution at the first step that it precedes. */
    static List<PlannedStep> placed(List<PlannedCaution> cautions, List<PlannedStep> steps) {
        return steps.stream()
                .map(step -> step.with(cautions.stream()
                        .filter(caution -> caution.before().get(0).equals(step.id()))
                        .map(PlannedCaution::code)
                        .toList()))
                .toList();
    }
}
