package org.axlecause.access;

import java.util.Locale;

/** How the service knows who acts. */
enum AccessMode {
    /** Nobody needs a key; one demo tenant, reachable from this machine only. */
    OPEN,
    /** Every request carries a key. */
    KEYS;

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
