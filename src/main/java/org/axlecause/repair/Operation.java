package org.axlecause.repair;

import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.jspecify.annotations.Nullable;

/**
 * What is known of one kind of scope line.
 *
 * @param what action and item
 * @param extent how far such a line usually reaches
 * @param quantity how much it usually takes
 * @param others quantities that hold where it reaches further or goes with another line
 * @param part item whose price it needs for each unit of the quantity; null where it takes no part
 * @param ownLabour whether it has hours of its own
 * @param hours usual hours on its own; null where none are known
 * @param takesAlong kinds of lines at the same place that its work includes
 */
public record Operation(
        Kind what,
        ScopeExtent extent,
        Measure quantity,
        List<OtherQuantity> others,
        @Nullable ScopeItem part,
        boolean ownLabour,
        @Nullable Span hours,
        List<Kind> takesAlong) {

    private static final String FLUID = "{fluid}";
    private static final String FLUID_UNKNOWN = "of the class that the data of the vehicle names";

    public Operation {
        others = List.copyOf(others);
        takesAlong = List.copyOf(takesAlong);
    }

    static Operation unlisted(Kind what) {
        return new Operation(
                what,
                ScopeExtent.WHEEL,
                new Measure(BigDecimal.ONE, "1", null),
                List.of(),
                what.item(),
                true,
                null,
                List.of());
    }

    /** How much a line takes that reaches so far and stands beside these lines, the fluid by its class. */
    Measure quantity(ScopeExtent reach, Set<LineKey> lines, @Nullable String fluid) {
        BigDecimal value = others.stream()
                .filter(other -> other.holds(reach, lines))
                .map(OtherQuantity::value)
                .findFirst()
                .orElse(quantity.value());
        String of = quantity.of();
        return new Measure(
                value, quantity.unit(), of == null ? null : of.replace(FLUID, fluid == null ? FLUID_UNKNOWN : fluid));
    }

    /**
     * A quantity for a special case.
     *
     * @param reach extent for which it holds; null for any
     * @param with kind of line beside which it holds; null for any
     * @param value the quantity
     */
    public record OtherQuantity(
            @Nullable ScopeExtent reach, @Nullable Kind with, BigDecimal value) {

        boolean holds(ScopeExtent extent, Set<LineKey> lines) {
            return (reach == null || reach == extent)
                    && (with == null
                            || lines.stream()
                                    .anyMatch(line -> line.action() == with.action() && line.item() == with.item()));
        }
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
