package org.axlecause.facts;

/** Kind of a trailer. */
public enum TrailerKind {
    SEMI_TRAILER,
    DRAWBAR_TRAILER,
    CENTRE_AXLE_TRAILER;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
