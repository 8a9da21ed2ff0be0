package org.axlecause.facts;

import java.util.List;

/**
 * A step of the work plan was reported.
 *
 * @param step id of the step in the work plan
 * @param outcome how it ended
 * @param parts parts fitted
 */
public record WorkReported(String step, WorkOutcome outcome, List<FittedPart> parts) implements Entry {

    public WorkReported {
        parts = List.copyOf(parts);
    }
}
