package org.axlecause.facts;

/** Class of a deficiency in the regime's own scale. */
public enum DeficiencyClass {
    MINOR,
    MAJOR,
    DANGEROUS;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
