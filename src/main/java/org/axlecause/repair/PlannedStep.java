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
 * @param tools tools and usual sizes, by common practice
 * @param cautions cautions to read before this step
 * @param outcome how it was reported; null while it is open
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
        List<String> tools,
        List<CautionCode> cautions,
        @Nullable WorkOutcome outcome) {

    public PlannedStep {
        lines = List.copyOf(lines);
        after = List.copyOf(after);
        tools = List.copyOf(tools);
        cautions = List.copyOf(cautions);
    }
}
