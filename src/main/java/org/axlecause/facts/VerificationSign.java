package org.axlecause.facts;

/** What a ground says about the repair. */
public enum VerificationSign {
    CURED,
    IMPROVED,
    NOT_CURED,
    STILL_OPEN,
    NOT_TESTED;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
