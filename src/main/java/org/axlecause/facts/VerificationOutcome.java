package org.axlecause.facts;

/** What the final test and the findings after the work say about the repair. */
public enum VerificationOutcome {
    NOT_TESTED,
    VERIFIED,
    IMPROVED,
    NOT_CURED;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
