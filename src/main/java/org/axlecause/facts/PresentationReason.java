package org.axlecause.facts;

/** Why the vehicle came. */
public enum PresentationReason {
    FAILED_INSPECTION,
    COMPLAINT,
    ROUTINE,
    RETURNED;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
