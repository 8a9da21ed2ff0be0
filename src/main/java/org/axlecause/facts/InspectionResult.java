package org.axlecause.facts;

/** What the official test said. */
public enum InspectionResult {
    PASSED,
    FAILED;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
