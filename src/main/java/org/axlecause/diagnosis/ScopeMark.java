package org.axlecause.diagnosis;

import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.jspecify.annotations.Nullable;

/**
 * One thing that a cause makes the scope.
 *
 * @param action what is done
 * @param item to what
 * @param extent how far it reaches
 * @param on kind of wheel brake it is for; null where it is for all
 */
public record ScopeMark(
        ScopeAction action,
        ScopeItem item,
        ScopeExtent extent,
        @Nullable WheelBrake on) {

    /** Whether it only asks for another run, which is a check and no work on the vehicle. */
    boolean isNextRun() {
        return action == ScopeAction.MEASURE && item == ScopeItem.ROLLER_TEST;
    }
}
