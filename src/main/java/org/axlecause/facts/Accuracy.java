package org.axlecause.facts;

/** What a tester's stated accuracy is a share of. */
public enum Accuracy {
    READING,
    RANGE;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
