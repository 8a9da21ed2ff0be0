package org.axlecause.facts;

/** How the sender closed the case. */
public enum CloseOutcome {
    CURED,
    NOT_CURED,
    NO_FAULT_FOUND,
    REFUSED,
    REFERRED,
    ABANDONED;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
