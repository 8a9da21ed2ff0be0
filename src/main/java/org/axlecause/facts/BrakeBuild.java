package org.axlecause.facts;

/** Kind of a wheel brake, whatever its layout. */
public enum BrakeBuild {
    DRUM,
    DISC;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
