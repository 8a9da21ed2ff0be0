package org.axlecause.audit;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.axlecause.casefile.HistoryCheckStore;
import org.axlecause.shared.ChainHash;
import org.axlecause.shared.TenantTransaction;

/** Compares everything that was ever tied into a tenant's chain with what is there now. */
@ApplicationScoped
class VerifyChains {

    private static final int MOST_HEADS = 100_000;

    private final AuditStore store;
    private final HistoryCheckStore histories;
    private final HeadKey key;
    private final TenantTransaction transaction;

    VerifyChains(AuditStore store, HistoryCheckStore histories, HeadKey key, TenantTransaction transaction) {
        this.store = store;
        this.histories = histories;
        this.key = key;
        this.transaction = transaction;
    }

    /**
     * What the verification of one tenant found.
     *
     * @param cases how many cases were read
     * @param events how many of their events
     * @param entries how many links of the tenant's chain
     * @param breaks what is not as it was written, a sentence each; empty when all is
     */
    record Verified(long cases, long events, long entries, List<String> breaks) {}

    /** Verifies one tenant; heads that were exported show what was cut off together with the heads stored here. */
    Verified verify(String tenant, List<SignedHead> exported) {
        return transaction.call(tenant, () -> {
            List<String> breaks = new ArrayList<>();
            Following following = new Following(tenant, breaks);
            store.eachEntry(following);
            breaks.addAll(store.lostCaseHeads());
            HistoryCheckStore.Checked checked = histories.check();
            breaks.addAll(checked.breaks());
            List<SignedHead> heads = new ArrayList<>(store.heads(MOST_HEADS));
            exported.stream()
                    .filter(head -> head.tenant().equals(tenant) && !heads.contains(head))
                    .forEach(heads::add);
            heads.forEach(head -> whatIsWrong(head).ifPresent(breaks::add));
            return new Verified(checked.cases(), checked.events(), following.read, breaks);
        });
    }

    private Optional<String> whatIsWrong(SignedHead head) {
        String name = "the head of entry " + head.position() + " signed at " + head.signedAt();
        if (key.isThere() && !key.holds(head)) {
            return Optional.of(name + " isn't signed by the present key, or was changed");
        }
        return store.hashAt(head.position())
                .map(hash -> hash.equals(head.hash())
                        ? Optional.<String>empty()
                        : Optional.of(name + " is another than the entry there now"))
                .orElse(Optional.of("the audit chain was cut: " + name + " has no entry any more"));
    }

    /** Follows the chain from its first link. */
    private static final class Following implements AuditStore.Reader {

        private final String tenant;
        private final List<String> breaks;
        private String previous = ChainHash.start();
        private long position;
        private long read;

        Following(String tenant, List<String> breaks) {
            this.tenant = tenant;
            this.breaks = breaks;
        }

        @Override
        public void read(AuditStore.Stored stored) {
            read++;
            position++;
            long found = stored.entry().position();
            if (found != position) {
                breaks.add("audit entry " + position + " is missing");
            } else if (!stored.previous().equals(previous)
                    || !stored.hash().equals(stored.entry().hash(previous, tenant))) {
                breaks.add("audit entry " + position + " is not what was written");
            }
            position = found;
            previous = stored.hash();
        }
    }
}
