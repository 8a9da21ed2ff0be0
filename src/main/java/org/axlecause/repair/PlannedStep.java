package org.axlecause.repair;

import java.util.List;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.Place;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.WorkOutcome;
import org.jspecify.annotations.Nullable;

/**
 * A step of the work plan.
 *
 * @param id made of step and place
 * @param step the step
 * @param place where
 * @param says what is done, in words
 * @param lines ids of the scope lines it serves
 * @param after ids of the steps that must be done first
 * @param verify what must hold before the next step
 * @param stop when to stop, and where to go then; null where nothing special holds
 * @param backTo id of the step that a failure leads back to; null where none of the plan does
 * @param tools tools and usual sizes, by common practice
 * @param source document and section, or whose habit it is
 * @param cautions cautions to read before this step
 * @param outcome how it was reported; null while it is open, or to be done again after a test that failed
 * @param heldBy ids of steps that were not possible and that it waits for
 */
public record PlannedStep(
        String id,
        StepCode step,
        Place place,
        String says,
        List<String> lines,
        List<String> after,
        String verify,
        @Nullable String stop,
        @Nullable String backTo,
        List<String> tools,
        String source,
        List<CautionCode> cautions,
        @Nullable WorkOutcome outcome,
        List<String> heldBy) {

    public PlannedStep {
        lines = List.copyOf(lines);
        after = List.copyOf(after);
        tools = List.copyOf(tools);
        cautions = List.copyOf(cautions);
        heldBy = List.copyOf(heldBy);
    }

    PlannedStep with(List<CautionCode> before) {
        return new PlannedStep(
                id, step, place, says, lines, after, verify, stop, backTo, tools, source, before, outcome, heldBy);
    }
}
