package org.axlecause.intake;

import org.axlecause.shared.Problem;
import org.jspecify.annotations.Nullable;

/**
 * What somebody sent as an event: either an event that passed the checks, or the problem with it.
 *
 * @param source source, as far as it could be read
 * @param id id, as far as it could be read
 * @param event the event that passed
 * @param problem everything that is wrong with it
 */
record Attempt(
        @Nullable String source,
        @Nullable String id,
        @Nullable IncomingEvent event,
        @Nullable Problem problem) {

    static Attempt passed(IncomingEvent event) {
        return new Attempt(event.id().source(), event.id().id(), event, null);
    }

    static Attempt refused(@Nullable String source, @Nullable String id, Problem problem) {
        return new Attempt(source, id, null, problem);
    }
}
