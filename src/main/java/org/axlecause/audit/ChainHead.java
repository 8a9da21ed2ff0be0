package org.axlecause.audit;

import org.axlecause.shared.ChainHash;

/**
 * The last link of a tenant's chain.
 *
 * @param position 0 while there is none
 * @param hash its hash in hex
 */
record ChainHead(long position, String hash) {

    static final ChainHead NONE = new ChainHead(0, ChainHash.start());
}
