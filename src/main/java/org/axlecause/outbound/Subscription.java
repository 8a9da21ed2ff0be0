package org.axlecause.outbound;

import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;

/**
 * A subscription as it stands.
 *
 * @param id its id
 * @param version grows with every change, from 1
 * @param terms what is wanted
 * @param stateSince since when its state holds
 * @param failingSince since when no delivery has succeeded while some failed; null while all is well
 * @param formerUntil until when deliveries are also signed with the secret before the present one
 * @param createdAt when it was made
 * @param createdBy id of the key that made it
 */
record Subscription(
        String id,
        int version,
        SubscriptionTerms terms,
        OffsetDateTime stateSince,
        @Nullable OffsetDateTime failingSince,
        @Nullable OffsetDateTime formerUntil,
        OffsetDateTime createdAt,
        String createdBy) {}
