package org.axlecause.outbound;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.axlecause.outbound.AddressGuard.RefusedAddressException;
import org.axlecause.shared.TenantTransaction;
import org.jboss.logging.Logger;

/** Sends what is due to one subscription, and records how it went. */
@ApplicationScoped
class SendDeliveries {

    private static final Logger LOG = Logger.getLogger(SendDeliveries.class);

    /** How many cases one subscription is told about at a time. */
    private static final int AT_A_TIME = 8;

    /** Well beyond the time-out of an attempt, so that nothing is sent twice while its replica lives. */
    private static final Duration CLAIM = Duration.ofMinutes(2);

    /** The longest that an overloaded endpoint is left alone when it doesn't say how long. */
    private static final Duration USUAL_REST = Duration.ofMinutes(5);

    private final DeliveryStore deliveries;
    private final SubscriptionStore subscriptions;
    private final AddressGuard guard;
    private final SendWebhook sendWebhook;
    private final TenantTransaction transaction;
    private final Clock clock;

    SendDeliveries(
            DeliveryStore deliveries,
            SubscriptionStore subscriptions,
            AddressGuard guard,
            SendWebhook sendWebhook,
            TenantTransaction transaction,
            Clock clock) {
        this.deliveries = deliveries;
        this.subscriptions = subscriptions;
        this.guard = guard;
        this.sendWebhook = sendWebhook;
        this.transaction = transaction;
        this.clock = clock;
    }

    /** Everything that one round of attempts needs. */
    private record Round(String address, List<Secret> secrets, List<Delivery> claimed) {}

    /** Sends until nothing is due any more or an attempt fails. */
    void send(String tenant, String subscription) {
        boolean goOn = true;
        while (goOn) {
            Round round = transaction.call(tenant, () -> claim(subscription));
            List<Answer> answers = answers(round);
            for (int index = 0; index < answers.size(); index++) {
                settle(tenant, subscription, round.claimed().get(index), answers.get(index));
            }
            goOn = !answers.isEmpty() && answers.stream().allMatch(Answer::isSuccess);
        }
    }

    private Round claim(String id) {
        Optional<Subscription> subscription = subscriptions.find(id);
        if (subscription.isEmpty()) {
            return new Round("", List.of(), List.of());
        }
        OffsetDateTime now = OffsetDateTime.now(clock);
        return new Round(
                subscription.get().terms().address(),
                subscriptions.secrets(id, now),
                deliveries.claim(id, now, now.plus(CLAIM), AT_A_TIME));
    }

    private List<Answer> answers(Round round) {
        if (round.claimed().isEmpty()) {
            return List.of();
        }
        Endpoint endpoint;
        try {
            endpoint = guard.endpoint(round.address());
        } catch (RefusedAddressException refused) {
            return round.claimed().stream()
                    .map(delivery -> Answer.none(refused.words()))
                    .toList();
        }
        List<CompletableFuture<Answer>> sent = new ArrayList<>();
        for (Delivery delivery : round.claimed()) {
            sent.add(sendWebhook.send(endpoint, delivery, round.secrets()).toCompletableFuture());
        }
        return sent.stream().map(CompletableFuture::join).toList();
    }

    private void settle(String tenant, String subscription, Delivery delivery, Answer answer) {
        OffsetDateTime now = OffsetDateTime.now(clock);
        transaction.run(tenant, () -> {
            if (answer.isSuccess()) {
                deliveries.settle(subscription, delivery, DeliveryState.DELIVERED, now, answer.words());
                subscriptions.well(subscription);
            } else {
                fail(tenant, subscription, delivery, answer, now);
            }
        });
    }

    private void fail(String tenant, String subscription, Delivery delivery, Answer answer, OffsetDateTime now) {
        Optional<Duration> wait = RetryTable.waitAfter(delivery.attempt(), delivery.event());
        subscriptions.failing(subscription, now);
        if (answer.isGone() || wait.isEmpty()) {
            deliveries.settle(subscription, delivery, DeliveryState.FAILED, now, answer.words());
            SubscriptionState state = answer.isGone() ? SubscriptionState.GONE : SubscriptionState.FAILED;
            if (subscriptions.disable(subscription, state, now)) {
                LOG.warnf("Subscription %s of %s is told nothing any more: %s", subscription, tenant, state);
            }
            return;
        }
        Duration asked = answer.retryAfter();
        Duration longer = asked != null && asked.compareTo(wait.get()) > 0 ? asked : wait.get();
        deliveries.settle(subscription, delivery, DeliveryState.PENDING, now.plus(longer), answer.words());
        if (answer.asksForRest()) {
            Duration rest = wait.get().compareTo(USUAL_REST) < 0 ? wait.get() : USUAL_REST;
            subscriptions.hold(subscription, now.plus(asked != null ? asked : rest));
        }
    }
}
