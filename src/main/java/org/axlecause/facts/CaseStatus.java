package org.axlecause.facts;

/** Highest state of a case that holds. */
public enum CaseStatus {
    OPEN,
    SCOPED,
    IN_WORK,
    TO_VERIFY,
    VERIFIED,
    CLOSED;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
