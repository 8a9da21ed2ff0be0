package org.axlecause.facts;

/** How well a value is verified against a text. */
public enum Verified {
    READ,
    SECONDARY,
    MEMORY,
    COMMON_PRACTICE,
    JUDGEMENT,
    DERIVED;

    /** What stands behind something that was not read in a text; nothing where it was. */
    public String remark(String what) {
        return this == READ ? "" : " (" + what + ": " + this + ")";
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
