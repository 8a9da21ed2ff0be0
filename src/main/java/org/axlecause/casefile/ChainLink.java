package org.axlecause.casefile;

/**
 * A stored event with its place in the chain of its case.
 *
 * @param digest of its content, in hex
 * @param previous hash of the link before it, in hex
 * @param hash its own, in hex
 */
record ChainLink(StoredEvent event, String digest, String previous, String hash) {

    /** Whether this is the link that was written behind the one with the previous hash. */
    boolean isBehind(String before, String tenant, String reference, int position) {
        return previous.equals(before) && hash.equals(HashChain.next(before, tenant, reference, position, asNew()));
    }

    private NewEvent asNew() {
        return new NewEvent(
                event.id(), event.type(), event.time(), event.receivedAt(), event.actor(), event.body(), digest);
    }
}
