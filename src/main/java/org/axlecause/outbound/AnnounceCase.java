package org.axlecause.outbound;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import org.axlecause.casefile.CaseChange;
import org.axlecause.casefile.CaseWatch;
import org.axlecause.shared.TenantTransaction;

/** Writes what a judgement has changed into the outbox, in the judging transaction. */
@ApplicationScoped
class AnnounceCase implements CaseWatch {

    private final OutboxStore outbox;
    private final TenantTransaction transaction;
    private final Clock clock;

    AnnounceCase(OutboxStore outbox, TenantTransaction transaction, Clock clock) {
        this.outbox = outbox;
        this.transaction = transaction;
        this.clock = clock;
    }

    @Override
    public void judged(CaseChange change) {
        if (!change.changed().isEmpty()) {
            OutgoingEvent.of(change, transaction.tenant(), OffsetDateTime.now(clock))
                    .forEach(outbox::add);
        }
    }
}
