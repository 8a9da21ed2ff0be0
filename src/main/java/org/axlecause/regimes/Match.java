package org.axlecause.regimes;

import java.util.Set;

/**
 * Whether a condition holds for a vehicle.
 *
 * @param possible whether nothing known speaks against it
 * @param unknown data that would decide it
 */
record Match(boolean possible, Set<Datum> unknown) {

    static final Match NEVER = new Match(false, Set.of());

    Match {
        unknown = Set.copyOf(unknown);
    }

    boolean certain() {
        return possible && unknown.isEmpty();
    }
}
