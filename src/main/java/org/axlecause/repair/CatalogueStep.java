package org.axlecause.repair;

import java.util.List;
import org.axlecause.facts.StepCode;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a step of work.
 *
 * @param code the step
 * @param says what is done
 * @param does kinds of scope lines that are done when it is done
 * @param needs steps that must be done first, where the plan has them
 * @param keepsPattern steps that must be done on the other side of the axle first; none where sides are free
 * @param verify what must hold before the next step
 * @param stop when to stop, and where to go then
 * @param backTo step that a failure leads back to; null where none does
 * @param tools tools and usual sizes, by common practice
 * @param source document and section, or whose habit it is
 */
public record CatalogueStep(
        StepCode code,
        String says,
        List<Operation.Kind> does,
        List<StepCode> needs,
        List<StepCode> keepsPattern,
        String verify,
        @Nullable String stop,
        @Nullable StepCode backTo,
        List<String> tools,
        String source) {

    public CatalogueStep {
        does = List.copyOf(does);
        needs = List.copyOf(needs);
        keepsPattern = List.copyOf(keepsPattern);
        tools = List.copyOf(tools);
    }
}
