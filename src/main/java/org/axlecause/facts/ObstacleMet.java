package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * Something stood in the way of the work.
 *
 * @param component part that resists
 * @param condition how it resists
 * @param place where
 * @param note free words of the technician
 */
public record ObstacleMet(
        Component component,
        Condition condition,
        Place place,
        @Nullable String note) implements Entry {}
