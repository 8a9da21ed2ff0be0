package org.axlecause.repair;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is to be done, in which order, with which care and at what price.
 *
 * @param lines scope lines, by place, item and action
 * @param estimate totals over the lines that stand; null where no line does
 * @param steps steps in an order that is valid
 * @param cautions cautions, by the first step that they precede
 * @param unknownLines line ids of decisions that are none
 * @param unknownSteps step ids of reports that are none
 */
public record RepairPlan(
        List<ScopeLine> lines,
        @Nullable Estimate estimate,
        List<PlannedStep> steps,
        List<PlannedCaution> cautions,
        List<String> unknownLines,
        List<String> unknownSteps) {

    public RepairPlan {
        lines = List.copyOf(lines);
        steps = List.copyOf(steps);
        cautions = List.copyOf(cautions);
        unknownLines = List.copyOf(unknownLines);
        unknownSteps = List.copyOf(unknownSteps);
    }
}
