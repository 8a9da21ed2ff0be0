package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * What the policy wants to be on record before a line counts as scoped; only the second call of the rule base sees it.
 *
 * @param action action of the line
 * @param item item of the line
 * @param quantity what must be measured; null where a photo is wanted
 */
public record NeededEvidence(
        ScopeAction action, ScopeItem item, @Nullable MeasuredQuantity quantity) implements Shown {

    /** Whether a measurement is wanted. */
    public boolean isMeasured() {
        return quantity != null;
    }

    /** Clause that wants it. */
    public ClauseCode clause() {
        return quantity == null ? ClauseCode.NEEDED_PHOTO : ClauseCode.NEEDED_MEASUREMENT;
    }

    /** What is wanted, in words. */
    public String what() {
        return quantity == null ? "a photo of the " + item : "the measured " + quantity;
    }

    @Override
    public String shown() {
        return "policy clause " + clause() + ": " + what() + " before " + action + " " + item;
    }
}
