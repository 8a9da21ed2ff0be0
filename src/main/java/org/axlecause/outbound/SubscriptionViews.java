package org.axlecause.outbound;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** What subscriptions and their deliveries look like on the wire. */
final class SubscriptionViews {

    private SubscriptionViews() {}

    @Schema(name = "SubscriptionView", description = "A subscription as it stands.")
    record SubscriptionView(
            String id,

            @Schema(description = "Where events are posted to.")
            String address,

            String description,
            List<String> types,

            @Schema(description = "Codes of the only sites whose cases are told; left out for all.") @Nullable
            List<String> sites,

            @Schema(
                    description = "active; stopped by an admin; gone, because the endpoint said so; failed, because the"
                            + " last attempt at a delivery failed.")
            SubscriptionState state,

            OffsetDateTime stateSince,

            @Schema(description = "Since when deliveries fail and none has succeeded.") @Nullable
            OffsetDateTime failingSince,

            @Schema(description = "Until when messages are also signed with the secret before the present one.")
            @Nullable
            OffsetDateTime formerSecretUntil,

            OffsetDateTime createdAt,

            @Schema(description = "Id of the key that made it.")
            String createdBy) {

        static SubscriptionView of(Subscription subscription) {
            SubscriptionTerms terms = subscription.terms();
            return new SubscriptionView(
                    subscription.id(),
                    terms.address(),
                    terms.description(),
                    terms.types(),
                    terms.sites(),
                    terms.state(),
                    subscription.stateSince(),
                    subscription.failingSince(),
                    subscription.formerUntil(),
                    subscription.createdAt(),
                    subscription.createdBy());
        }
    }

    @Schema(name = "SecretMade", description = "A new secret; it is shown here and never again.")
    record SecretMade(
            @Schema(description = "The subscription that it belongs to.")
            String id,

            @Schema(
                    description = "whsec_ and 32 random bytes in base64, for checking webhook-signature by Standard"
                            + " Webhooks.")
            String secret) {}

    @Schema(name = "DeliveryList", description = "A page of deliveries, newest event first.")
    record DeliveryList(List<DeliveryLine> deliveries) {}

    @Schema(name = "DeliveryLine", description = "One event on its way to one subscription.")
    record DeliveryLine(
            @Schema(description = "Id of the event, which is also webhook-id.")
            UUID event,

            String type,

            @Schema(description = "Address of the case document.")
            String link,

            @Schema(description = "pending, delivered, or failed for good.")
            DeliveryState state,

            @Schema(description = "How many attempts were begun.")
            int attempts,

            @Schema(description = "When the next attempt of a pending one is due.") @Nullable
            OffsetDateTime dueAt,

            @Nullable OffsetDateTime attemptedAt,

            @Schema(description = "What came of the last attempt.", examples = "HTTP 503") @Nullable
            String outcome,

            OffsetDateTime createdAt) {

        static DeliveryLine of(DeliveryStore.Listed delivery) {
            return new DeliveryLine(
                    delivery.event(),
                    delivery.type(),
                    "/v1/cases/" + delivery.reference(),
                    delivery.state(),
                    delivery.attempts(),
                    delivery.state() == DeliveryState.PENDING ? delivery.dueAt() : null,
                    delivery.attemptedAt(),
                    delivery.outcome(),
                    delivery.createdAt());
        }
    }

    @Schema(
            name = "ReplayWanted",
            description = "Which events are sent once more: one by its id, or all of a time range.")
    record ReplayWanted(
            @Schema(description = "Id of the one event.") @Nullable
            UUID event,

            @Schema(description = "First moment of the range.") @Nullable
            OffsetDateTime from,

            @Schema(description = "First moment after the range.") @Nullable
            OffsetDateTime to) {}

    @Schema(name = "ReplayBegun", description = "What is sent once more.")
    record ReplayBegun(
            @Schema(description = "How many events were made due; those that were on their way already don't count.")
            int deliveries) {}
}
