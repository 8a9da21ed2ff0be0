package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * The report that stands on a step of the work plan; only the second call of the rule base sees it.
 *
 * @param step the step
 * @param place where
 * @param outcome how it ended
 */
public record ReportedStep(StepCode step, Place place, WorkOutcome outcome) implements Shown, Comparable<ReportedStep> {

    /** Reads the identifier of a step; null where the text is none. */
    public static @Nullable ReportedStep ofId(String id, WorkOutcome outcome) {
        for (StepCode step : StepCode.values()) {
            String start = step + "-";
            Place place = id.startsWith(start) ? Place.ofId(id.substring(start.length())) : null;
            if (place != null) {
                return new ReportedStep(step, place, outcome);
            }
        }
        return null;
    }

    /** The identifier of the step in the work plan. */
    public String id() {
        return step + "-" + place.id();
    }

    @Override
    public String shown() {
        return "step " + step + " " + outcome + " at " + place;
    }

    @Override
    public int compareTo(ReportedStep other) {
        return id().compareTo(other.id());
    }
}
