package org.axlecause.casefile;

import org.axlecause.shared.ChainHash;

/**
 * Ties each event of a case to the one before it, over the previous hash (32 zero bytes for the first), tenant,
 * reference, position, source, id, type, time as sent, time of receipt, actor, content digest and body.
 */
final class HashChain {

    private HashChain() {}

    /** The hash before the first event. */
    static String start() {
        return ChainHash.start();
    }

    static String next(String previous, String tenant, String reference, int position, NewEvent event) {
        return new ChainHash()
                .hex(previous)
                .text(tenant)
                .text(reference)
                .number(position)
                .text(event.id().source())
                .text(event.id().id())
                .text(event.type())
                .text(event.time().toString())
                .moment(event.receivedAt())
                .text(event.actor())
                .hex(event.digest())
                .text(event.body())
                .hash();
    }
}
