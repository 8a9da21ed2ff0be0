package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * A fault of a part that no work and no look after the work has ended.
 *
 * @param component the part
 * @param condition its state
 * @param place where
 * @param extent how far the condition has gone
 * @param because ground
 */
public record StandingFault(
        Component component,
        Condition condition,
        Place place,
        @Nullable Extent extent,
        Because because) implements Conclusion {

    @Override
    public String shown() {
        return String.join(", ", because.facts());
    }
}
