package org.axlecause.outbound;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.axlecause.access.Actor;
import org.axlecause.access.Role;
import org.axlecause.access.TenantStore;
import org.axlecause.casefile.CaseChange;
import org.axlecause.outbound.DeliveryStore.Listed;
import org.axlecause.outbound.ManageSubscriptions.WithSecret;
import org.axlecause.shared.TenantTransaction;

/** Tenants with subscriptions and events of their own, for tests. */
@ApplicationScoped
class Outbound {

    static final String JUDGED = "org.axlecause.case.judged.v1";
    static final String VERIFIED = "org.axlecause.case.verified.v1";

    private final TenantStore tenants;
    private final ManageSubscriptions manage;
    private final OutboxStore outbox;
    private final TenantTransaction transaction;
    private final Clock clock;

    Outbound(
            TenantStore tenants,
            ManageSubscriptions manage,
            OutboxStore outbox,
            TenantTransaction transaction,
            Clock clock) {
        this.tenants = tenants;
        this.manage = manage;
        this.outbox = outbox;
        this.transaction = transaction;
        this.clock = clock;
    }

    /** The admin of a tenant that no other test uses. */
    Actor aTenant() {
        String tenant = "t-" + UUID.randomUUID().toString().substring(0, 13);
        tenants.open(tenant, "Chain");
        return new Actor(tenant, "admin-key", Set.of(Role.ADMIN), null);
    }

    WithSecret subscribe(Actor actor, String address) {
        return manage.make(new SubscriptionWanted(address, "of a test", List.of(JUDGED, VERIFIED), null, null), actor);
    }

    /** An event about a case, as a judgement makes it. */
    OutgoingEvent announce(Actor actor, String reference) {
        return announce(actor, reference, null);
    }

    OutgoingEvent announce(Actor actor, String reference, String site) {
        OutgoingEvent event = OutgoingEvent.of(
                        new CaseChange(reference, site, 1, "open", List.of("causes", "timeline"), false),
                        actor.tenant(),
                        OffsetDateTime.now(clock))
                .get(0);
        transaction.run(actor.tenant(), () -> outbox.add(event));
        return event;
    }

    List<Listed> deliveries(Actor actor, WithSecret to) {
        return manage.deliveries(to.subscription().id(), null, Long.MAX_VALUE, 200, actor);
    }

    Subscription now(Actor actor, WithSecret made) {
        return manage.find(made.subscription().id(), actor);
    }
}
