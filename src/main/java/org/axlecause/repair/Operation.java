package org.axlecause.repair;

import java.math.BigDecimal;
import java.util.List;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.jspecify.annotations.Nullable;

/**
 * What is known of one kind of scope line.
 *
 * @param what action and item
 * @param extent how far such a line usually reaches
 * @param quantity how much it takes
 * @param part item whose price it needs for each unit of the quantity; null where it takes no part
 * @param ownLabour whether it has hours of its own
 * @param takesAlong kinds of lines at the same place that its work includes
 */
public record Operation(
        Kind what,
        ScopeExtent extent,
        Measure quantity,
        @Nullable ScopeItem part,
        boolean ownLabour,
        List<Kind> takesAlong) {

    public Operation {
        takesAlong = List.copyOf(takesAlong);
    }

    static Operation unlisted(Kind what) {
        return new Operation(
                what, ScopeExtent.WHEEL, new Measure(BigDecimal.ONE, "1", null), what.item(), true, List.of());
    }

    /**
     * Kind of scope line.
     *
     * @param action what is done
     * @param item to what
     */
    public record Kind(ScopeAction action, ScopeItem item) {

        /** Action and item joined by a blank. */
        @Override
        public String toString() {
            return action + " " + item;
        }
    }
}
