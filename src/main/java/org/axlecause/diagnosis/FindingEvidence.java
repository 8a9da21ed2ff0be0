package org.axlecause.diagnosis;

import java.util.List;
import org.axlecause.facts.Agent;
import org.axlecause.facts.Bound;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Extent;
import org.axlecause.facts.Finding;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Spot;
import org.axlecause.facts.ThresholdCode;
import org.jspecify.annotations.Nullable;

/**
 * A finding as evidence: which recorded findings count as it, and which say that it was looked for and not there. In
 * the lists of agents, checks, spots and extents null stands for none named; an empty list allows all.
 *
 * @param code its code
 * @param text what is found
 * @param level kind of place it is at
 * @param component part looked at
 * @param on kind of wheel brake that the axle must have; null where it does not matter
 * @param conditions states that count
 * @param agents liquids that count
 * @param checks checks that count
 * @param spots parts of the wheel brake that count
 * @param extents extents that count
 * @param absentBy states of the same part that say it is not there
 * @param absentChecks checks by which they say so
 * @param measured measurement that makes it, or null
 */
public record FindingEvidence(
        String code,
        String text,
        Level level,
        Component component,
        @Nullable WheelBrake on,
        List<Condition> conditions,
        List<@Nullable Agent> agents,
        List<@Nullable CheckCode> checks,
        List<@Nullable Spot> spots,
        List<@Nullable Extent> extents,
        List<Condition> absentBy,
        List<@Nullable CheckCode> absentChecks,
        @Nullable Measured measured) {

    /** Whether the recorded finding counts as this one; a measured one is left to the rules, which know the limits. */
    boolean seenIn(Finding finding) {
        return measured == null
                && component == finding.component()
                && conditions.contains(finding.condition())
                && allows(agents, finding.agent())
                && allows(checks, finding.check())
                && allows(spots, finding.place().spot())
                && allows(extents, finding.extent());
    }

    /** Whether the recorded finding says that this one was looked for and is not there. */
    boolean ruledOutBy(Finding finding) {
        return component == finding.component()
                && absentBy.contains(finding.condition())
                && allows(absentChecks, finding.check());
    }

    private static <T> boolean allows(List<@Nullable T> allowed, @Nullable T value) {
        return allowed.isEmpty() || allowed.contains(value);
    }

    /**
     * A measured value beyond its limit.
     *
     * @param quantity what is measured
     * @param beyond on which side of the limit the fault lies
     * @param threshold workshop threshold where the part bears no limit; null where only the part's own limit counts
     */
    public record Measured(
            MeasuredQuantity quantity,
            Bound beyond,
            @Nullable ThresholdCode threshold) {}
}
