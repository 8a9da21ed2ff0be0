package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * A scope line whose work was reported done; only the second call of the rule base sees it.
 *
 * @param line the line
 */
public record LineDone(LineKey line) implements Shown {

    /** Whether the work may have changed the brake force. */
    public boolean isChangingForce() {
        return line.isChangingForce();
    }

    /** Whether the work mends the fault of a part: another one fitted, or this one cleaned, freed, set or bled. */
    public boolean mends(@Nullable ScopeItem item, Place place) {
        return line.isChangingForce()
                && (line.item() == item || (line.item() == ScopeItem.PARKING_SHOE_SET && item == ScopeItem.SHOE_SET))
                && (line.place().covers(place) || line.item() == ScopeItem.BRAKE_FLUID);
    }

    @Override
    public String shown() {
        return line.shown() + " done";
    }
}
