package org.axlecause.audit;

import java.time.OffsetDateTime;
import org.axlecause.shared.ChainHash;

/**
 * A link of a tenant's chain.
 *
 * @param position place in the chain, from 1
 * @param notedAt when it was done, to the microsecond
 * @param actor who did it: id of a key, a command, or the service itself
 * @param action what was done; {@code case-head} says how far a case's own chain had come
 * @param object what it was done to
 * @param content the rest, as a JSON object
 */
record AuditEntry(long position, OffsetDateTime notedAt, String actor, String action, String object, String content) {

    static final String CASE_HEAD = "case-head";

    /** The hash of this link behind the one with the previous hash. */
    String hash(String previous, String tenant) {
        return new ChainHash()
                .hex(previous)
                .text(tenant)
                .number(position)
                .moment(notedAt)
                .text(actor)
                .text(action)
                .text(object)
                .text(content)
                .hash();
    }
}
