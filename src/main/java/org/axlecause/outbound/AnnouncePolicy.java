package org.axlecause.outbound;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import org.axlecause.policy.PolicyVersion;
import org.axlecause.policy.PolicyWatch;
import org.axlecause.shared.TenantTransaction;

/** Writes a publication into the outbox, in the publishing transaction. */
@ApplicationScoped
class AnnouncePolicy implements PolicyWatch {

    private final OutboxStore outbox;
    private final TenantTransaction transaction;
    private final Clock clock;

    AnnouncePolicy(OutboxStore outbox, TenantTransaction transaction, Clock clock) {
        this.outbox = outbox;
        this.transaction = transaction;
        this.clock = clock;
    }

    @Override
    public void published(PolicyVersion version) {
        outbox.add(OutgoingEvent.of(version, transaction.tenant(), OffsetDateTime.now(clock)));
    }
}
