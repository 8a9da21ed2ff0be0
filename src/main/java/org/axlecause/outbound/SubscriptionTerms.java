package org.axlecause.outbound;

import java.util.List;
import org.axlecause.access.Actor;
import org.jspecify.annotations.Nullable;

/**
 * What a subscriber wants: where, what and about which sites.
 *
 * @param address where events are posted to
 * @param description what it is for
 * @param types types of the events
 * @param sites codes of the only sites whose cases are told; null for all
 * @param state {@code active} or {@code stopped}
 */
record SubscriptionTerms(
        String address,
        String description,
        List<String> types,
        @Nullable List<String> sites,
        SubscriptionState state) {

    SubscriptionTerms {
        types = List.copyOf(types);
        sites = sites == null ? null : List.copyOf(sites);
    }

    /** Whether it tells about no site that the actor may not see. */
    boolean isWithinSitesOf(Actor actor) {
        return actor.sites() == null || (sites != null && actor.sites().containsAll(sites));
    }
}
