package org.axlecause.repair;

import java.util.Locale;

/** What is new about a line against what the customer last agreed. */
public enum Change {
    /** The customer has decided on other lines and not yet on this one. */
    ADDED,
    /** Necessity, quantity or price differ from what was shown. */
    CHANGED,
    /** It was agreed and nothing asks for it any more, or another line takes it along. */
    DROPPED;

    /** The code on the wire. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
