package org.axlecause.facts;

/** How well a value is verified against a text. */
public enum Verified {
    READ,
    SECONDARY,
    MEMORY,
    COMMON_PRACTICE,
    JUDGEMENT,
    DERIVED;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
