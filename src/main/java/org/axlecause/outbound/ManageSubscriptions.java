package org.axlecause.outbound;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.BooleanSupplier;
import org.axlecause.access.Act;
import org.axlecause.access.ActStore;
import org.axlecause.access.Actor;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** What an admin does with subscriptions; one of some sites sees those that tell about no other. */
@ApplicationScoped
class ManageSubscriptions {

    private static final int MOST = 50;
    private static final int MOST_REPLAYED = 10_000;

    /** How long messages are signed with the former secret too, so that an endpoint can change without a gap. */
    private static final Duration OVERLAP = Duration.ofHours(24);

    private final SubscriptionStore subscriptions;
    private final DeliveryStore deliveries;
    private final SubscriptionCheck check;
    private final ActStore acts;
    private final TenantTransaction transaction;
    private final Clock clock;

    ManageSubscriptions(
            SubscriptionStore subscriptions,
            DeliveryStore deliveries,
            SubscriptionCheck check,
            ActStore acts,
            TenantTransaction transaction,
            Clock clock) {
        this.subscriptions = subscriptions;
        this.deliveries = deliveries;
        this.check = check;
        this.acts = acts;
        this.transaction = transaction;
        this.clock = clock;
    }

    /** A subscription with the secret that it was just given. */
    record WithSecret(Subscription subscription, Secret secret) {}

    List<Subscription> all(Actor actor) {
        return transaction.call(
                actor.tenant(),
                () -> subscriptions.all().stream()
                        .filter(subscription -> subscription.terms().isWithinSitesOf(actor))
                        .toList());
    }

    Subscription find(String id, Actor actor) {
        return transaction.call(
                actor.tenant(),
                () -> subscriptions
                        .find(id)
                        .filter(subscription -> subscription.terms().isWithinSitesOf(actor))
                        .orElseThrow(() -> RefusedException.notFound("There is no subscription '" + id + "'.")));
    }

    WithSecret make(@Nullable SubscriptionWanted wanted, Actor actor) {
        SubscriptionTerms terms = check.terms(wanted, actor);
        return transaction.call(actor.tenant(), () -> {
            subscriptions.makeOneAtATime();
            if (subscriptions.all().size() >= MOST) {
                throw RefusedException.because(
                        Reason.CONFLICT, "There are " + MOST + " subscriptions already. Delete one that isn't needed.");
            }
            String id = UUID.randomUUID().toString();
            Secret secret = Secret.made();
            subscriptions.add(id, terms, secret, actor.name(), now());
            acts.note(actor.name(), Act.SUBSCRIPTION_MADE, id, told(terms));
            return new WithSecret(find(id, actor), secret);
        });
    }

    /** Changes the subscription if this is still its version. */
    Subscription change(String id, int version, @Nullable SubscriptionWanted wanted, Actor actor) {
        find(id, actor);
        SubscriptionTerms terms = check.terms(wanted, actor);
        return transaction.call(actor.tenant(), () -> {
            changed(() -> subscriptions.change(id, version, terms, now()));
            acts.note(actor.name(), Act.SUBSCRIPTION_CHANGED, id, told(terms));
            return find(id, actor);
        });
    }

    /** Removes the subscription, with its deliveries, if this is still its version. */
    void remove(String id, int version, Actor actor) {
        transaction.run(actor.tenant(), () -> {
            find(id, actor);
            changed(() -> subscriptions.remove(id, version));
            acts.note(actor.name(), Act.SUBSCRIPTION_DELETED, id, Map.of());
        });
    }

    /** Gives the subscription a new secret; the one before stays valid for a while. */
    WithSecret rotate(String id, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            Subscription present = find(id, actor);
            Secret secret = Secret.made();
            changed(() -> subscriptions.rotate(id, present.version(), secret, now().plus(OVERLAP)));
            acts.note(actor.name(), Act.SUBSCRIPTION_SECRET_CHANGED, id, Map.of());
            return new WithSecret(find(id, actor), secret);
        });
    }

    List<DeliveryStore.Listed> deliveries(
            String id, @Nullable DeliveryState state, long before, int limit, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            find(id, actor);
            return deliveries.list(id, state, before, limit);
        });
    }

    /** Makes events due once more; how many. */
    int replay(String id, Replay replay, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            if (find(id, actor).terms().state() != SubscriptionState.ACTIVE) {
                throw RefusedException.because(
                        Reason.CONFLICT, "The subscription isn't active; set its state to active first.");
            }
            int count = deliveries.count(id, replay);
            if (replay.event() != null && count == 0) {
                throw RefusedException.notFound("There is no event '" + replay.event()
                        + "' that this subscription asks for. Old events are removed.");
            }
            if (count > MOST_REPLAYED) {
                throw RefusedException.because(
                        Reason.CONFLICT,
                        count + " events lie between these moments; at most " + MOST_REPLAYED
                                + " are replayed at once. Name a shorter range.");
            }
            acts.note(actor.name(), Act.EVENTS_REPLAYED, id, Map.of("events", Integer.toString(count)));
            return deliveries.replay(id, replay, now());
        });
    }

    private static Map<String, String> told(SubscriptionTerms terms) {
        return Map.of(
                "address", terms.address(),
                "types", String.join(" ", terms.types()),
                "state", terms.state().toString());
    }

    private static void changed(BooleanSupplier change) {
        if (!change.getAsBoolean()) {
            throw RefusedException.because(
                    Reason.PRECONDITION_FAILED,
                    "The subscription has changed since that version. Get it again and repeat the change.");
        }
    }

    private OffsetDateTime now() {
        return OffsetDateTime.now(clock).truncatedTo(ChronoUnit.MICROS);
    }
}
