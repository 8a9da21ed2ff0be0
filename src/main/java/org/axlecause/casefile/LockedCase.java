package org.axlecause.casefile;

import java.util.Map;
import org.axlecause.facts.EntryId;
import org.jspecify.annotations.Nullable;

/**
 * A case that the open transaction has locked.
 *
 * @param reference its reference
 * @param site code of its site; null while no vehicle was presented
 * @param chainLength how many events its history has
 * @param chainHash hash of the last of them in hex; that of the chain's start where there is none
 * @param known what is stored already, in this case or another, under the identities that were asked for
 */
public record LockedCase(
        String reference, @Nullable String site, int chainLength, String chainHash, Map<EntryId, KnownIdentity> known) {

    public LockedCase {
        known = Map.copyOf(known);
    }
}
