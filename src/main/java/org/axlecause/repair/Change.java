package org.axlecause.repair;

import java.util.Locale;

/** What is new about a line against what the customer last agreed. */
public enum Change {
    /** It was not there when the customer last decided. */
    ADDED,
    /** Necessity, quantity or price differ from what was shown. */
    CHANGED;

    /** The code on the wire. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
